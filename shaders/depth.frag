// Depth alone.

void main() {}
