#version 410 core
// Light of up to four lamps or windows on every pixel, added to what is there.
#include "frame.glsl"

in vec2 at;
layout(location = 0) out vec4 result;

const int kLights = 4;

uniform sampler2D depth_map;
uniform usampler2D surface_map;
uniform sampler2DShadow shadow_atlas;
uniform int scale;
uniform ivec2 offset;
uniform vec2 pixel;
uniform vec3 shadow_sway;     // shifts the sources a little from sample to sample: soft edges
uniform vec4 place[kLights];  // position; the source's size squared, which keeps near points from burning out
uniform vec4 front[kLights];  // direction; 1: shines like a pane, with the cosine of the angle to its front
uniform vec4 colour[kLights]; // what a surface facing the light gets at 1 m; the only room lit + 1, or 0
uniform vec4 beam[kLights];   // cosine where the beam ends; 1 / (where it is full - where it ends); 1 / reach; 1: shadows
uniform vec4 tile[kLights];   // corner and size in the shadow atlas

void main() {
    ivec2 spot = min(ivec2(gl_FragCoord.xy) * scale + offset, textureSize(depth_map, 0) - 1);
    uvec2 surface = texelFetch(surface_map, spot, 0).rg;
    vec3 p = worldPosition((vec2(spot) + 0.5) * pixel, texelFetch(depth_map, spot, 0).r);
    vec3 n = readNormal(surface.r);
    float room = float(surface.g >> 20);
    vec3 sum = vec3(0.0);
    for (int i = 0; i < kLights; ++i) {
        vec3 l = place[i].xyz - p;
        float d2 = dot(l, l);
        float closeness = inversesqrt(d2);
        float facing = dot(n, l) * closeness;
        float out_cos = -dot(l, front[i].xyz) * closeness;
        float full = clamp((out_cos - beam[i].x) * beam[i].y, 0.0, 1.0);
        full *= full * (3.0 - 2.0 * full) * mix(1.0, max(out_cos, 0.0), front[i].w);
        facing = clamp(facing * (1.0 - 0.2 * front[i].w) + 0.2 * front[i].w, 0.0, 1.0);
        float light = full * facing / (d2 + place[i].w);
        light = colour[i].w > 0.5 && room != colour[i].w ? 0.0 : light;
        // The receiver is lifted off its surface by about a texel of the tile, so that it does not shade itself.
        vec3 from = n * (0.015 + 0.024 * d2 * closeness) - l - shadow_sway;
        vec2 there = tile[i].xy + tile[i].zw * clamp(toOctahedron(from) * 0.5 + 0.5, 0.004, 0.996);
        float seen = texture(shadow_atlas, vec3(there, length(from) * beam[i].z - 0.002));
        sum += colour[i].rgb * (light * mix(1.0, seen, beam[i].w));
    }
    result = vec4(sum, 0.0);
}
