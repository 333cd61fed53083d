// The bench without a screen: build/wrapwright-shots plays a script and writes pictures.

#include "platform/files.h"
#include "platform/headless/script.h"

#include <CLI/CLI.hpp>
#include <cstdio>
#include <imgui.h>
#include <iterator>
#include <memory>

namespace {

using namespace wrapwright;

int give_up(const Error& error) {
    std::fprintf(stderr, "wrapwright-shots: ");
    if (error.place.line > 0) std::fprintf(stderr, "line %d: ", error.place.line);
    std::fprintf(stderr, "%s; %s\n", error.message.c_str(), error.remedy.c_str());
    return 3;
}

} // namespace

int main(int argc, char** argv) {
    CLI::App options("Wrapwright without a screen: plays a script, writes pictures");
    const auto wished =
        std::make_unique<AppWish>(); // not on the stack: g++ 12 warns of its vectors
    AppWish& wish = *wished;
    WindowWish window;
    std::string script_file;
    std::string folder = ".";
    std::string data;
    options.add_option("SCRIPT", script_file, "what to do: see platform/headless/script.h")
        ->required();
    options.add_option("--recipe", wish.recipe, "recipe file to open");
    options.add_option("--size", wish.size, "hook size");
    options.add_option("--data", data, "folder of the library")->required();
    options.add_option("--width", window.size.width, "of the window");
    options.add_option("--height", window.size.height, "of the window");
    options.add_option("-o,--out", folder, "folder for the pictures");
    CLI11_PARSE(options, argc, argv);
    wish.data_folder = data;
    const auto assets = assets_folder();
    if (!assets.ok()) return give_up(assets.error());
    wish.assets = assets.value();
    const Result<std::string> script = read_file(script_file);
    if (!script.ok()) return give_up(script.error());

    ImGui::CreateContext();
    int code = 0;
    {
        Result<Backend> backend = Backend::open(window);
        if (!backend.ok()) return give_up(backend.error());
        Result<App> app = App::open(backend.value(), wish);
        if (!app.ok()) return give_up(app.error());
        const Result<bool> played = play(backend.value(), app.value(), script.value(), folder);
        if (!played.ok()) code = give_up(played.error());
    }
    ImGui::DestroyContext();
    return code;
}
