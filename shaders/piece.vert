// One piece of the fly, for the picture.

layout(location = 0) in vec3 in_position;  // mm
layout(location = 1) in vec3 in_normal;
layout(location = 2) in vec3 in_grain;  // along the strand; its length says how sure that is

uniform mat4 to_view;
uniform mat4 to_clip;    // from view space
uniform mat4 to_shadow;  // from view space, 0 to 1

out vec3 v_view;
out vec3 v_normal;
out vec3 v_along;
out vec3 v_place;
out vec3 v_grain;
out vec3 v_shadow;

void main() {
    vec4 p = to_view * vec4(in_position, 1.0);
    v_view = p.xyz;
    v_normal = mat3(to_view) * in_normal;
    v_along = mat3(to_view) * in_grain;
    v_place = in_position;
    v_grain = in_grain;
    v_shadow = (to_shadow * p).xyz;
    gl_Position = to_clip * p;
}
