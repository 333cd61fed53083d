// A sheet of card that curves up behind the fly, and the fly's soft shadow on it.

in vec2 v_at;

uniform vec3 corner[3];      // on the picture plane in view space, mm: lower left, right, upward
uniform vec3 middle;          // of the fly
uniform float perspective;
uniform vec3 up;             // the studio's, in view space
uniform vec3 towards;        // level, to the camera's side
uniform float floor_below;   // of the fly's middle, mm
uniform float wall_behind;
uniform float fillet;        // radius of the bend between them
uniform mat4 to_mask;        // 0 to 1 in the shadows' maps
uniform sampler2D near_shadow;
uniform sampler2D far_shadow;
uniform vec3 card;           // linear, at its brightest
uniform float fall;          // how much darker its corners are
uniform float aspect;

layout(location = 0) out vec4 out_colour;

void main() {
    vec3 start = corner[0] + v_at.x * corner[1] + v_at.y * corner[2];
    vec3 run = normalize(mix(vec3(0.0, 0.0, -1.0), start, perspective));
    start = mix(start, vec3(0.0), perspective);
    // In the upright plane through the line of sight: (level, up) from the fly's middle.
    vec2 o = vec2(dot(start - middle, towards), dot(start - middle, up));
    vec2 d = vec2(dot(run, towards), dot(run, up));
    float t_floor = d.y < -1e-4 ? (-floor_below - o.y) / d.y : 1e9;
    float t_wall = d.x < -1e-4 ? (-wall_behind - o.x) / d.x : 1e9;
    float t = min(t_floor, t_wall);
    vec2 hit = o + t * d;
    vec2 bend = vec2(fillet - wall_behind, fillet - floor_below);
    vec2 facing = t_floor < t_wall ? vec2(0.0, 1.0) : vec2(1.0, 0.0);
    if (hit.x < bend.x && hit.y < bend.y) {
        vec2 q = o - bend;
        float b = dot(q, d);
        float c = dot(q, q) - fillet * fillet;
        float dd = max(dot(d, d), 1e-6);
        t = (-b + sqrt(max(0.0, b * b - dd * c))) / dd;
        facing = normalize(bend - (o + t * d));
    }
    vec3 place = start + t * run;
    vec3 normal = facing.x * towards + facing.y * up;

    vec2 from_middle = (v_at - vec2(0.48, 0.53)) * vec2(aspect, 1.0) / max(1.0, 0.5 * (aspect + 1.0));
    float pool = exp(-2.6 * dot(from_middle, from_middle));
    float light = mix(1.0 - fall, 1.0, pool) * (0.92 + 0.12 * saturate(dot(normal, key_to)));

    vec3 in_map = (to_mask * vec4(place, 1.0)).xyz;
    float hidden = mix(texture(near_shadow, in_map.xy).r, texture(far_shadow, in_map.xy).r, 0.6);
    // Nothing is known outside the map.
    vec2 inside = smoothstep(vec2(0.0), vec2(0.08), in_map.xy) *
                  smoothstep(vec2(0.0), vec2(0.08), 1.0 - in_map.xy);
    hidden *= inside.x * inside.y;
    light *= 1.0 - 0.5 * hidden;
    out_colour = vec4(encode_srgb(card * light), 1.0);
}
