// Steps along edges become slopes: where brightness changes, the picture is averaged along the edge. In the manner of fast approximate
// anti-aliasing (Lottes 2009, from memory).
uniform sampler2D uPicture;
out vec4 oColor;

float brightness(vec3 color) { return dot(color, vec3(0.299, 0.587, 0.114)); }

void main()
{
    vec2 pixel = 1.0 / vec2(textureSize(uPicture, 0));
    vec2 at = gl_FragCoord.xy * pixel;
    vec3 here = texture(uPicture, at).rgb;
    float nw = brightness(texture(uPicture, at + vec2(-0.5, 0.5) * pixel).rgb);
    float ne = brightness(texture(uPicture, at + vec2(0.5, 0.5) * pixel).rgb);
    float sw = brightness(texture(uPicture, at + vec2(-0.5, -0.5) * pixel).rgb);
    float se = brightness(texture(uPicture, at + vec2(0.5, -0.5) * pixel).rgb);
    float middle = brightness(here);
    float low = min(middle, min(min(nw, ne), min(sw, se)));
    float high = max(middle, max(max(nw, ne), max(sw, se)));
    if (high - low < max(0.03, 0.12 * high))
    {
        oColor = vec4(here, 1.0);
        return;
    }

    vec2 along = vec2((sw + se) - (nw + ne), (nw + sw) - (ne + se));
    along /= min(abs(along.x), abs(along.y)) + max(0.03 * (nw + ne + sw + se), 0.008);
    along = clamp(along, -6.0, 6.0) * pixel;
    vec3 near = 0.5 * (texture(uPicture, at - along / 6.0).rgb + texture(uPicture, at + along / 6.0).rgb);
    vec3 far = 0.5 * near + 0.25 * (texture(uPicture, at - along * 0.5).rgb + texture(uPicture, at + along * 0.5).rgb);
    float reached = brightness(far);
    oColor = vec4(reached < low || reached > high ? near : far, 1.0);
}
