// Put before every other body.
precision highp float;

const float pi = 3.14159265;

float saturate(float x) { return clamp(x, 0.0, 1.0); }

// Brightness of a linear colour. Source: ITU-R BT.709, 3.3.
float luminance(vec3 c) { return dot(c, vec3(0.2126, 0.7152, 0.0722)); }

// Linear light to the sRGB signal and back. Source: IEC 61966-2-1:1999.
vec3 encode_srgb(vec3 c) {
    c = clamp(c, 0.0, 1.0);
    return mix(12.92 * c, 1.055 * pow(c, vec3(1.0 / 2.4)) - 0.055, step(0.0031308, c));
}
vec3 decode_srgb(vec3 c) {
    return mix(c / 12.92, pow((c + 0.055) / 1.055, vec3(2.4)), step(0.04045, c));
}

// Scene light to display light: straight up to middle tones, then a shoulder that reaches 1 at
// `white`. On brightness, so that a bright colour keeps its hue, with a little of each channel's own
// curve, so that highlights pale.
// Source: Reinhard et al., Photographic tone reproduction for digital images (2002), eq. 4.
const float white = 4.0;
vec3 tone(vec3 c) {
    vec3 each = c * (1.0 + c / (white * white)) / (1.0 + 0.55 * c);
    float l = max(luminance(c), 1e-5);
    vec3 whole = c * (1.0 + l / (white * white)) / (1.0 + 0.55 * l);
    return mix(whole, each, 0.6);
}

// A number in 0..1 from a place. Source: Jarzynski and Olano, Hash functions for GPU rendering,
// JCGT 9 (2020) no. 3: pcg3d.
uvec3 pcg3d(uvec3 v) {
    v = v * 1664525u + 1013904223u;
    v.x += v.y * v.z;
    v.y += v.z * v.x;
    v.z += v.x * v.y;
    v ^= v >> 16u;
    v.x += v.y * v.z;
    v.y += v.z * v.x;
    v.z += v.x * v.y;
    return v;
}
float hash(vec3 cell) {
    return float(pcg3d(uvec3(ivec3(cell) + 100000)).x >> 8u) / 16777216.0;
}

// Smooth noise in 0..1, one lump per unit.
float lumps(vec3 p) {
    vec3 i = floor(p);
    vec3 f = p - i;
    f = f * f * (3.0 - 2.0 * f);
    vec2 o = vec2(0.0, 1.0);
    vec4 near = vec4(hash(i + o.xxx), hash(i + o.yxx), hash(i + o.xyx), hash(i + o.yyx));
    vec4 far = vec4(hash(i + o.xxy), hash(i + o.yxy), hash(i + o.xyy), hash(i + o.yyy));
    vec4 z = mix(near, far, f.z);
    vec2 y = mix(z.xy, z.zw, f.y);
    return mix(y.x, y.y, f.x);
}
