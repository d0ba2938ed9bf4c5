#version 410 core
// One corner of a strip of pixels along a line.
layout(location = 0) in vec3 place;
layout(location = 1) in vec4 ends;
layout(location = 2) in vec4 look;

flat out vec4 piece;
flat out vec4 colour;

void main() {
    piece = ends;
    colour = look;
    gl_Position = vec4(place, 1.0);
}
