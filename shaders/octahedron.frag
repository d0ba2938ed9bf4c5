#version 410 core
// The six faces of a lamp's distance cube into one square tile.
#include "frame.glsl"

in vec2 at;

uniform samplerCube distances;
uniform float near_m;
uniform float far_m;

void main() {
    vec3 d = fromOctahedron(at * 2.0 - 1.0);
    float z = textureLod(distances, d, 0.0).r * 2.0 - 1.0;
    float along_axis = 2.0 * near_m * far_m / (far_m + near_m - z * (far_m - near_m));
    vec3 a = abs(d);
    gl_FragDepth = clamp(along_axis / max(a.x, max(a.y, a.z)) / far_m, 0.0, 1.0);
}
