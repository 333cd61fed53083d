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
uniform float shadow_texel;
uniform vec3 middle;          // of the picture, in view space
uniform float lamp_distance;  // mm
uniform float perspective;    // 1 when the camera is a point, 0 when it is far away
uniform vec3 colour;
uniform float calm;           // 0 shown as it is, towards 1 paled into the backdrop

layout(location = 0) out vec4 out_colour;

// Share of the key light that arrives: 12 places round the point, turned from pixel to pixel.
// Source: percentage-closer filtering, Reeves, Salesin and Cook (SIGGRAPH 1987).
float key_open(vec3 normal) {
    float slope = 1.0 - saturate(dot(normal, key_to));
    vec3 at = v_shadow;
    at.z -= 0.0012 + 0.004 * slope;
    float turn = 2.0 * pi * hash(vec3(gl_FragCoord.xy, 7.0));
    float sum = 0.0;
    for (int i = 0; i < 12; ++i) {
        float a = turn + 2.3999632 * float(i);
        float r = sqrt((float(i) + 0.5) / 12.0) * 3.2 * shadow_texel;
        sum += texture(shadow_map, vec3(at.xy + r * vec2(cos(a), sin(a)), at.z));
    }
    return sum / 12.0;
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
    vec3 shine = encode_srgb(tone(gloss(s))) * (1.0 - calm);
    float open = (1.0 - opacity) * (1.0 - luminance(shine));
    out_colour = vec4(signal * opacity + shine, 1.0 - open);
#else
    out_colour = vec4(signal, 1.0);
#endif
}
