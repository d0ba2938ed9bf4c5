// How commands call a plate, and finding it in the plan they change. Private to src/edit.
#pragma once

#include "plan/plan.hpp"

#include <string>

namespace gangway::edit::detail {

/// The plate's tag ("K-04"), else its id.
std::string plateName(const plan::Plan& plan, const std::string& plate_id);

/// nullptr when no plate has the id.
plan::Plate* findPlate(plan::Plan& plan, const std::string& plate_id);

} // namespace gangway::edit::detail
