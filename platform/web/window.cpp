// Backend in a browser: the canvas of the page. Input comes by the calls at the end of the file.

#include "platform/web/window.h"

#include "platform/web/keys.h"
#include "platform/web/page.h"

#include <GLES3/gl3.h>
#include <emscripten.h>
#include <emscripten/html5.h>
#include <imgui.h>
#include <iterator>
#include <string_view>
#include <utility>

namespace wrapwright {

namespace {

using Address = void (*)();

/// The calls are linked, not asked for: the browser's own list is twice as long as ours.
Address address_of(const char* name) {
#define WW_GL_ROW(upper, call)                                                                     \
    if (std::string_view(name) == "gl" #call) return reinterpret_cast<Address>(&gl##call);
    WW_GL_CALLS(WW_GL_ROW)
#undef WW_GL_ROW
    return nullptr;
}

constexpr double tablet_dots_per_mm = 160.0 / 25.4; ///< usual for units of fingers' screens

} // namespace

struct Backend::World {
    Gl gl{};
    double last_frame_ms = 0.0;
};

WebInput& web_input() {
    static WebInput input; // one page, one window
    return input;
}

Backend::Backend(std::unique_ptr<World> world) : world_(std::move(world)) {}
Backend::Backend(Backend&&) noexcept = default;
Backend::~Backend() = default;

Result<Backend> Backend::open(const WindowWish&) {
    EmscriptenWebGLContextAttributes wish;
    emscripten_webgl_init_context_attributes(&wish);
    wish.majorVersion = 2;
    wish.alpha = false;
    wish.depth = false; // the fly is drawn into textures of its own
    wish.antialias = false;
    const auto context = emscripten_webgl_create_context("#canvas", &wish);
    if (context <= 0 || emscripten_webgl_make_context_current(context) != 0) {
        return Error{ErrorCode::not_found,
                     "this browser gives no WebGL 2",
                     "switch its graphics acceleration on, or take another browser",
                     {}};
    }
    auto world = std::make_unique<World>();
    Result<Gl> gl = load_gl(GlKind::es_30, address_of);
    if (!gl.ok()) return gl.error();
    world->gl = gl.value();
    return Backend(std::move(world));
}

const Gl& Backend::gl() const { return world_->gl; }

GLuint Backend::framebuffer() const { return 0; }

PixelSize Backend::size() const { return web_input().dots; }

float Backend::scale() const { return web_input().scale; }

double Backend::dots_per_mm() const {
    return page::has_coarse_pointer() ? tablet_dots_per_mm : 0.0; // a page cannot know
}

Duration Backend::clock() const { return seconds(1e-3 * page::clock_ms()); }

Duration Backend::wall_clock() const { return seconds(1e-3 * web_input().wall_ms); }

bool Backend::wait(Duration) { return std::exchange(web_input().touched, false); }

void Backend::begin_frame() {
    ImGuiIO& io = ImGui::GetIO();
    const WebInput& in = web_input();
    io.DisplaySize = {static_cast<float>(in.dots.width) / in.scale,
                      static_cast<float>(in.dots.height) / in.scale};
    io.DisplayFramebufferScale = {in.scale, in.scale};
    const double now = page::clock_ms();
    io.DeltaTime = static_cast<float>(1e-3 * (now - world_->last_frame_ms));
    if (io.DeltaTime <= 0.0F) io.DeltaTime = 1.0F / 60.0F;
    world_->last_frame_ms = now;
}

void Backend::present() {} // the browser shows the canvas when the turn ends

std::vector<std::string> Backend::dropped() { return std::exchange(web_input().files, {}); }

std::string Backend::screen_name() const {
    return "browser " + std::to_string(std::lround(page::screen_width())) + " x " +
           std::to_string(std::lround(page::screen_height()));
}

void Backend::tick() { page::tick(); }

void Backend::say(const std::string& text) { page::say(text); }

bool Backend::picks_files() const { return true; }

bool Backend::has_camera() const { return page::has_camera(); }

void Backend::pick(FileKind kind) { page::pick(static_cast<int>(kind)); }

void Backend::give(const std::filesystem::path& file) { page::give(file.string()); }

bool Backend::is_closing() const { return false; }

void Backend::close() {} // a tab is closed by the browser

} // namespace wrapwright

using namespace wrapwright;

extern "C" {

EMSCRIPTEN_KEEPALIVE void ww_resize(int width, int height, float scale) {
    web_input().dots = {width, height};
    web_input().scale = scale;
    web_input().touched = true;
}

EMSCRIPTEN_KEEPALIVE void ww_finger(int what, int id, float x, float y) {
    web_input().touch.finger(ImGui::GetIO(), static_cast<Finger>(what), id, x, y);
    web_input().touched = true;
}

EMSCRIPTEN_KEEPALIVE void ww_mouse(float x, float y, int button, int down) {
    ImGuiIO& io = ImGui::GetIO();
    io.AddMouseSourceEvent(ImGuiMouseSource_Mouse);
    io.AddMousePosEvent(x, y);
    constexpr int of_browser[] = {ImGuiMouseButton_Left, ImGuiMouseButton_Middle,
                                  ImGuiMouseButton_Right};
    if (button >= 0 && button < 3) io.AddMouseButtonEvent(of_browser[button], down != 0);
    web_input().touched = true;
}

EMSCRIPTEN_KEEPALIVE void ww_wheel(float x, float y) {
    ImGuiIO& io = ImGui::GetIO();
    io.AddMouseSourceEvent(ImGuiMouseSource_Mouse);
    io.AddMouseWheelEvent(x, y);
    web_input().touched = true;
}

EMSCRIPTEN_KEEPALIVE void ww_key(const char* key, const char* code, int down, int held) {
    ImGuiIO& io = ImGui::GetIO();
    constexpr ImGuiKey mods[] = {ImGuiMod_Ctrl, ImGuiMod_Shift, ImGuiMod_Alt, ImGuiMod_Super};
    for (int i = 0; i < 4; ++i) io.AddKeyEvent(mods[i], (held >> i & 1) != 0);
    const ImGuiKey of = key_of(key, code);
    if (of != ImGuiKey_None) io.AddKeyEvent(of, down != 0);
    // A letter begins the cell of a table; the names of other keys have several, all of them ASCII.
    const bool letter = key[0] != 0 && (key[1] == 0 || (key[0] & 0x80) != 0);
    if (down != 0 && letter && (held & ~2) == 0) io.AddInputCharactersUTF8(key);
    web_input().touched = true;
}

/// A button of a gamepad or of a pedal that counts as one, by its number in the standard layout.
/// Source  W3C Gamepad, section 7, figure 1
EMSCRIPTEN_KEEPALIVE void ww_pad(int button, int down) {
    constexpr ImGuiKey keys[] = {ImGuiKey_GamepadFaceDown,
                                 ImGuiKey_GamepadFaceRight,
                                 ImGuiKey_GamepadFaceLeft,
                                 ImGuiKey_GamepadFaceUp,
                                 ImGuiKey_GamepadL1,
                                 ImGuiKey_GamepadR1,
                                 ImGuiKey_None,
                                 ImGuiKey_None,
                                 ImGuiKey_None,
                                 ImGuiKey_None,
                                 ImGuiKey_None,
                                 ImGuiKey_None,
                                 ImGuiKey_None,
                                 ImGuiKey_None,
                                 ImGuiKey_GamepadDpadLeft,
                                 ImGuiKey_GamepadDpadRight};
    if (button < 0 || button >= static_cast<int>(std::size(keys))) return;
    if (keys[button] != ImGuiKey_None) ImGui::GetIO().AddKeyEvent(keys[button], down != 0);
    web_input().touched = true;
}

EMSCRIPTEN_KEEPALIVE void ww_focus(int on) {
    ImGui::GetIO().AddFocusEvent(on != 0);
    web_input().touched = true;
}

/// A file that was dropped or picked lies there now.
EMSCRIPTEN_KEEPALIVE void ww_file(const char* file) {
    web_input().files.emplace_back(file);
    web_input().touched = true;
}
}
