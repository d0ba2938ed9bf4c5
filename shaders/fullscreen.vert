#version 410 core
// One triangle that covers the picture; no buffers needed.
out vec2 at;

void main() {
    vec2 corner = vec2(gl_VertexID == 1 ? 3.0 : -1.0, gl_VertexID == 2 ? 3.0 : -1.0);
    at = corner * 0.5 + 0.5;
    gl_Position = vec4(corner, 0.0, 1.0);
}
