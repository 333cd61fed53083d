// The yardstick of starting in a browser: a page of the same toolkit with one line on it.

#include <backends/imgui_impl_opengl3.h>
#include <emscripten/html5.h>
#include <imgui.h>

int main() {
    EmscriptenWebGLContextAttributes wish;
    emscripten_webgl_init_context_attributes(&wish);
    wish.majorVersion = 2;
    emscripten_webgl_make_context_current(emscripten_webgl_create_context("#canvas", &wish));
    ImGui::CreateContext();
    ImGui::GetIO().IniFilename = nullptr;
    ImGui::GetIO().DisplaySize = {960.0F, 600.0F};
    ImGui_ImplOpenGL3_Init("#version 300 es");
    ImGui_ImplOpenGL3_NewFrame();
    ImGui::NewFrame();
    ImGui::TextUnformatted("one line");
    ImGui::Render();
    ImGui_ImplOpenGL3_RenderDrawData(ImGui::GetDrawData());
    return 0;
}
