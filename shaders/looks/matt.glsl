// Foam, and anything plain: matt, with a fine pore.

uniform float pores;

vec3 shade(Surface s) {
    float pore = lumps(s.place * 26.0);
    s.colour *= 1.0 - pores * 0.35 * smoothstep(0.55, 0.9, pore);
    return matt(s, 0.2) + mirror(s, s.normal, vec3(0.035), 0.6) * 0.6;
}
