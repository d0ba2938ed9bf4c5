#include "plan/plan.hpp"
