#include "checks/rules.hpp"

namespace gangway::checks {

void findSight(const Facts& /*facts*/, const plan::Room& /*room*/, Findings& /*findings*/) {}

} // namespace gangway::checks
