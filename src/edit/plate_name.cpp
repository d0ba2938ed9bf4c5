#include "edit/plate_name.hpp"

#include <algorithm>

namespace gangway::edit::detail {

std::string plateName(const plan::Plan& plan, const std::string& plate_id) {
    const plan::Plate* plate = plan::findPlate(plan, plate_id);
    return plate && !plate->tag.empty() ? plate->tag : plate_id;
}

plan::Plate* findPlate(plan::Plan& plan, const std::string& plate_id) {
    const auto found = std::ranges::find(plan.plates, plate_id, &plan::Plate::id);
    return found == plan.plates.end() ? nullptr : &*found;
}

} // namespace gangway::edit::detail
