// What a look is given, and what several looks share.

struct Surface {
    vec3 normal;   // unit, towards the camera's side
    vec3 view;     // unit, to the camera
    vec3 along;    // along the strand: its length says how sure that is, 0 to 1
    vec3 from_middle; // of the picture, in distances of the lamps
    vec3 place;    // in the fly, mm: for what is grained
    vec3 along_place; // unit, along the strand there
    vec3 colour;   // linear
    float open;    // share of the key light that is not in shadow
    float ambient; // share of the studio that is not hidden by what is near
};

// A matt surface under the three lights. `wrap` lets light reach round the edge, as a large lamp or
// a loose surface does.
vec3 matt(Surface s, float wrap) {
    vec3 lit = key_light * s.open * saturate((dot(s.normal, key_to) + wrap) / (1.0 + wrap));
    lit += fill_light * saturate((dot(s.normal, fill_to) + wrap) / (1.0 + wrap)) * s.ambient;
    lit += rim_light * saturate((dot(s.normal, rim_to) + wrap) / (1.0 + wrap)) * s.ambient;
    return s.colour * (lit / pi + ambient(s.normal) * s.ambient);
}

// What a surface of that roughness reflects of the studio.
// Source: GGX (Walter et al., Microfacet models for refraction, EGSR 2007) with Schlick's Fresnel
// (An inexpensive BRDF model, 1994), integrated over a wide light as in Lazarov, Getting more
// physical in Call of Duty: Black Ops II (SIGGRAPH 2013 course), whose fit this is.
vec3 reflectance(vec3 straight_on, float rough, float cos_view) {
    vec4 r = rough * vec4(-1.0, -0.0275, -0.572, 0.022) + vec4(1.0, 0.0425, 1.04, -0.04);
    float a = min(r.x * r.x, exp2(-9.28 * cos_view)) * r.x + r.y;
    vec2 scale_bias = vec2(-1.04, 1.04) * a + r.zw;
    return straight_on * scale_bias.x + scale_bias.y;
}

// How much of a mirror image near things hide.
// Source: Lagarde and de Rousiers, Moving Frostbite to PBR (SIGGRAPH 2014 course), listing 26.
float mirror_open(float cos_view, float open, float rough) {
    return saturate(pow(cos_view + open, exp2(-16.0 * rough - 1.0)) - 1.0 + open);
}

vec3 mirror(Surface s, vec3 normal, vec3 straight_on, float rough) {
    float cos_view = saturate(dot(normal, s.view));
    // The lamps stand near: what a flat face mirrors changes along it, as in Lagarde and Zanuttini,
    // Local image-based lighting with parallax-corrected cubemaps (SIGGRAPH 2012 talks).
    vec3 to = normalize(reflect(-s.view, normal) + s.from_middle);
    float open = mirror_open(cos_view, s.ambient, rough);
    return reflectance(straight_on, rough, cos_view) * studio(to, rough, mix(0.35, 1.0, s.open)) *
           open;
}

// Highlight of a thin fibre in one light.
// Source: Kajiya and Kay, Rendering fur with three dimensional textures (SIGGRAPH 1989), eq. 13-14:
// light leaves on a cone about the fibre.
float fibre_highlight(vec3 along, vec3 view, vec3 to, float sharpness) {
    float tl = dot(along, to);
    float tv = dot(along, view);
    float c = sqrt(max(0.0, 1.0 - tl * tl)) * sqrt(max(0.0, 1.0 - tv * tv)) - tl * tv;
    return pow(saturate(c), sharpness);
}
float fibre_matt(vec3 along, vec3 to) {
    float tl = dot(along, to);
    return sqrt(max(0.0, 1.0 - tl * tl));
}
