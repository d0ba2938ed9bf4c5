#version 410 core
// Opaque parts into the surface buffers.
#include "part.glsl"

uniform float hovered_object;

out vec3 world_position;
out vec3 world_normal;
out vec2 along;         // on the surface, in metres from where its pattern begins
flat out float joint;
flat out vec4 colour;   // rgb, emission
flat out vec4 finish;   // pattern size, roughness, metalness
flat out uint label;    // part + 1, room

// Along the pattern's direction laid into the surface, and across it (up on walls, away on floors). Where the
// direction stands out of the surface, sideways on walls and east on floors.
vec2 patternPlace(vec3 from_origin, vec3 n, vec3 direction) {
    vec3 first = direction - n * dot(direction, n);
    if (dot(first, first) < 0.1) first = abs(n.y) > 0.7 ? vec3(1.0, 0.0, 0.0) : vec3(n.z, 0.0, -n.x);
    first = normalize(first);
    return vec2(dot(from_origin, first), dot(from_origin, cross(n, first)));
}

void main() {
    vec4 tint = partRow(0);
    vec4 extra = partRow(2);
    world_position = placed();
    world_normal = normal.xyz;
    float hover = extra.y == hovered_object ? 1.0 : 0.0;
    colour = vec4(mix(tint.rgb, vec3(1.0, 0.97, 0.92), 0.35 * hover), extra.x);
    finish = partRow(1);
    joint = partRow(3).y;
    along = patternPlace(world_position - partRow(4).xyz, world_normal, partRow(5).xyz);
    label = ((part + 1u) & 0xfffffu) | (uint(extra.z) << 20);
    gl_Position = clipPosition(world_position, extra.w);
}
