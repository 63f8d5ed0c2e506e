in vec3 vNormal;
in vec3 vPoint;
in vec3 vShadowPlace;
in float vHaze;
uniform vec3 uColor;
uniform sampler2D uNoise;
out vec4 oColor;
void main()
{
    vec3 normal = normalize(vNormal);
    float sun = uSunStrength * sunlit(vShadowPlace, 0.025) * max(0.0, dot(normal, uSun));
    // Bark: streaks, longer upwards than round.
    float bark = texture(uNoise, vec2(vPoint.x + vPoint.y, 0.0) * 9.0 + vec2(0.0, vPoint.z * 1.6)).r;
    float bright = (0.60 + 0.12 * normal.z + 0.40 * sun) * (0.72 + 0.5 * bark);
    oColor = vec4(mix(uColor * bright, uHaze, vHaze), 1.0);
}
