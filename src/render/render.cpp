#include "render/renderer.hpp"
