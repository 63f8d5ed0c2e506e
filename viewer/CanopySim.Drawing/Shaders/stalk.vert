// Round stalks, wires and posts: a strip for each that faces whoever looks. Instance = stalk of this draw × copies + copy.
layout(location = 0) in vec4 aFrom; // and the radius there
layout(location = 1) in vec4 aTo;

uniform float uLeastRadius; // in clip units: a wire far away is never thinner than a share of a pixel

out float vAcross;
out vec3 vSide;
out vec3 vFront;
out vec3 vShadowPlace;
out float vHaze;

void main()
{
    vec3 offset = uOffsets[gl_InstanceID % uCopies];
    vec4 end = gl_VertexID < 2 ? aFrom : aTo;
    vec3 along = aTo.xyz - aFrom.xyz;
    vec3 p = end.xyz + offset;
    vec3 towards = uCasting ? uSun : normalize(uEye - p);
    vec3 side = cross(along, towards);
    side = dot(side, side) > 1e-14 ? normalize(side) : vec3(1.0, 0.0, 0.0);
    float radius = end.w;
    if (!uCasting) radius = max(radius, uLeastRadius * (uClip * vec4(p, 1.0)).w);
    vAcross = (gl_VertexID & 1) == 0 ? -1.0 : 1.0;
    p += side * (radius * vAcross);
    if (uCasting)
    {
        gl_Position = castPosition(p);
        return;
    }

    vSide = side;
    vFront = normalize(cross(side, along));
    if (dot(vFront, towards) < 0.0) vFront = -vFront;
    vShadowPlace = shadowPlace(p - offset);
    vHaze = haze(p);
    gl_Position = uClip * vec4(p, 1.0);
}
