#version 410 core
// A ghost keeps its colour faintly and gets a rim where it turns away; glass shows itself by what it
// mirrors.
#include "tone.glsl"
#include "sky.glsl"

in vec3 world_position;
in vec3 world_normal;
flat in vec4 colour;
flat in float glossy;

layout(location = 0) out vec4 result;

uniform vec4 eye;
uniform float ghost; // 1: faded on purpose
uniform float daylight; // part of the surroundings' light there is

void main() {
    vec3 towards = normalize(eye.w > 0.5 ? eye.xyz - world_position : eye.xyz);
    vec3 n = normalize(world_normal);
    float facing = abs(dot(n, towards));
    if (dot(n, towards) < 0.0) n = -n;
    float rim = pow(1.0 - facing, 3.0);
    vec3 base = colour.rgb * surroundings(n) * daylight;
    vec3 mirrored = surroundings(reflect(-towards, n)) * 1.25 * daylight;
    vec3 light = ghost > 0.5 ? base : mix(base, mirrored, clamp(0.25 + rim, 0.0, 1.0) * glossy);
    float cover = ghost > 0.5 ? 0.2 + 0.25 * rim : clamp(colour.a * 0.75 + 0.35 * rim, 0.0, 1.0);
    result = vec4(toScreen(toned(light)), cover);
}
