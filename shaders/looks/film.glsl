// Clear resin, varnish or vinyl: what lies below shows through, the studio mirrors on top.

uniform float opacity;

vec3 shade(Surface s) { return matt(s, 0.3); }

#define CLEAR

// The far side, seen from within, mirrors less.
vec3 gloss(Surface s) {
    return mirror(s, s.normal, vec3(0.045), 0.06) * (gl_FrontFacing ? 0.8 : 0.35);
}
