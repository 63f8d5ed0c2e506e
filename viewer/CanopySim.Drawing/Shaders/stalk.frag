in float vAcross;
in vec3 vSide;
in vec3 vFront;
in vec3 vShadowPlace;
in float vHaze;
uniform vec3 uColor;
out vec4 oColor;
void main()
{
    vec3 normal = vSide * vAcross + vFront * sqrt(max(0.0, 1.0 - vAcross * vAcross));
    float sun = uSunStrength * sunlit(vShadowPlace, 0.02) * max(0.0, dot(normal, uSun));
    float bright = 0.62 + 0.12 * normal.z + 0.36 * sun;
    oColor = vec4(mix(uColor * bright, uHaze, vHaze), 1.0);
}
