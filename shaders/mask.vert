#version 410 core
// Outline of picked parts and shadow casters: position only.
#include "part.glsl"

void main() { gl_Position = view_projection * vec4(placed(), 1.0); }
