// The camera's depth and normal, for occlusion.frag.

in vec3 v_normal;

layout(location = 0) out vec4 out_normal;

void main() {
    vec3 n = normalize(v_normal);
    if (!gl_FrontFacing) n = -n;
    out_normal = vec4(0.5 + 0.5 * n, 1.0);
}
