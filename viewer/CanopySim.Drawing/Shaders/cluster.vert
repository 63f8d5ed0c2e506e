// Clusters of the cell in one mesh; instance = copy of the cell.
layout(location = 0) in vec3 aPoint;
layout(location = 1) in vec3 aNormal;
layout(location = 2) in vec2 aSkin; // around, and down in radii
out vec3 vNormal;
out vec2 vSkin;
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
    vSkin = aSkin;
    vShadowPlace = shadowPlace(aPoint);
    vHaze = haze(p);
    gl_Position = uClip * vec4(p, 1.0);
}
