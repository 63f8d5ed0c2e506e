in vec3 vPoint;
uniform sampler2D uNoise;
uniform vec3 uEarth;
uniform vec3 uAlley;
uniform float uRowSpacing;
uniform float uDarkUnderRow;
out vec4 oColor;
void main()
{
    float rough = texture(uNoise, vPoint.xy * 0.43).r;
    float fromRow = abs(vPoint.x - uRowSpacing * round(vPoint.x / uRowSpacing));
    float alley = smoothstep(0.30, 0.62, fromRow + 0.22 * (rough - 0.5));
    vec3 color = mix(uEarth, uAlley, alley) * (0.86 + 0.28 * rough);
    vec3 up = normalize(vec3(-uRise, 1.0));
    float sun = uSunStrength * sunlit(shadowPlace(vPoint), 0.01) * max(0.0, dot(up, uSun));
    float open = 1.0 - uDarkUnderRow * (1.0 - smoothstep(0.0, 0.9, fromRow));
    color *= (0.66 * open + 0.36 * sun);
    oColor = vec4(mix(color, uHaze, haze(vPoint)), 1.0);
}
