in vec2 v_texture;
in vec4 v_colour;

uniform sampler2D image;

layout(location = 0) out vec4 out_colour;

void main() { out_colour = v_colour * texture(image, v_texture); }
