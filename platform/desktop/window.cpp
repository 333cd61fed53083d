// Backend on the desktop: one GLFW window. ImGui's own GLFW part hands it keys and pointer.

#include "platform/backend.h"
#include "platform/desktop/pedal.h"
#include "platform/desktop/tick.h"
#include "platform/desktop/voice.h"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
#include <algorithm>
#include <backends/imgui_impl_glfw.h>
#include <chrono>
#include <imgui.h>
#include <utility>

namespace wrapwright {

namespace {

/// A gamepad tells nothing by itself: it is asked this often, while one is there.
constexpr double gamepad_seconds = 0.04;

std::string last_complaint; // GLFW reports through a plain function

Error no_window() {
    return {ErrorCode::not_found,
            "no window can be opened: " + last_complaint,
            "start it where there is a screen with OpenGL 3.3, or use the command line",
            {}};
}

} // namespace

struct Backend::World {
    GLFWwindow* window = nullptr;
    Gl gl{};
    Pedal pedal{};
    Tick sound{};
    Voice voice{};
    bool touched = true;              ///< something happened that asks for a frame
    bool fed = false;                 ///< ImGui listens
    std::vector<std::string> files{}; ///< dropped on the window

    static World& of(GLFWwindow* w) { return *static_cast<World*>(glfwGetWindowUserPointer(w)); }
    void listen() const;
    World() = default;
    World(const World&) = delete;
    World& operator=(const World&) = delete;
    ~World() {
        if (fed) ImGui_ImplGlfw_Shutdown();
        if (window != nullptr) glfwDestroyWindow(window);
        glfwTerminate();
    }
};

/// Marks every event. ImGui's part calls these before it takes the event itself.
void Backend::World::listen() const {
    GLFWwindow* w = window;
    glfwSetKeyCallback(w, [](GLFWwindow* x, int, int, int, int) { of(x).touched = true; });
    glfwSetCharCallback(w, [](GLFWwindow* x, unsigned) { of(x).touched = true; });
    glfwSetMouseButtonCallback(w, [](GLFWwindow* x, int, int, int) { of(x).touched = true; });
    glfwSetCursorPosCallback(w, [](GLFWwindow* x, double, double) { of(x).touched = true; });
    glfwSetScrollCallback(w, [](GLFWwindow* x, double, double) { of(x).touched = true; });
    glfwSetWindowFocusCallback(w, [](GLFWwindow* x, int) { of(x).touched = true; });
    glfwSetWindowRefreshCallback(w, [](GLFWwindow* x) { of(x).touched = true; });
    glfwSetFramebufferSizeCallback(w, [](GLFWwindow* x, int, int) { of(x).touched = true; });
    glfwSetDropCallback(w, [](GLFWwindow* x, int count, const char** dropped) {
        of(x).touched = true;
        of(x).files.insert(of(x).files.end(), dropped, dropped + count);
    });
    glfwSetWindowCloseCallback(w, [](GLFWwindow* x) { of(x).touched = true; });
}

Backend::Backend(std::unique_ptr<World> world) : world_(std::move(world)) {}
Backend::Backend(Backend&&) noexcept = default;
Backend::~Backend() = default;

Result<Backend> Backend::open(const WindowWish& wish) {
    glfwSetErrorCallback([](int, const char* words) { last_complaint = words; });
    auto world = std::make_unique<World>();
    if (glfwInit() == GLFW_FALSE) return no_window();
    glfwWindowHint(GLFW_CONTEXT_VERSION_MAJOR, 3);
    glfwWindowHint(GLFW_CONTEXT_VERSION_MINOR, 3);
    glfwWindowHint(GLFW_OPENGL_PROFILE, GLFW_OPENGL_CORE_PROFILE);
    glfwWindowHint(GLFW_DEPTH_BITS, 0); // the fly is drawn into textures of its own
    glfwWindowHint(GLFW_STENCIL_BITS, 0);
    glfwWindowHintString(GLFW_X11_CLASS_NAME, "wrapwright");
    GLFWmonitor* screen = wish.full_screen ? glfwGetPrimaryMonitor() : nullptr;
    PixelSize size = wish.size;
    if (screen != nullptr) {
        const GLFWvidmode* mode = glfwGetVideoMode(screen);
        size = {mode->width, mode->height};
    }
    world->window = glfwCreateWindow(size.width, size.height, wish.title.c_str(), screen, nullptr);
    if (world->window == nullptr) return no_window();
    glfwSetWindowSizeLimits(world->window, 480, 320, GLFW_DONT_CARE, GLFW_DONT_CARE);
    glfwMakeContextCurrent(world->window);
    glfwSwapInterval(1);
    Result<Gl> gl =
        load_gl(GlKind::desktop_33, [](const char* name) { return glfwGetProcAddress(name); });
    if (!gl.ok()) return gl.error();
    world->gl = gl.value();
    glfwSetWindowUserPointer(world->window, world.get());
    world->listen();
    world->fed = ImGui_ImplGlfw_InitForOpenGL(world->window, true);
    return Backend(std::move(world));
}

const Gl& Backend::gl() const { return world_->gl; }

GLuint Backend::framebuffer() const { return 0; }

PixelSize Backend::size() const {
    PixelSize size;
    glfwGetFramebufferSize(world_->window, &size.width, &size.height);
    return size;
}

float Backend::scale() const { return 1.0F; }

double Backend::dots_per_mm() const {
    GLFWmonitor* screen = glfwGetPrimaryMonitor();
    if (screen == nullptr) return 0.0;
    int width_mm = 0;
    int height_mm = 0;
    glfwGetMonitorPhysicalSize(screen, &width_mm, &height_mm);
    const GLFWvidmode* mode = glfwGetVideoMode(screen);
    return width_mm > 0 && mode != nullptr ? static_cast<double>(mode->width) / width_mm : 0.0;
}

Duration Backend::clock() const { return seconds(glfwGetTime()); }

Duration Backend::wall_clock() const {
    return seconds(
        std::chrono::duration<double>(std::chrono::system_clock::now().time_since_epoch()).count());
}

bool Backend::wait(Duration longest) {
    const double until = glfwGetTime() + in_seconds(longest);
    glfwPollEvents();
    while (!world_->touched && !glfwWindowShouldClose(world_->window)) {
        if (world_->pedal.ask(ImGui::GetIO())) break;
        const double left = until - glfwGetTime();
        if (left <= 0.0) return false;
        glfwWaitEventsTimeout(world_->pedal.present() ? std::min(left, gamepad_seconds) : left);
    }
    world_->touched = false;
    return true;
}

void Backend::begin_frame() { ImGui_ImplGlfw_NewFrame(); }

void Backend::present() { glfwSwapBuffers(world_->window); }

std::vector<std::string> Backend::dropped() { return std::exchange(world_->files, {}); }

std::string Backend::screen_name() const {
    GLFWmonitor* screen = glfwGetPrimaryMonitor();
    const GLFWvidmode* mode = screen == nullptr ? nullptr : glfwGetVideoMode(screen);
    if (mode == nullptr) return {};
    std::string name = glfwGetMonitorName(screen);
    name.append(" ").append(std::to_string(mode->width));
    return name.append(" x ").append(std::to_string(mode->height));
}

void Backend::tick() { world_->sound.play(); }

void Backend::say(const std::string& text) { world_->voice.say(text); }

bool Backend::picks_files() const {
    return false;
} // GLFW has no dialogs; files are dropped or named

bool Backend::has_camera() const { return false; }

void Backend::pick(FileKind) {}

void Backend::give(const std::filesystem::path&) {}

bool Backend::is_closing() const { return glfwWindowShouldClose(world_->window) == GLFW_TRUE; }

void Backend::close() { glfwSetWindowShouldClose(world_->window, GLFW_TRUE); }

} // namespace wrapwright
