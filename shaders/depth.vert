// One piece seen from the key light, or from the camera, for depth and normal.

layout(location = 0) in vec3 in_position;
layout(location = 1) in vec3 in_normal;

uniform mat4 to_view;
uniform mat4 to_clip;

out vec3 v_normal;

void main() {
    v_normal = mat3(to_view) * in_normal;
    gl_Position = to_clip * (to_view * vec4(in_position, 1.0));
}
