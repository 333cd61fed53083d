// Soft dull metal under a grey skin of oxide.

vec3 shade(Surface s) {
    float skin = 0.75 + 0.5 * lumps(s.place * 9.0);
    vec3 dull = matt(s, 0.15) * 0.75;
    return skin * (dull + mirror(s, s.normal, s.colour * 0.55, 0.42));
}
