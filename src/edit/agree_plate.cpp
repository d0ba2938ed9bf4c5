#include "edit/edit.hpp"
#include "edit/plate_name.hpp"
#include "review/review.hpp"

namespace gangway::edit {

Command agreePlate(const plan::Plan& plan, const std::string& plate_id, const std::string& by,
                   const std::string& at) {
    return {"Agree " + detail::plateName(plan, plate_id), "", [plate_id, by, at](Draft& draft) {
                if (const plan::Plate* plate = plan::findPlate(draft.plan(), plate_id))
                    draft.add(
                        review::answer(draft.plan(), *plate, plan::Agreement::Answer::Agree, by, at, {}));
            }};
}

} // namespace gangway::edit
