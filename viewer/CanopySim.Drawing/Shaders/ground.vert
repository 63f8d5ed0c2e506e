// The ground: a large sheet under the eye.
layout(location = 0) in vec2 aPlace;
uniform vec2 uMiddle;
out vec3 vPoint;
void main()
{
    vec2 at = uMiddle + aPlace;
    vPoint = vec3(at, dot(uRise, at));
    gl_Position = uClip * vec4(vPoint, 1.0);
}
