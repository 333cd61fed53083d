// Clear resin, varnish or vinyl: what lies below shows through, the studio mirrors on top.

uniform float opacity;

vec3 shade(Surface s) { return matt(s, 0.3); }

#define CLEAR

vec3 gloss(Surface s) { return mirror(s, s.normal, vec3(0.045), 0.06); }
