#include "checks/rules.hpp"

namespace gangway::checks {

void findSweeps(const Facts& /*facts*/, const plan::Room& /*room*/, Findings& /*findings*/) {}

} // namespace gangway::checks
