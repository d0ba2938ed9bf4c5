#version 410 core
// Takes the 4 x 4 noise out of the occlusion without crossing edges in depth.
in vec2 at;
layout(location = 0) out vec4 result;

uniform sampler2D occlusion_map;

void main() {
    ivec2 place = ivec2(gl_FragCoord.xy);
    ivec2 last = textureSize(occlusion_map, 0) - 1;
    vec2 centre = texelFetch(occlusion_map, place, 0).rg;
    float sum = 0.0;
    float weights = 0.0;
    float sharpness = 7.0 / max(-centre.y, 0.5);
    for (int y = -1; y <= 2; ++y)
        for (int x = -1; x <= 2; ++x) {
            vec2 tap = texelFetch(occlusion_map, clamp(place + ivec2(x, y), ivec2(0), last), 0).rg;
            float weight = max(0.001, 1.0 - abs(tap.y - centre.y) * sharpness);
            sum += tap.r * weight;
            weights += weight;
        }
    result = vec4(sum / weights, centre.y, 0.0, 1.0);
}
