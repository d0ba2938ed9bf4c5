#version 410 core
// Softens the stairs of edges in one finished picture: looks which way an edge runs by the brightness of
// the four diagonal neighbours and mixes along it.
in vec2 at;
layout(location = 0) out vec4 result;

uniform sampler2D picture;
uniform vec2 pixel;

float bright(vec2 place) { return dot(textureLod(picture, place, 0.0).rgb, vec3(0.299, 0.587, 0.114)); }

void main() {
    vec3 centre = textureLod(picture, at, 0.0).rgb;
    float nw = bright(at + pixel * vec2(-0.5, 0.5));
    float ne = bright(at + pixel * vec2(0.5, 0.5));
    float sw = bright(at + pixel * vec2(-0.5, -0.5));
    float se = bright(at + pixel * vec2(0.5, -0.5));
    float m = dot(centre, vec3(0.299, 0.587, 0.114));
    float low = min(m, min(min(nw, ne), min(sw, se)));
    float high = max(m, max(max(nw, ne), max(sw, se)));
    vec2 gradient = vec2((ne + se) - (nw + sw), (nw + ne) - (sw + se));
    vec2 way = vec2(-gradient.y, gradient.x);
    float shorter = min(abs(way.x), abs(way.y)) + 0.03;
    vec2 stride = clamp(way / shorter, -6.0, 6.0) * pixel;
    vec3 close = 0.5 * (textureLod(picture, at + stride * 0.17, 0.0).rgb + textureLod(picture, at - stride * 0.17, 0.0).rgb);
    vec3 wide = 0.5 * close +
                0.25 * (textureLod(picture, at + stride * 0.5, 0.0).rgb + textureLod(picture, at - stride * 0.5, 0.0).rgb);
    float w = dot(wide, vec3(0.299, 0.587, 0.114));
    vec3 soft = (w < low || w > high) ? close : wide;
    result = vec4(high - low < max(0.03, high * 0.06) ? centre : soft, 1.0);
}
