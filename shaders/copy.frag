#version 410 core
// One picture times a weight: adds samples up, and shows the sum.
in vec2 at;
layout(location = 0) out vec4 result;

uniform sampler2D picture;
uniform float weight;

void main() { result = vec4(textureLod(picture, at, 0.0).rgb * weight, 1.0); }
