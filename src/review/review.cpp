#include "review/review.hpp"
