// The bench in a window: build/wrapwright-bench.

#include "platform/app.h"
#include "platform/files.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <imgui.h>
#include <memory>

namespace {

using namespace wrapwright;

constexpr Duration far_away{3600.0};

// As build/wrapwright: 2 where a file or an option cannot be used, 3 where the world refuses.
constexpr int bad_input = 2;
constexpr int outside = 3;

int give_up(const Error& error, int code = outside) {
    std::fprintf(stderr, "wrapwright-bench: %s; %s\n", error.message.c_str(), error.remedy.c_str());
    return code;
}

/// Where the person stands, as a line for whoever drives the window from outside.
std::string line_of(const Model& m) {
    return "screen " + std::to_string(static_cast<int>(m.screen)) + " sheet " +
           std::to_string(static_cast<int>(m.sheet)) + " at " + std::to_string(m.state.at) +
           " turns " + std::to_string(static_cast<int>(m.state.turns)) + " events " +
           std::to_string(m.events.size()) + " of " + std::to_string(m.course.size()) + " laid " +
           std::to_string(std::count(m.laid_out.begin(), m.laid_out.end(), true));
}

Result<bool> run(Backend& backend, App& app, long frames, bool trace) {
    std::string told;
    while (!backend.is_closing() && (frames == 0 || app.frames() < frames)) {
        const Duration sleep = std::min(app.may_sleep(), far_away);
        if (backend.wait(sleep)) app.wake();
        const std::string line = trace ? line_of(app.model()) : std::string();
        const Result<bool> drawn = app.frame();
        if (!drawn.ok()) return drawn;
        // Told once it has been shown, and not before.
        if (line == told) continue;
        std::printf("%s\n", line.c_str());
        std::fflush(stdout);
        told = line;
    }
    return true;
}

} // namespace

int main(int argc, char** argv) {
    CLI::App options("Wrapwright: the bench beside the vise");
    std::string data;
    const auto wished =
        std::make_unique<AppWish>(); // not on the stack: g++ 12 warns of its vectors
    AppWish& wish = *wished;
    WindowWish window{"Wrapwright", {1280, 800}, false};
    std::string size;
    long frames = 0;
    bool trace = false;
    CLI::Option* recipe =
        options.add_option("RECIPE", wish.recipe, "recipe file to open; else where you were");
    options.add_option("--size", wish.size, "hook size")->needs(recipe);
    options.add_option("--hook", wish.hook, "file of your own measured hook")->needs(recipe);
    options.add_option("--data", data, "folder of the library; else the usual one");
    options.add_option("--window", size, "size of the window, such as 1280x800");
    options.add_flag("--full-screen", window.full_screen, "fill the screen");
    options.add_option("--frames", frames, "end after so many frames");
    options.add_flag("--trace", trace, "print each state that is shown");
    try {
        options.parse(argc, argv);
    } catch (const CLI::Success& asked) { // --help
        return options.exit(asked);
    } catch (const CLI::ParseError& error) {
        std::fprintf(stderr, "wrapwright-bench: %s; see --help\n", error.what());
        return bad_input;
    }
    if (!size.empty()) {
        int width = 0;
        int height = 0;
        if (std::sscanf(size.c_str(), "%dx%d", &width, &height) != 2 || width < 480 ||
            height < 320 || width > 16384 || height > 16384) {
            return give_up({ErrorCode::malformed,
                            "--window '" + size + "' is no size of a window",
                            "write width and height of 480x320 at least, such as 1280x800",
                            {}},
                           bad_input);
        }
        window.size = {width, height};
    }
    wish.data_folder = data.empty()
                           ? usual_data_folder(std::getenv("XDG_DATA_HOME"), std::getenv("HOME"))
                           : std::filesystem::path(data);
    const auto assets = assets_folder();
    if (!assets.ok()) return give_up(assets.error());
    wish.assets = assets.value();

    ImGui::CreateContext();
    int code = 0;
    {
        Result<Backend> backend = Backend::open(window);
        if (!backend.ok()) return give_up(backend.error());
        Result<App> app = App::open(backend.value(), wish);
        if (!app.ok()) {
            const bool of_file =
                !wish.recipe.empty() && app.error().message.starts_with(wish.recipe);
            return give_up(app.error(), of_file ? bad_input : outside);
        }
        const Result<bool> ran = run(backend.value(), app.value(), frames, trace);
        if (!ran.ok()) code = give_up(ran.error());
    }
    ImGui::DestroyContext();
    return code;
}
