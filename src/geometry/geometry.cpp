#include "geometry/coverage.hpp"
