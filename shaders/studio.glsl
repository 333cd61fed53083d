// The studio: lights and what a mirror would see, in view space (x right, y up, z to the camera).
// It stands still while the fly turns, as on a photographer's table.

const vec3 key_to = vec3(-0.4851, 0.6864, 0.5417);  // unit vectors towards the lights
const vec3 fill_to = vec3(0.7845, 0.1177, 0.6088);
const vec3 rim_to = vec3(0.3980, 0.6368, -0.6605);
const vec3 key_light = vec3(2.95, 2.86, 2.70);
const vec3 fill_light = vec3(0.40, 0.44, 0.50);
const vec3 rim_light = vec3(1.20, 1.24, 1.30);

uniform float backdrop_light;  // brightness of the backdrop behind the fly

// A soft box seen from the fly: 1 inside its outline, softened by `blur` (tan of an angle).
float soft_box(vec3 to, vec3 at, vec3 right, vec2 half_size, float blur) {
    float ahead = dot(to, at);
    vec2 q = abs(vec2(dot(to, right), dot(to, cross(at, right)))) / max(ahead, 0.02);
    vec2 inside = smoothstep(half_size + blur, half_size - blur, q);
    // What blurs wider than the box pales by as much.
    vec2 spread = half_size / (half_size + max(vec2(0.0), blur - half_size));
    return inside.x * inside.y * spread.x * spread.y * step(0.0, ahead);
}

// Light from the boxes in a direction, for a surface that blurs them by `rough`; `open` dims the key
// box where the fly itself is in its way.
vec3 boxes(vec3 to, float rough, float open) {
    float blur = 0.03 + 1.1 * rough;
    float key = soft_box(to, key_to, vec3(0.7450, 0.0, 0.6671), vec2(0.46, 0.34), blur);
    float strip = soft_box(to, vec3(0.8137, 0.1017, 0.5722), vec3(0.5752, 0.0, -0.8180),
                           vec2(0.10, 0.75), blur);
    float top = soft_box(to, vec3(0.0, 0.9798, -0.2), vec3(1.0, 0.0, 0.0), vec2(1.1, 0.22), blur);
    float low = soft_box(to, vec3(-0.2, -0.85, 0.4873), vec3(0.9798, 0.0, 0.2), vec2(0.9, 0.25), blur);
    return vec3(4.6, 4.5, 4.3) * key * open + vec3(2.4, 2.5, 2.65) * strip +
           vec3(1.9) * top + vec3(0.40) * low;
}

// All that a mirror sees: the dark room on the camera's side, the bright backdrop behind the fly,
// the table below, and the boxes.
vec3 studio(vec3 to, float rough, float open) {
    float soft = 0.25 + 0.9 * rough;
    float behind = smoothstep(soft, -soft, to.z + 0.12);
    float up = smoothstep(-soft, soft, to.y);
    vec3 room = mix(vec3(0.23, 0.225, 0.22), vec3(0.36, 0.37, 0.39), up);
    vec3 card = vec3(backdrop_light) * mix(0.85, 1.05, up);
    return mix(room, card, behind) + boxes(to, rough, open);
}

// Light from everywhere on a matt surface that looks that way.
vec3 ambient(vec3 normal) {
    float up = 0.5 + 0.5 * normal.y;
    float behind = saturate(-normal.z);
    return mix(vec3(0.10, 0.098, 0.095), vec3(0.32, 0.325, 0.335), up) + 0.22 * backdrop_light * behind;
}
