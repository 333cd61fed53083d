// Dear ImGui's lists: points in pixels from the upper left.

layout(location = 0) in vec2 in_position;
layout(location = 1) in vec2 in_texture;
layout(location = 2) in vec4 in_colour;

uniform vec4 to_clip;  // scale, offset

out vec2 v_texture;
out vec4 v_colour;

void main() {
    v_texture = in_texture;
    v_colour = in_colour;
    gl_Position = vec4(in_position * to_clip.xy + to_clip.zw, 0.0, 1.0);
}
