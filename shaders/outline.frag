#version 410 core
// A line round what the mask holds, outside of it, seen through everything.
in vec2 at;
layout(location = 0) out vec4 result;

uniform sampler2D mask_map;
uniform vec3 line_colour; // as shown
uniform float line_width; // pixels

void main() {
    vec2 pixel = 1.0 / vec2(textureSize(mask_map, 0));
    float inside = texture(mask_map, at).r;
    float around = 0.0;
    for (int i = 0; i < 12; ++i) {
        float angle = float(i) * (6.2831853 / 12.0);
        around = max(around, texture(mask_map, at + vec2(cos(angle), sin(angle)) * pixel * line_width).r);
    }
    result = vec4(line_colour, around * (1.0 - inside));
}
