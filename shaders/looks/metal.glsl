// Polished metal, steel or brass: nothing but what it mirrors. Turned or drawn work has fine marks
// round or along it, which stretch what it mirrors across them: the normal leans as in McAuley,
// Rendering the world of Far Cry 4 (GDC 2015).

uniform float roughness;

vec3 shade(Surface s) {
    float grained = 0.35 * dot(s.along, s.along);
    vec3 along = s.along / max(length(s.along), 1e-4);
    vec3 across = cross(along, s.view);
    vec3 leaning = cross(across, along);
    float facing = saturate(dot(s.normal, s.view));
    vec3 normal = normalize(mix(s.normal, normalize(leaning + 1e-4 * s.normal), grained * facing * 0.5));
    return mirror(s, normal, s.colour, roughness);
}
