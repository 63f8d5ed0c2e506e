in vec3 vNormal;
in vec2 vSkin;
in vec3 vShadowPlace;
in float vHaze;
uniform vec3 uColor;
uniform bool uBerries;
out vec4 oColor;
void main()
{
    vec3 normal = normalize(vNormal);
    float relief = 1.0;
    if (uBerries)
    {
        // Berries in rows, each second row half a berry further: bright in the middle, dark between.
        vec2 at = vec2(vSkin.x * 1.5915, vSkin.y * 2.2);
        at.x += 0.5 * mod(floor(at.y), 2.0);
        vec2 inBerry = 2.0 * fract(at) - 1.0;
        float r = min(1.0, dot(inBerry, inBerry));
        relief = 1.08 - 0.5 * r;
        normal = normalize(normal + vec3(0.0, 0.0, 0.5 * inBerry.y));
    }

    float sun = uSunStrength * sunlit(vShadowPlace, 0.03) * max(0.0, dot(normal, uSun));
    float bright = (0.62 + 0.12 * normal.z + 0.36 * sun) * relief;
    oColor = vec4(mix(uColor * bright, uHaze, vHaze), 1.0);
}
