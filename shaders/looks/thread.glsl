// Spun or flat filaments side by side: matt across, a soft streak of light along each turn.

// Filaments as brighter and darker lines, 1 on average: noise smeared along the strand, as in Cabral
// and Leedom, Imaging vector fields using line integral convolution (SIGGRAPH 1993). Where they are
// finer than a pixel there are none.
float filaments(vec3 place, vec3 along) {
    const float per_mm = 38.0;
    float sum = 0.0;
    for (int i = 0; i < 4; ++i) {
        sum += lumps((place + (float(i) - 1.5) * 0.028 * along) * per_mm);
    }
    vec3 step_size = fwidth(place) * per_mm;
    float shown = 1.0 - smoothstep(0.35, 1.0, max(step_size.x, max(step_size.y, step_size.z)));
    return 1.0 + shown * 1.5 * (0.25 * sum - 0.5);
}

vec3 shade(Surface s) {
    float sure = length(s.along);
    vec3 along = s.along / max(sure, 1e-4);
    float line = mix(1.0, filaments(s.place, s.along_place), sure);
    s.colour *= line;
    vec3 body = matt(s, 0.25);
    float key = fibre_highlight(along, s.view, key_to, 26.0) * saturate(dot(s.normal, key_to) * 2.0);
    float rim = fibre_highlight(along, s.view, rim_to, 18.0) * saturate(dot(s.normal, rim_to) * 2.0);
    vec3 tint = mix(vec3(1.0), s.colour / max(luminance(s.colour), 0.05), 0.5);
    vec3 streak = tint * line * (0.13 * key_light * key * s.open + 0.10 * rim_light * rim * s.ambient);
    return body + sure * streak + mirror(s, s.normal, vec3(0.03), 0.5) * 0.4;
}
