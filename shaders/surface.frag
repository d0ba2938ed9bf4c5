#version 410 core
// Colour, finish, normal and label of what is seen first. PATTERN picks the procedural surface, so that
// plain parts do not pay for it.
#include "frame.glsl"

in vec3 world_position;
in vec3 world_normal;
in vec2 along;
flat in float joint;
flat in vec4 colour;
flat in vec4 finish;
flat in uint label;

layout(location = 0) out vec4 out_colour;
layout(location = 1) out uvec2 out_surface;

uniform vec4 eye;
uniform sampler2D noise; // r: soft noise, g: white noise, both tiling

// 1 inside a line of `width` round whole numbers of `at / size`, softened over a pixel.
float lineAt(float at, float size, float width) {
    float d = abs(fract(at / size - 0.5) - 0.5) * size;
    float blur = max(fwidth(at), 1e-5);
    float line = 1.0 - smoothstep(0.5 * width - 0.5 * blur, 0.5 * width + 0.5 * blur, d);
    return line * clamp(width / blur, 0.0, 1.0);
}

vec3 patterned(vec3 base, vec2 p, vec2 size) {
#if PATTERN == 1
    p = p.yx; // boards are given by width and length
    vec2 board = size.yx;
    float row = floor(p.y / board.y);
    float stagger = texture(noise, vec2(row * 0.173, 0.37)).g * board.x;
    float piece = floor((p.x + stagger) / board.x);
    float tone = textureLod(noise, vec2(row * 0.137 + 0.011, piece * 0.271 + 0.013), 0.0).g;
    float grain = texture(noise, vec2(p.x * 0.35 + tone * 7.0, p.y * 4.0 + tone * 3.0)).r;
    float fine = texture(noise, vec2(p.x * 0.9 + tone * 5.0, p.y * 17.0)).r;
    vec3 wood = base * (0.86 + 0.20 * tone) * (0.84 + 0.24 * grain) * (0.93 + 0.14 * fine);
    wood *= mix(vec3(1.0), vec3(1.03, 1.0, 0.95), tone);
    float seam = max(lineAt(p.y, board.y, 0.0035), lineAt(p.x + stagger, board.x, 0.003));
    return mix(wood, wood * 0.45, seam);
#elif PATTERN == 2
    float u = floor(p.x / size.x);
    float v = floor(p.y / size.y);
    float tone = textureLod(noise, vec2(u * 0.171 + 0.01, v * 0.237 + 0.02), 0.0).g;
    float cloud = texture(noise, p * 0.9 + tone).r;
    float width = max(joint, 0.002);
    vec2 q = p + 0.5 * width; // a tile and its joint: the origin is the tile's corner
    float line = max(lineAt(q.x, size.x, width), lineAt(q.y, size.y, width));
    return mix(base * (0.95 + 0.07 * tone) * (0.96 + 0.08 * cloud), base * 0.72, line);
#elif PATTERN == 3
    float tuft = texture(noise, p * 9.0).g;
    float nap = texture(noise, p * 0.8).r;
    return base * (0.82 + 0.20 * tuft) * (0.88 + 0.24 * nap);
#elif PATTERN == 4
    vec2 q = size.x > size.y ? p.xy : p.yx;
    float ring = texture(noise, vec2(q.x * 0.5, q.y * 3.3)).r;
    float fine = texture(noise, vec2(q.x * 1.3, q.y * 21.0)).r;
    return base * (0.82 + 0.30 * ring) * (0.93 + 0.14 * fine);
#elif PATTERN == 5
    float weave = texture(noise, p * 14.0).g;
    float fold = texture(noise, p * 1.1).r;
    return base * (0.88 + 0.16 * weave) * (0.93 + 0.14 * fold);
#else
    return base;
#endif
}

void main() {
    vec3 n = normalize(world_normal);
    vec3 towards = eye.w > 0.5 ? eye.xyz - world_position : eye.xyz;
    if (dot(n, towards) < 0.0) n = -n;
    vec3 base = patterned(colour.rgb, along, max(finish.xy, vec2(0.02)));
    float code = floor(clamp(finish.z, 0.0, 1.0) * 63.0) + (finish.w > 0.5 ? 64.0 : 0.0);
    if (colour.a > 0.0) code = 128.0 + floor(clamp(colour.a / 8.0, 0.0, 1.0) * 127.0);
    out_colour = vec4(sqrt(clamp(base, 0.0, 1.0)), code / 255.0);
    out_surface = uvec2(packedNormal(n), label);
}
