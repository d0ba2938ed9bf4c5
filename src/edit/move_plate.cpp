#include "edit/edit.hpp"
#include "edit/plate_name.hpp"

namespace gangway::edit {

Command movePlate(const plan::Plan& plan, const std::string& plate_id, double u_mm, double v_mm) {
    return {"Move " + detail::plateName(plan, plate_id), "move plate " + plate_id,
            [plate_id, u_mm, v_mm](plan::Plan& changed) {
                if (plan::Plate* plate = detail::findPlate(changed, plate_id)) {
                    plate->host.u_mm = u_mm;
                    plate->host.v_mm = v_mm;
                }
            }};
}

} // namespace gangway::edit
