// How much of the sky each point of the fly sees past what is near it.
// Source: McGuire, Osman, Bukowski and Hennessy, The Alchemy screen-space ambient obscurance
// algorithm (HPG 2011), eq. 10, over two radii: the groove between two turns, and the hollow
// under a wing.

in vec2 v_at;

uniform sampler2D depth_map;
uniform sampler2D normal_map;
uniform mat4 from_clip;     // to view space
uniform vec2 radius_share;  // of the larger radius, as shares of the picture's width and height
uniform float radius;       // the larger, mm
uniform float seed;

const float strength = 8.5;  // chosen by eye, with the two radii

layout(location = 0) out vec4 out_open;

vec3 view_place(vec2 at) {
    vec4 clip = vec4(2.0 * at - 1.0, 2.0 * textureLod(depth_map, at, 0.0).r - 1.0, 1.0);
    vec4 p = from_clip * clip;
    return p.xyz / p.w;
}

void main() {
    float depth = textureLod(depth_map, v_at, 0.0).r;
    if (depth >= 1.0) {
        out_open = vec4(1.0);
        return;
    }
    vec3 p = view_place(v_at);
    vec3 n = normalize(2.0 * textureLod(normal_map, v_at, 0.0).xyz - 1.0);
    // Turned by one of 16 angles in each 4 x 4 block, which blur.frag then averages.
    vec2 cell = mod(gl_FragCoord.xy, 4.0);
    float turn = 2.0 * pi / 16.0 * mod(floor(cell.x) * 4.0 + floor(cell.y) * 7.0 + seed, 16.0);
    float hidden = 0.0;
    for (int i = 0; i < 16; ++i) {
        float share = i < 8 ? 0.22 : 1.0;
        float a = turn + 2.3999632 * float(i);
        float r = share * (float(i % 8) + 0.5) / 8.0;
        vec2 at = v_at + r * radius_share * vec2(cos(a), sin(a));
        if (at != clamp(at, 0.0, 1.0)) continue;  // nothing is known beyond the edge
        vec3 v = view_place(at) - p;
        float reach = share * radius;
        float vv = dot(v, v);
        float vn = dot(v, n) - 0.015 * reach;
        float fade = max(0.0, 1.0 - vv / (reach * reach));
        hidden += fade * max(0.0, vn) / (sqrt(vv) + 0.05 * reach);
    }
    float open = max(0.0, 1.0 - strength * hidden / 16.0);
    out_open = vec4(open, open, open, 1.0);
}
