// One color, without light: outlines.
uniform vec4 uColor;
out vec4 oColor;
void main() { oColor = uColor; }
