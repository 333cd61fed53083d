// The bench in a browser. The page calls ww_start once and ww_catch_up and ww_frame for each turn of
// the loop; between these two it puts what was written into the browser's storage, so that nothing is
// shown that is not kept.

#include "platform/app.h"
#include "platform/web/page.h"
#include "platform/web/report.h"
#include "platform/web/window.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstdio>
#include <emscripten.h>
#include <imgui.h>
#include <memory>
#include <optional>
#include <unistd.h>

namespace {

using namespace wrapwright;

constexpr double for_ever_s = 3600.0;
constexpr double finger_s = 0.1; ///< while one is down, a long press can come at any time
constexpr double near_m = 0.5;   ///< from the eyes to a tablet at the vise

/// The program while the page lives.
struct Bench {
    std::optional<Backend> backend{};
    std::optional<App> app{};
    Report report{};
};
Bench bench; // the page's calls have no other way to it

/// The dark theme keeps the 7:1 that whoever wants contrast is after; of the other two the light one
/// has the most.
Theme usual_theme() {
    if (page::wants_dark()) return Theme::dark;
    return page::wants_contrast() ? Theme::light : Settings{}.theme;
}

/// What holds until the person says otherwise, as browser and tablet ask.
AppWish first_wish() {
    AppWish wish;
    wish.data_folder = "/data";
    wish.assets = "/assets";
    wish.look_on = page::looks_on();
    if (page::has_coarse_pointer()) wish.usual.reading_m = near_m;
    wish.usual.theme = usual_theme();
    return wish;
}

const char* copied_text(void*) { return ""; } // pasting goes through the page's own field

void copy_text(void*, const char* text) { page::copy(text); }

bool failed(const Error& error) {
    std::fprintf(stderr, "wrapwright: %s; %s\n", error.message.c_str(), error.remedy.c_str());
    return false;
}

bool open_app() {
    bench.app.reset();
    web_input().wall_ms = page::wall_ms();
    Result<App> app = App::open(*bench.backend, first_wish());
    if (!app.ok()) return failed(app.error());
    bench.app.emplace(std::move(app).value());
    bench.app->keeps_for_good(page::keeps_for_good());
    return true;
}

} // namespace

extern "C" {

/// Whether the bench stands.
EMSCRIPTEN_KEEPALIVE int ww_start() {
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.GetClipboardTextFn = copied_text;
    io.SetClipboardTextFn = copy_text;
    io.ConfigInputTextCursorBlink = !page::wants_calm();
    if (page::has_coarse_pointer())
        io.MouseSource = ImGuiMouseSource_TouchScreen; // until told otherwise
    Result<Backend> backend = Backend::open({});
    if (!backend.ok()) return failed(backend.error()) ? 1 : 0;
    bench.backend.emplace(std::move(backend).value());
    return open_app() ? 1 : 0;
}

/// Answers what came by itself, before the page looks whether there is something to keep.
EMSCRIPTEN_KEEPALIVE void ww_catch_up() {
    if (!bench.app) return;
    web_input().wall_ms = page::wall_ms();
    if (bench.backend->wait({})) bench.app->wake();
    bench.app->catch_up();
}

/// Shows the model; seconds until the next turn is due by itself, -1 when it failed, -2 when
/// there is nothing to show.
EMSCRIPTEN_KEEPALIVE double ww_frame() {
    if (!bench.app) return -2.0; // not even what was kept could be opened again
    const Result<bool> drawn = bench.app->show();
    if (!drawn.ok()) {
        failed(drawn.error());
        return -1.0;
    }
    if (drawn.value()) {
        bench.report.tell(*bench.app); // before what was asked for is done, and kept
        bench.app->answer_shown();
    }
    const double sleep = in_seconds(bench.app->may_sleep());
    return std::min(sleep, web_input().touch.down() ? finger_s : for_ever_s);
}

/// How far the program's memory has ever reached, in bytes: for tests.
EMSCRIPTEN_KEEPALIVE double ww_memory() {
    return static_cast<double>(reinterpret_cast<std::uintptr_t>(sbrk(0)));
}

/// The storage refused: what it had before is in the folder again, and the bench stands on that.
EMSCRIPTEN_KEEPALIVE void ww_refused(const char* words) {
    page::no_field(); // it goes with the app
    bench.report.forget();
    if (open_app()) bench.app->trouble(words);
}

EMSCRIPTEN_KEEPALIVE void ww_trouble(const char* words) {
    if (!bench.app) return;
    bench.app->trouble(words);
    bench.app->wake();
}

/// What is shown for a moment.
EMSCRIPTEN_KEEPALIVE void ww_note(const char* words) {
    if (!bench.app) return;
    bench.app->note(words);
    bench.app->wake();
}

/// What the browser says of the person's tastes, and of how it keeps things, is another now.
EMSCRIPTEN_KEEPALIVE void ww_tastes() {
    if (!bench.app) return;
    ImGui::GetIO().ConfigInputTextCursorBlink = !page::wants_calm();
    bench.app->usual_theme(usual_theme());
    bench.app->keeps_for_good(page::keeps_for_good());
}

/// The page's own field was edited; the selection in bytes.
EMSCRIPTEN_KEEPALIVE void ww_text(const char* text, int from, int to) {
    const auto at = [](int byte) { return static_cast<std::size_t>(std::max(0, byte)); };
    bench.app->take_text({text, at(from), at(to)});
    web_input().touched = true;
}

/// The page's own field is left: so is the one that it lay over.
EMSCRIPTEN_KEEPALIVE void ww_text_done() {
    ImGui::SetWindowFocus(nullptr);
    bench.report.left_field();
    web_input().touched = true;
}

/// Whether a field of text lies there: 0 none, else 1 + 1 for a number + 2 for many lines + 4 for the
/// one that is typed into.
EMSCRIPTEN_KEEPALIVE int ww_field_at(float x, float y) {
    for (const DrawnField& field : bench.app->shown().fields) {
        const Box& b = field.box;
        if (x < b.x || y < b.y || x >= b.right() || y >= b.bottom()) continue;
        return 1 + (field.number ? 1 : 0) + (field.many_lines ? 2 : 0) + (field.active ? 4 : 0);
    }
    return 0;
}

/// Presses a control of the last frame, as a screen reader asks.
EMSCRIPTEN_KEEPALIVE void ww_press(int control) {
    const auto& all = bench.app->shown().controls;
    if (control < 0 || control >= static_cast<int>(all.size())) return;
    bench.app->press(all[static_cast<std::size_t>(control)].label);
    web_input().touched = true;
}
}

int main() { return 0; } // the page starts it with ww_start
