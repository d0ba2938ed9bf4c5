// A vertex of the scene and the row of its part in the part table: six texels a part.
layout(location = 0) in vec3 position;
layout(location = 1) in vec4 normal;
layout(location = 2) in uint part;

uniform samplerBuffer part_table; // colour, opacity | pattern size, roughness, metalness | emission, object, room, depth rank |
// floor y, joint width | pattern origin | pattern direction
uniform mat4 view_projection;
uniform vec4 eye; // w 1: the eye; w 0: the direction towards it
uniform float lay_on_floor;

vec4 partRow(int row) { return texelFetch(part_table, int(part) * 6 + row); }

vec3 placed() {
    if (lay_on_floor < 0.5) return position;
    return vec3(position.x, partRow(3).x + 0.012, position.z);
}

// Moves a point a hair towards the eye, along the line of sight, so that of two parts in one plane the
// one with the higher rank wins: 0.15 mm a metre and rank.
vec4 clipPosition(vec3 point, float rank) {
    vec3 towards = eye.w > 0.5 ? eye.xyz - point : eye.xyz * 8.0;
    return view_projection * vec4(point + towards * (rank * 1.5e-4), 1.0);
}
