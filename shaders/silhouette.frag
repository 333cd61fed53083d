// The fly's shape against the key light: 1 where it is.

layout(location = 0) out vec4 out_colour;

void main() { out_colour = vec4(1.0); }
