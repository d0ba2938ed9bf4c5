// The way from a pixel's depth back to where it is, and packed normals. Included by the passes that
// work on the drawn picture.
uniform vec4 depth_terms;   // view z = (x * ndc z + y) / (z * ndc z + w)
uniform vec2 view_scale;    // ndc x, y to view x, y at distance 1 (or at any distance when parallel)
uniform vec2 view_shift;    // what the projection adds to ndc
uniform float parallel;     // 1: orthographic
uniform mat4 view_to_world;

float viewDepth(float depth) {
    float z = depth * 2.0 - 1.0;
    return (depth_terms.x * z + depth_terms.y) / (depth_terms.z * z + depth_terms.w);
}

vec3 viewPosition(vec2 at, float depth) {
    float z = viewDepth(depth);
    return vec3((at * 2.0 - 1.0 + view_shift) * view_scale * mix(-z, 1.0, parallel), z);
}

vec3 worldPosition(vec2 at, float depth) { return (view_to_world * vec4(viewPosition(at, depth), 1.0)).xyz; }

// Octahedral normals; straight down is the middle of the square, so that the folds of a lamp's tile lie above it. Cigolle and others, Survey of Efficient Representations for Independent Unit
// Vectors, Journal of Computer Graphics Techniques 3(2), 2014.
vec2 folded(vec2 v) { return (1.0 - abs(v.yx)) * vec2(v.x >= 0.0 ? 1.0 : -1.0, v.y >= 0.0 ? 1.0 : -1.0); }

vec2 toOctahedron(vec3 n) {
    vec2 p = n.xz / (abs(n.x) + abs(n.y) + abs(n.z));
    return n.y <= 0.0 ? p : folded(p);
}

vec3 fromOctahedron(vec2 p) {
    float y = abs(p.x) + abs(p.y) - 1.0;
    vec2 side = y <= 0.0 ? p : folded(p);
    return normalize(vec3(side.x, y, side.y));
}

uint packedNormal(vec3 n) { return packUnorm2x16(toOctahedron(n) * 0.5 + 0.5); }
vec3 readNormal(uint stored) { return fromOctahedron(unpackUnorm2x16(stored) * 2.0 - 1.0); }
