// Spun or flat filaments side by side: matt across, a soft streak of light along each turn.

vec3 shade(Surface s) {
    float sure = length(s.along);
    vec3 along = s.along / max(sure, 1e-4);
    vec3 body = matt(s, 0.25);
    float key = fibre_highlight(along, s.view, key_to, 26.0) * saturate(dot(s.normal, key_to) * 2.0);
    float rim = fibre_highlight(along, s.view, rim_to, 18.0) * saturate(dot(s.normal, rim_to) * 2.0);
    vec3 tint = mix(vec3(1.0), s.colour / max(luminance(s.colour), 0.05), 0.35);
    vec3 streak = tint * (0.17 * key_light * key * s.open + 0.12 * rim_light * rim * s.ambient);
    return body + sure * streak + mirror(s, s.normal, vec3(0.03), 0.5) * 0.6;
}
