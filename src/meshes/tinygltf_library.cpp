// The one file that compiles tinygltf. Images are not read: a plan shows base colours only, and so no
// image library is needed.
#define TINYGLTF_IMPLEMENTATION
#include "meshes/tinygltf.hpp"
