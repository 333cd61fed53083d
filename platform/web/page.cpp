#include "platform/web/page.h"

#include <emscripten.h>

// clang-format off
EM_JS(double, ww_wall_ms, (), { return Date.now(); })
EM_JS(double, ww_clock_ms, (), { return performance.now(); })
EM_JS(int, ww_asks, (int what), { return Module.page.asks(what); })
EM_JS(double, ww_screen, (int height), { return height ? screen.height : screen.width; })
EM_JS(void, ww_tick, (), { Module.page.tick(); })
EM_JS(void, ww_say, (const char* text), { Module.page.say(UTF8ToString(text)); })
EM_JS(void, ww_pick, (int kind), { Module.page.pick(kind); })
EM_JS(void, ww_give, (const char* file), { Module.page.give(UTF8ToString(file)); })
EM_JS(void, ww_copy, (const char* text), { Module.page.copy(UTF8ToString(text)); })
EM_JS(void, ww_field, (const char* label, const char* text, float x, float y, float width,
                       float height, int number, int lines), {
    Module.page.field(UTF8ToString(label), UTF8ToString(text), {x, y, width, height}, !!number, !!lines);
})
EM_JS(void, ww_caret, (int from, int to), { Module.page.caret(from, to); })
EM_JS(void, ww_outline, (const char* json), { Module.page.outline(JSON.parse(UTF8ToString(json))); })
EM_JS(void, ww_state, (const char* json), { Module.page.state(UTF8ToString(json)); })
EM_JS(void, ww_busy, (int on), { Module.page.busy(!!on); })
EM_JS(void, ww_awake, (int on), { Module.page.stayAwake(!!on); })
EM_JS(void, ww_ground, (const char* colour), { Module.page.ground(UTF8ToString(colour)); })
// clang-format on

namespace wrapwright::page {

double wall_ms() { return ww_wall_ms(); }
double clock_ms() { return ww_clock_ms(); }
bool has_coarse_pointer() { return ww_asks(0) != 0; }
bool wants_contrast() { return ww_asks(1) != 0; }
bool wants_dark() { return ww_asks(2) != 0; }
bool wants_calm() { return ww_asks(3) != 0; }
bool has_camera() { return ww_asks(4) != 0; }
bool looks_on() { return ww_asks(5) != 0; }
bool keeps_for_good() { return ww_asks(6) != 0; }
double screen_width() { return ww_screen(0); }
double screen_height() { return ww_screen(1); }
void tick() { ww_tick(); }
void say(const std::string& text) { ww_say(text.c_str()); }
void pick(int kind) { ww_pick(kind); }
void give(const std::string& file) { ww_give(file.c_str()); }
void copy(const std::string& text) { ww_copy(text.c_str()); }
void field(const std::string& label, const std::string& text, const float box[4], bool number,
           bool many_lines) {
    ww_field(label.c_str(), text.c_str(), box[0], box[1], box[2], box[3], number ? 1 : 0,
             many_lines ? 1 : 0);
}
void no_field() { ww_field("", "", 0.0F, 0.0F, 0.0F, 0.0F, 0, 0); }
void caret(int from, int to) { ww_caret(from, to); }
void outline(const std::string& json) { ww_outline(json.c_str()); }
void state(const std::string& json) { ww_state(json.c_str()); }
void busy(bool on) { ww_busy(on ? 1 : 0); }
void stay_awake(bool on) { ww_awake(on ? 1 : 0); }
void ground(const std::string& colour) { ww_ground(colour.c_str()); }

} // namespace wrapwright::page
