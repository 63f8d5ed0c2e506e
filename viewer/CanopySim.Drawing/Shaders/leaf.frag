flat in vec3 vColor;
flat in int vBlade;
in vec3 vShadowPlace;
in vec2 vPoint;
flat in vec2 vLight;
in float vHaze;

uniform bool uShaded;
uniform bool uVeins;
uniform int uSelected;

out vec4 oColor;

// Distance to a vein from the petiole at an angle from the midrib, both halves alike.
float vein(vec2 p, vec2 along) { return abs(p.x * along.y - p.y * along.x) + max(0.0, -dot(p, along)); }

void main()
{
    vec3 color = vColor;
    if (uShaded)
    {
        float sun = uSunStrength * sunlit(vShadowPlace, 0.012);
        // Never darker than three quarters: a color must be found again in the legend.
        float bright = 0.78 + 0.07 * vLight.x + 0.17 * sun * vLight.y;
        if (uVeins)
        {
            vec2 p = vec2(abs(vPoint.x), vPoint.y);
            float d = min(p.x, min(vein(p, vec2(0.927, 0.375)), vein(p, vec2(0.596, 0.803))));
            bright += 0.045 * (1.0 - smoothstep(0.006, 0.022, d));
        }

        color = min(vec3(1.0), color * bright);
    }

    if (vBlade == uSelected) color = mix(color, vec3(1.0), 0.25);
    oColor = vec4(mix(color, uHaze, vHaze), 1.0);
}
