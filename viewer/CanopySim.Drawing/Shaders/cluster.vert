// Clusters: one body of revolution, hung and sized by instance. Instance = cluster of this draw × copies + copy.
layout(location = 0) in vec3 aPoint;  // radius 1, from 0 down to -1
layout(location = 1) in vec3 aNormal;
layout(location = 2) in vec4 aTop;    // and the length
layout(location = 3) in float aRadius;
layout(location = 4) in float aAngle;
out vec3 vNormal;
out vec2 vSkin;
out vec3 vShadowPlace;
out float vHaze;
void main()
{
    vec3 at = aTop.xyz + vec3(aPoint.xy * aRadius, aPoint.z * aTop.w);
    vec3 p = at + uOffsets[gl_InstanceID % uCopies];
    if (uCasting)
    {
        gl_Position = castPosition(p);
        return;
    }

    vNormal = vec3(aNormal.xy / aRadius, aNormal.z / aTop.w);
    vSkin = vec2(aAngle, aPoint.z * aTop.w / aRadius);
    vShadowPlace = shadowPlace(at);
    vHaze = haze(p);
    gl_Position = uClip * vec4(p, 1.0);
}
