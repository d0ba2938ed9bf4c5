#version 410 core
// Ghosted and glass parts, drawn over the picture.
#include "part.glsl"

out vec3 world_position;
out vec3 world_normal;
flat out vec4 colour;
flat out float glossy;

void main() {
    colour = partRow(0);
    glossy = 1.0 - partRow(1).z;
    world_position = placed();
    world_normal = normal.xyz;
    gl_Position = clipPosition(world_position, partRow(2).w);
}
