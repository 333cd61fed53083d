// Clear resin, varnish or vinyl: what lies below shows through, the studio mirrors on top.

uniform float opacity;

vec3 shade(Surface s) { return matt(s, 0.3); }

#define CLEAR

// What the film mirrors, and the share of light that it keeps from passing. The far side, seen from
// within, mirrors less.
vec4 gloss(Surface s) {
    float part = gl_FrontFacing ? 0.8 : 0.25;
    float kept = reflectance(vec3(0.045), 0.06, saturate(dot(s.normal, s.view))).r;
    return part * vec4(mirror(s, s.normal, vec3(0.045), 0.06), kept);
}
