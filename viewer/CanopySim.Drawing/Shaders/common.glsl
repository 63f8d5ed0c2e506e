// What every shader of the scene knows. Lengths are meters in the frame of the cell; x across the row, y along it, z up.
uniform mat4 uClip;
uniform vec3 uEye;
uniform vec3 uSun;          // unit vector towards the sun
uniform float uSunStrength; // 0 without sun
uniform vec2 uRise;         // of the ground, per meter of x and y
uniform vec2 uCell;         // across, along
uniform vec2 uHeights;      // highest and lowest point of the shadow map, over the ground
uniform vec3 uOffsets[128]; // of the copies of the cell that are drawn
uniform bool uCasting;      // drawn as the sun sees it, into the shadow map
uniform vec3 uHaze;
uniform vec2 uHazeRange;
uniform sampler2DShadow uShadow;
uniform float uPenumbra;    // half width of a shadow's soft edge; 0: one sample

float heightOver(vec3 p) { return p.z - dot(uRise, p.xy); }

// Where a point's ray to the sun meets the ground, in cells, and how far down it lies. The vineyard repeats, and so does this map:
// whatever stands between a point and the sun, in any copy of the cell, has the same place and a smaller depth.
vec3 shadowPlace(vec3 p)
{
    float height = heightOver(p);
    float climb = uSun.z - dot(uRise, uSun.xy);
    vec2 foot = p.xy - uSun.xy * (height / climb);
    return vec3(foot / uCell, (uHeights.x - height) / (uHeights.x - uHeights.y));
}

vec4 castPosition(vec3 p)
{
    vec3 place = shadowPlace(p);
    return vec4(2.0 * place - 1.0, 1.0);
}

float haze(vec3 p) { return smoothstep(uHazeRange.x, uHazeRange.y, distance(p, uEye)); }

// Share of the sun that reaches a place, 0 to 1.
float sunlit(vec3 place, float bias)
{
    if (uSunStrength <= 0.0) return 0.0;
    float depth = place.z - bias / (uHeights.x - uHeights.y);
    if (uPenumbra <= 0.0) return texture(uShadow, vec3(place.xy, depth));
    vec2 r = uPenumbra / uCell;
    vec4 taps = vec4(
        texture(uShadow, vec3(place.xy + r * vec2(0.3, 0.9), depth)),
        texture(uShadow, vec3(place.xy + r * vec2(0.9, -0.3), depth)),
        texture(uShadow, vec3(place.xy + r * vec2(-0.3, -0.9), depth)),
        texture(uShadow, vec3(place.xy + r * vec2(-0.9, 0.3), depth)));
    return dot(taps, vec4(0.25));
}
