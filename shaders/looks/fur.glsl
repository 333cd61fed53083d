// Dubbing: a mass of loose fine fibres. Light reaches round it, and its edge glows.
// Source for the edge: Estevez and Kulla, Production friendly microfacet sheen BRDF (SIGGRAPH 2017
// course), a lobe round the horizon, here as a plain power.

vec3 shade(Surface s) {
    float mottled = 0.72 + 0.35 * lumps(s.place * 14.0) + 0.25 * lumps(s.place * 43.0);
    s.colour *= mottled;
    float edge = pow(1.0 - saturate(dot(s.normal, s.view)), 2.5);
    vec3 glow = s.colour * edge * (0.30 * key_light * s.open * saturate(0.3 + dot(s.normal, key_to)) +
                                   0.55 * rim_light * saturate(0.4 + dot(s.normal, rim_to)));
    return matt(s, 0.45) + glow * mix(0.5, 1.0, s.ambient);
}
