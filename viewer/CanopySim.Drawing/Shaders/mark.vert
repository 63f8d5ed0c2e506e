// The sun's path, its disc and the north arrow: points as they are.
layout(location = 0) in vec3 aPoint;
void main() { gl_Position = uClip * vec4(aPoint, 1.0); }
