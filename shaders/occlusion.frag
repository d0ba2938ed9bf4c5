#version 410 core
// How much of the surroundings a point sees (r) and its view depth (g), from the depth buffer alone.
// McGuire, Mara and Luebke, Scalable Ambient Obscurance, High Performance Graphics 2012.
#include "frame.glsl"

in vec2 at;
layout(location = 0) out vec4 result;

uniform sampler2D depth_map;
uniform usampler2D surface_map;
uniform int scale;        // pixels of the picture to one of this pass
uniform ivec2 offset;     // which of them is looked at
uniform vec2 pixel;       // size of a picture's pixel in texture units
uniform float reach;      // metres
uniform float pixels_a_metre; // at view depth 1 (or anywhere when parallel)
uniform float turn;       // changes from sample to sample

const int kTaps = 8;

void main() {
    ivec2 place = min(ivec2(gl_FragCoord.xy) * scale + offset, textureSize(depth_map, 0) - 1);
    float depth = texelFetch(depth_map, place, 0).r;
    vec2 here = (vec2(place) + 0.5) * pixel;
    vec3 p = viewPosition(here, depth);
    vec3 n_world = readNormal(texelFetch(surface_map, place, 0).r);
    vec3 n = n_world * mat3(view_to_world); // transposed rotation: world to view
    ivec2 cell = ivec2(gl_FragCoord.xy) & 3;
    float spin = float((cell.x * 3 + cell.y * 7 + (cell.x ^ cell.y) * 5) & 15) * (6.2831853 / 16.0) + turn;
    float disc = clamp(reach * pixels_a_metre / mix(-p.z, 1.0, parallel), 3.0, 260.0);
    float sum = 0.0;
    for (int i = 0; i < kTaps; ++i) {
        float part = (float(i) + 0.5 + fract(turn * 0.618)) / float(kTaps + 1);
        float angle = float(i) * 2.3999632 + spin;
        vec2 tap = here + vec2(cos(angle), sin(angle)) * (disc * part) * pixel;
        vec3 v = viewPosition(tap, textureLod(depth_map, tap, 0.0).r) - p;
        float vv = dot(v, v);
        float vn = dot(v, n) - 0.012;
        float f = max(reach * reach - vv, 0.0);
        sum += f * f * f * max(vn / (vv + 0.002), 0.0);
    }
    float reach6 = reach * reach * reach * reach * reach * reach;
    float open = max(0.0, 1.0 - sum * 2.4 * reach / (reach6 * float(kTaps)) );
    result = vec4(depth < 1.0 ? open : 1.0, p.z, 0.0, 1.0);
}
