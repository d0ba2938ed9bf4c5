#version 410 core
// Surface, light, occlusion, sun and ink into the picture.
#include "frame.glsl"
#include "tone.glsl"
#include "sky.glsl"

in vec2 at;
layout(location = 0) out vec4 result;

uniform sampler2D colour_map;
uniform usampler2D surface_map;
uniform sampler2D depth_map;
uniform sampler2D light_map;
uniform sampler2D occlusion_map;
uniform sampler2DShadow sun_map;
uniform mat4 world_to_sun;
uniform vec3 sun_direction; // towards the sun
uniform vec3 sun_colour;
uniform vec2 sun_sway;      // shifts the sun a little from sample to sample
uniform float daylight;     // part of the surroundings' light there is
uniform float sun_texel;    // metres
uniform vec2 pixel;
uniform int scale;          // pixels to one of the light and occlusion maps
uniform ivec2 offset;       // which of them they looked at
uniform vec3 background;    // as shown
uniform float ground_y;     // the sheet the model stands on
uniform float on_paper;     // 1: draw the model's shadow on the sheet

float sunAt(vec3 p) {
    vec3 q = (world_to_sun * vec4(p, 1.0)).xyz * 0.5 + 0.5;
    q = vec3(q.xy + sun_sway, min(q.z, 0.9999)); // past the map there is nothing to cast
    vec2 e = vec2(0.6, 0.3) / vec2(textureSize(sun_map, 0));
    return 0.5 * (texture(sun_map, vec3(q.xy + e, q.z)) + texture(sun_map, vec3(q.xy - e, q.z)));
}

// Light and occlusion of the coarser pass, taken from the neighbours that lie at this pixel's depth.
vec4 coarseLight(ivec2 place, float z) {
    vec2 exact = max(vec2(place - offset), 0.0) / float(scale);
    ivec2 base = ivec2(exact);
    ivec2 last = textureSize(light_map, 0) - 1;
    vec2 part = exact - vec2(base);
    vec4 sum = vec4(0.0);
    float weights = 0.0;
    for (int i = 0; i < 4; ++i) {
        ivec2 step = ivec2(i & 1, i >> 1);
        ivec2 tap = clamp(base + step, ivec2(0), last);
        vec2 shade = texelFetch(occlusion_map, tap, 0).rg;
        vec2 w = mix(1.0 - part, part, vec2(step));
        float weight = (w.x * w.y + 0.01) / (0.002 + abs(shade.y - z) / max(-z, 0.3));
        sum += vec4(texelFetch(light_map, tap, 0).rgb, shade.r) * weight;
        weights += weight;
    }
    return sum / weights;
}

// Ink where the neighbour to the right or above is another surface: strongest at outlines.
float inkTo(ivec2 place, vec3 p, vec3 n, uint label) {
    ivec2 there = min(place, textureSize(depth_map, 0) - 1);
    uvec2 surface = texelFetch(surface_map, there, 0).rg;
    float depth = texelFetch(depth_map, there, 0).r;
    vec3 q = viewPosition((vec2(there) + 0.5) * pixel, depth);
    vec3 m = readNormal(surface.r) * mat3(view_to_world);
    float apart = max(abs(dot(n, q - p)), abs(dot(m, q - p)));
    float z = mix(max(-max(p.z, q.z), 0.2), 4.0, parallel);
    float outline = smoothstep(0.03, 0.12, apart - 0.004 * z);
    float step = smoothstep(0.002, 0.008, apart - 0.0012 * z) * (surface.g != label ? 1.0 : 0.0);
    float crease = smoothstep(0.04, 0.3, 1.0 - dot(n, m));
    float fade = clamp(3.5 / z, 0.35, 1.0);
    return max(outline * 0.62, max(crease * 0.20, step * 0.34) * fade);
}

vec3 paper(vec3 shown) {
    if (on_paper < 0.5) return shown;
    vec3 near = worldPosition(at, 0.0);
    vec3 far = worldPosition(at, 1.0);
    float t = (ground_y - near.y) / min(far.y - near.y, -1e-4);
    vec3 ground = mix(near, far, clamp(t, 0.0, 1.0));
    return shown * mix(vec3(0.80, 0.775, 0.75), vec3(1.0), t > 1.0 ? 1.0 : sunAt(ground));
}

void main() {
    ivec2 place = ivec2(gl_FragCoord.xy);
    uvec2 surface = texelFetch(surface_map, place, 0).rg;
    float depth = texelFetch(depth_map, place, 0).r;
    vec4 stored = texelFetch(colour_map, place, 0);
    vec3 albedo = stored.rgb * stored.rgb;
    int code = int(stored.a * 255.0 + 0.5);
    float emission = code >= 128 ? float(code - 128) * (8.0 / 127.0) : 0.0;
    float rough = code >= 128 ? 1.0 : float(code & 63) / 63.0;
    float metal = code < 128 && code >= 64 ? 1.0 : 0.0;

    vec3 v = viewPosition(at, depth);
    vec3 p = (view_to_world * vec4(v, 1.0)).xyz;
    vec3 n = readNormal(surface.r);
    vec4 light = coarseLight(place, v.z);
    float toward_sun = clamp(dot(n, sun_direction), 0.0, 1.0);
    float sun = sunAt(p + n * (0.015 + sun_texel)) * toward_sun;

    vec3 look = parallel > 0.5 ? -view_to_world[2].xyz : normalize(p - view_to_world[3].xyz);
    vec3 mirrored = reflect(look, n);
    float grazing = 1.0 - clamp(-dot(look, n), 0.0, 1.0);
    grazing *= grazing;
    float fresnel = mix(0.04, 0.6, metal) + (1.0 - rough) * 0.5 * grazing * grazing;
    float shine = fresnel * (1.0 - rough) * (1.0 - rough);
    vec3 seen = daylight * surroundings(mirrored) * mix(0.55, 1.15, smoothstep(-0.3, 0.9, mirrored.y));

    float open = light.a;
    vec3 ambient = daylight * surroundings(n) * mix(vec3(0.30, 0.26, 0.23), vec3(1.0), open);
    vec3 direct = (sun_colour * sun + light.rgb) * mix(0.55, 1.0, open);
    vec3 lit = albedo * (1.0 - 0.45 * metal) * (ambient + direct) + seen * shine * mix(vec3(1.0), albedo, metal) * open;
    if (emission > 0.0) lit = albedo * min(0.4 + 0.5 * emission, 1.5) * (0.8 + 0.2 * abs(dot(look, n)));

    vec3 n_view = n * mat3(view_to_world);
    float ink = max(inkTo(place + ivec2(1, 0), v, n_view, surface.g), inkTo(place + ivec2(0, 1), v, n_view, surface.g));
    vec3 shown = toScreen(toned(lit));
    shown = mix(shown, vec3(0.118, 0.165, 0.196), ink * (1.0 - 0.8 * step(0.01, emission)));
    bool empty = (surface.g & 0xfffffu) == 0u;
    result = vec4(empty ? paper(background) : shown, 1.0);
}
