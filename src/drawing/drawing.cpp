#include "drawing/drawing.hpp"
