// A feather barb or a hair: matt along the strand, a white highlight off its skin, a coloured one
// from inside it that lies a little further out, and light that comes through from behind.
// Source: Kajiya and Kay (1989) for the cone of light; two highlights, shifted along the strand, after
// Scheuermann, Practical real-time hair rendering and shading (SIGGRAPH 2004 sketches), who
// simplifies Marschner et al., Light scattering from human hair fibers (SIGGRAPH 2003).

uniform float gloss;  // 1 for hard shiny barbs, 0 for soft webby ones

vec3 lit_by(Surface s, vec3 along, vec3 to, vec3 light) {
    vec3 outer = normalize(along + 0.10 * s.normal);
    vec3 inner = normalize(along - 0.14 * s.normal);
    float side = 0.35 + 0.65 * saturate(0.5 + 0.5 * dot(s.normal, to));
    float through = pow(saturate(-dot(s.view, to)), 3.0);
    vec3 diffuse = s.colour * (0.85 * fibre_matt(along, to) * side + 0.5 * through) / pi;
    float white_one = fibre_highlight(outer, s.view, to, mix(30.0, 90.0, gloss));
    float tinted_one = fibre_highlight(inner, s.view, to, mix(10.0, 22.0, gloss));
    vec3 shine = mix(0.06, 0.16, gloss) * vec3(white_one) + mix(0.12, 0.30, gloss) * s.colour * tinted_one;
    return light * (diffuse + shine * side);
}

vec3 shade(Surface s) {
    vec3 along = s.along / max(length(s.along), 1e-4);
    vec3 light = lit_by(s, along, key_to, key_light) * s.open;
    light += lit_by(s, along, fill_to, fill_light) * s.ambient;
    light += lit_by(s, along, rim_to, rim_light) * mix(0.4, 1.0, s.ambient);
    // Whatever its normal, a thin thing is lit from all round.
    vec3 around = mix(ambient(s.normal), ambient(vec3(0.0, 0.2, 0.0)), 0.6);
    return light + s.colour * around * s.ambient;
}
