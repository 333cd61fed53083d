// Blurs one channel along a line. With a depth map, only over what lies at the same depth.

in vec2 v_at;

uniform sampler2D image;
uniform sampler2D depth_map;
uniform vec2 along;        // one step, as a share of the image
uniform float depth_scale; // 0 for a plain blur
uniform int taps;          // on each side
uniform float sigma;       // in steps

layout(location = 0) out vec4 out_colour;

void main() {
    float here = textureLod(depth_map, v_at, 0.0).r;
    float sum = 0.0;
    float weight = 0.0;
    for (int i = -taps; i <= taps; ++i) {
        vec2 at = v_at + float(i) * along;
        float w = exp(-0.5 * float(i * i) / (sigma * sigma));
        if (depth_scale > 0.0) {
            float apart = abs(textureLod(depth_map, at, 0.0).r - here) * depth_scale;
            w *= exp(-apart * apart);
        }
        sum += w * textureLod(image, at, 0.0).r;
        weight += w;
    }
    out_colour = vec4(vec3(sum / weight), 1.0);
}
