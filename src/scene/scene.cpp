#include "scene/scene.hpp"
