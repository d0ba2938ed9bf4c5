#version 410 core
// A line with round ends and a pale edge; fainter where something stands before it.
#include "frame.glsl"

flat in vec4 piece;  // its ends, pixels
flat in vec4 colour; // as shown; half the width, pixels
layout(location = 0) out vec4 result;

uniform sampler2D depth_map;

void main() {
    vec2 way = piece.zw - piece.xy;
    vec2 here = gl_FragCoord.xy - piece.xy;
    float part = clamp(dot(here, way) / max(dot(way, way), 1e-4), 0.0, 1.0);
    float apart = length(here - way * part);
    float core = clamp(colour.w + 0.5 - apart, 0.0, 1.0);
    float edge = clamp(colour.w + 2.0 - apart, 0.0, 1.0);
    float before = viewDepth(texelFetch(depth_map, ivec2(gl_FragCoord.xy), 0).r);
    float hidden = viewDepth(gl_FragCoord.z) < before - 0.04 ? 0.35 : 1.0;
    result = vec4(mix(vec3(0.965, 0.949, 0.918), colour.rgb, core), max(core, 0.6 * edge) * hidden);
}
