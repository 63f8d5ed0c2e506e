// Trunks and cordons: triangles of the cell. Instance = copy.
layout(location = 0) in vec3 aPoint;
layout(location = 1) in vec3 aNormal;
out vec3 vNormal;
out vec3 vPoint;
out vec3 vShadowPlace;
out float vHaze;
void main()
{
    vec3 p = aPoint + uOffsets[gl_InstanceID];
    if (uCasting)
    {
        gl_Position = castPosition(p);
        return;
    }

    vNormal = aNormal;
    vPoint = aPoint;
    vShadowPlace = shadowPlace(aPoint);
    vHaze = haze(p);
    gl_Position = uClip * vec4(p, 1.0);
}
