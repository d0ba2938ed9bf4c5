#include "edit/edit.hpp"
#include "edit/plate_name.hpp"
#include "review/review.hpp"

namespace gangway::edit {

Command queryPlate(const plan::Plan& plan, const std::string& plate_id, const std::string& by,
                   const std::string& at, const std::string& note) {
    return {"Query " + detail::plateName(plan, plate_id), "", [plate_id, by, at, note](plan::Plan& changed) {
                if (const plan::Plate* plate = plan::findPlate(changed, plate_id))
                    changed.agreements.push_back(
                        review::answer(changed, *plate, plan::Agreement::Answer::Query, by, at, note));
            }};
}

} // namespace gangway::edit
