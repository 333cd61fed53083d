// 1 where the key light meets the fly: from the shadow map's depth.

in vec2 v_at;

uniform sampler2D depth_map;

layout(location = 0) out vec4 out_colour;

void main() {
    vec2 texel = 1.0 / vec2(textureSize(depth_map, 0));
    float sum = 0.0;
    for (int i = 0; i < 16; ++i) {
        vec2 at = v_at + (vec2(float(i % 4), float(i / 4)) - 1.5) * texel;
        sum += 1.0 - step(1.0, textureLod(depth_map, at, 0.0).r);
    }
    out_colour = vec4(vec3(sum / 16.0), 1.0);
}
