// One piece of the fly: gathers what its look needs, and writes display light. A look's `shade`
// stands before this.

in vec3 v_view;
in vec3 v_normal;
in vec3 v_along;
in vec3 v_place;
in vec3 v_grain;
in vec3 v_shadow;

uniform highp sampler2DShadow shadow_map;
uniform sampler2D occlusion;
uniform vec2 pixel_size;      // of the target, as shares of it
uniform float shadow_texel;   // of the shadow map, as a share of it
uniform float shadow_bias;    // the same as a share of its depth
uniform vec3 middle;          // of the picture, in view space
uniform float lamp_distance;  // mm
uniform float perspective;    // 1 when the camera is a point, 0 when it is far away
uniform vec3 colour;
uniform float calm;           // 0 shown as it is, towards 1 paled into the backdrop

layout(location = 0) out vec4 out_colour;

// Places on a disc of radius 1, each for an equal share of it, turned by the golden angle.
const vec2 disc[8] = vec2[8](
    vec2(0.2500, 0.0000), vec2(-0.3193, 0.2925), vec2(0.0489, -0.5569), vec2(0.4024, 0.5249),
    vec2(-0.7385, -0.1306), vec2(0.6996, -0.4450), vec2(-0.2340, 0.8705), vec2(-0.4463, -0.8593));

// Share of the key light that arrives: the places of the disc round the point, turned from pixel
// to pixel by the gradient noise of Jimenez, Next generation post processing in Call of Duty:
// Advanced Warfare (SIGGRAPH 2014 course).
// Source: percentage-closer filtering, Reeves, Salesin and Cook (SIGGRAPH 1987).
float key_open(vec3 normal) {
    float slope = 1.0 - saturate(dot(normal, key_to));
    vec3 at = v_shadow;
    at.z -= shadow_bias * (1.5 + 5.0 * slope);
    float turn = 2.0 * pi * fract(52.9829189 * fract(dot(gl_FragCoord.xy, vec2(0.06711056, 0.00583715))));
    vec2 right = 3.2 * shadow_texel * vec2(cos(turn), sin(turn));
    vec2 up = vec2(-right.y, right.x);
    float sum = 0.0;
    for (int i = 0; i < 8; ++i) {
        sum += texture(shadow_map, vec3(at.xy + disc[i].x * right + disc[i].y * up, at.z));
    }
    return sum / 8.0;
}

void main() {
    Surface s;
    s.view = normalize(mix(vec3(0.0, 0.0, 1.0), -v_view, perspective));
    s.normal = normalize(v_normal);
    if (dot(s.normal, s.view) < 0.0 && !gl_FrontFacing) s.normal = -s.normal;
    s.along = v_along - dot(v_along, s.normal) * s.normal;
    s.from_middle = (v_view - middle) / lamp_distance;
    s.place = v_place;
    s.along_place = v_grain / max(length(v_grain), 1e-4);
    s.colour = colour;
    s.open = key_open(s.normal);
    s.ambient = texture(occlusion, gl_FragCoord.xy * pixel_size).r;
    vec3 light = shade(s);
    light = mix(light, vec3(backdrop_light) * 0.75 + 0.12 * vec3(luminance(light)), calm);
    vec3 signal = encode_srgb(tone(light));
#ifdef CLEAR
    // What lies below shows through the body and past the gloss.
    float body = opacity * opacity;
    vec4 mirrored = gloss(s) * (1.0 - calm);
    vec3 shine = encode_srgb(tone(mirrored.rgb));
    out_colour = vec4(signal * body + shine, 1.0 - (1.0 - body) * (1.0 - max(mirrored.a, luminance(shine))));
#else
    out_colour = vec4(signal, 1.0);
#endif
}
