// One triangle over the whole target, from no buffer.

out vec2 v_at;  // 0 to 1

void main() {
    v_at = vec2(float((gl_VertexID << 1) & 2), float(gl_VertexID & 2));
    gl_Position = vec4(2.0 * v_at - 1.0, 0.0, 1.0);
}
