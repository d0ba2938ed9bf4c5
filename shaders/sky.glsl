// Light from all round: warm white from above, the floor's return from below, and a little more from
// the south and west so that two walls of one colour part at their corner.
vec3 surroundings(vec3 n) {
    vec3 above = vec3(0.755, 0.74, 0.71);
    vec3 below = vec3(0.565, 0.525, 0.475);
    return mix(below, above, n.y * 0.5 + 0.5) * (1.0 + 0.05 * n.z - 0.035 * n.x);
}
