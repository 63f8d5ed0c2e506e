// Blades of the cell in one mesh; instance = copy of the cell.
layout(location = 0) in vec3 aPoint;
layout(location = 1) in vec3 aNormal;
layout(location = 2) in vec3 aBlade; // place in the unit blade, number of the blade

uniform samplerBuffer uShares;
uniform sampler2D uTable;
uniform vec3 uNoValue;
uniform vec4 uSwell; // a point from which all is blown up, and how much

flat out vec3 vColor;
flat out int vBlade;
out vec3 vShadowPlace;
out vec2 vPoint;
flat out vec2 vLight;
out float vHaze;

void main()
{
    vec3 at = uSwell.xyz + (aPoint - uSwell.xyz) * uSwell.w;
    vec3 seen = at + uOffsets[gl_InstanceID];
    vBlade = int(aBlade.z);
    if (uCasting)
    {
        gl_Position = castPosition(seen);
        return;
    }

    vPoint = aBlade.xy;
    vec3 normal = dot(aNormal, uEye - seen) < 0.0 ? -aNormal : aNormal;
    float towardsSun = dot(normal, uSun);
    // A blade lit from behind glows a little less than one lit from the front.
    float direct = towardsSun > 0.0 ? 0.45 + 0.55 * towardsSun : 0.35 - 0.45 * towardsSun;
    vLight = vec2(0.5 + 0.5 * normal.z, direct);
    vShadowPlace = shadowPlace(at);
    float share = texelFetch(uShares, vBlade).r;
    vColor = share < 0.0 ? uNoValue : texelFetch(uTable, ivec2(int(share * 255.0 + 0.5), 0), 0).rgb;
    vHaze = haze(seen);
    gl_Position = uClip * vec4(seen, 1.0);
}
