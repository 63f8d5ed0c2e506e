// Blades: one mesh, placed and colored by instance. Instance = blade of this draw × copies + copy.
layout(location = 0) in vec3 aPoint;
layout(location = 1) in vec3 aNormal;
layout(location = 2) in vec4 aX;
layout(location = 3) in vec4 aY;
layout(location = 4) in vec4 aZ;
layout(location = 5) in float aShare;

uniform sampler2D uTable;
uniform vec3 uNoValue;
uniform int uStep;      // every so manieth blade is drawn
uniform float uSwell;   // and so much larger, so that the area stays
uniform int uSelected;
uniform bool uOutline;

flat out vec3 vColor;
flat out int vBlade;
out vec3 vShadowPlace;
out vec2 vPoint;
flat out vec2 vLight;
out float vHaze;

void main()
{
    vec4 point = vec4(aPoint * uSwell, 1.0);
    vec3 p = vec3(dot(aX, point), dot(aY, point), dot(aZ, point));
    vec3 offset = uOffsets[gl_InstanceID % uCopies];
    vBlade = (gl_InstanceID / uCopies) * uStep;
    vPoint = aPoint.xy;
    if (uCasting)
    {
        gl_Position = castPosition(p + offset);
        return;
    }

    vec3 normal = normalize(vec3(dot(aX.xyz, aNormal), dot(aY.xyz, aNormal), dot(aZ.xyz, aNormal)));
    vec3 seen = p + offset;
    if (dot(normal, uEye - seen) < 0.0) normal = -normal;
    float towardsSun = dot(normal, uSun);
    // A blade lit from behind glows a little less than one lit from the front.
    float direct = towardsSun > 0.0 ? 0.45 + 0.55 * towardsSun : 0.35 - 0.45 * towardsSun;
    vLight = vec2(0.5 + 0.5 * normal.z, direct);
    vShadowPlace = shadowPlace(p);
    vColor = aShare < 0.0 ? uNoValue : texelFetch(uTable, ivec2(int(aShare * 255.0 + 0.5), 0), 0).rgb;
    vHaze = haze(seen);
    gl_Position = uClip * vec4(seen, 1.0);
    if (uOutline) gl_Position.z += 0.0006 * gl_Position.w;
}
