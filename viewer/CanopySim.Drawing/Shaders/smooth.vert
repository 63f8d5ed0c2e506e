// One triangle over all of the picture.
void main() { gl_Position = vec4(vec2((gl_VertexID & 1) * 4, (gl_VertexID >> 1) * 4) - 1.0, 0.0, 1.0); }
