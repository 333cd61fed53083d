// Averages the supersampled picture in linear light, and rounds to 8 bits with a pattern, so that
// the soft backdrop shows no bands.
// Source: Bayer, An optimum method for two-level rendition of continuous-tone pictures (ICC 1973).

in vec2 v_at;

uniform sampler2D image;
uniform int factor;
uniform vec3 light; // what is left of each colour, 1 in air

layout(location = 0) out vec4 out_colour;

float bayer(ivec2 p) {
    ivec2 q = p & 1;
    ivec2 h = (p >> 1) & 1;
    int low = (q.x ^ q.y) * 2 + q.y;
    int high = (h.x ^ h.y) * 2 + h.y;
    return (float(low * 4 + high) + 0.5) / 16.0 - 0.5;
}

void main() {
    ivec2 at = ivec2(gl_FragCoord.xy);
    vec3 sum = vec3(0.0);
    for (int y = 0; y < factor; ++y) {
        for (int x = 0; x < factor; ++x) {
            sum += decode_srgb(texelFetch(image, at * factor + ivec2(x, y), 0).rgb);
        }
    }
    vec3 c = encode_srgb(light * sum / float(factor * factor));
    out_colour = vec4(c + bayer(at) / 255.0, 1.0);
}
