#include "meshes/meshes.hpp"
