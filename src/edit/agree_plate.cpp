#include "edit/edit.hpp"
#include "edit/plate_name.hpp"
#include "review/review.hpp"

namespace gangway::edit {

Command agreePlate(const plan::Plan& plan, const std::string& plate_id, const std::string& by,
                   const std::string& at) {
    return {"Agree " + detail::plateName(plan, plate_id), "", [plate_id, by, at](plan::Plan& changed) {
                if (const plan::Plate* plate = plan::findPlate(changed, plate_id))
                    changed.agreements.push_back(
                        review::answer(changed, *plate, plan::Agreement::Answer::Agree, by, at, {}));
            }};
}

} // namespace gangway::edit
