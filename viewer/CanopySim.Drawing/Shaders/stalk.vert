// Round stalks, wires and posts: a strip for each that faces whoever looks. Instance = copy of the cell.
layout(location = 0) in vec4 aEnd;   // and the radius there
layout(location = 1) in vec4 aAlong; // from one end to the other; which side of the strip, -1 or 1

uniform float uLeastRadius; // in clip units: a wire far away is never thinner than a share of a pixel

out float vAcross;
out vec3 vSide;
out vec3 vFront;
out vec3 vShadowPlace;
out float vHaze;

void main()
{
    vec3 p = aEnd.xyz + uOffsets[gl_InstanceID];
    vec3 towards = uCasting ? uSun : normalize(uEye - p);
    vec3 side = cross(aAlong.xyz, towards);
    side = dot(side, side) > 1e-14 ? normalize(side) : vec3(1.0, 0.0, 0.0);
    float radius = aEnd.w;
    if (!uCasting) radius = max(radius, uLeastRadius * (uClip * vec4(p, 1.0)).w);
    vAcross = aAlong.w;
    p += side * (radius * vAcross);
    if (uCasting)
    {
        gl_Position = castPosition(p);
        return;
    }

    vSide = side;
    vFront = normalize(cross(side, aAlong.xyz));
    if (dot(vFront, towards) < 0.0) vFront = -vFront;
    vShadowPlace = shadowPlace(aEnd.xyz);
    vHaze = haze(p);
    gl_Position = uClip * vec4(p, 1.0);
}
