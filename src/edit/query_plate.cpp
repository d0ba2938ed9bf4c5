#include "edit/edit.hpp"
#include "edit/plate_name.hpp"
#include "review/review.hpp"

namespace gangway::edit {

Command queryPlate(const plan::Plan& plan, const std::string& plate_id, const std::string& by,
                   const std::string& at, const std::string& note) {
    return {"Query " + detail::plateName(plan, plate_id), "", [plate_id, by, at, note](Draft& draft) {
                if (const plan::Plate* plate = plan::findPlate(draft.plan(), plate_id))
                    draft.add(
                        review::answer(draft.plan(), *plate, plan::Agreement::Answer::Query, by, at, note));
            }};
}

} // namespace gangway::edit
