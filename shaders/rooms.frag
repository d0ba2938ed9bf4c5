#version 410 core
// Which room is seen, for one pixel in eight: says which lamps are worth drawing.
layout(location = 0) out uint result;

uniform usampler2D surface_map;
uniform int step_px;

void main() {
    ivec2 spot = min(ivec2(gl_FragCoord.xy) * step_px + step_px / 2, textureSize(surface_map, 0) - 1);
    result = texelFetch(surface_map, spot, 0).g >> 20;
}
