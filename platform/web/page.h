#pragma once
// What the page around the canvas does for the program: each call is one in page/*.js.

#include <string>

namespace wrapwright::page {

/// Milliseconds since 1970-01-01 UTC, and since the page was opened.
double wall_ms();
double clock_ms();
/// What the browser said of itself before the program was started.
bool has_coarse_pointer();
bool wants_contrast();
bool wants_dark();
bool wants_calm();
bool has_camera();
bool looks_on();       ///< another tab has the library
bool keeps_for_good(); ///< it has promised not to clear the library when room gets short
double screen_width();
double screen_height();

void tick();
void say(const std::string& text);
/// Opens the browser's dialog; the file's copy comes back by ww_file. `kind` as FileKind.
void pick(int kind);
/// Offers a file as a download, or to the share sheet.
void give(const std::string& file);
void copy(const std::string& text);
/// Lets the page's own field be typed into, over the one that is drawn there.
void field(const std::string& label, const std::string& text, const float box[4], bool number,
           bool many_lines);
/// No field is typed into any more.
void no_field();
/// Where a finger or a mouse has put the caret of that field, in characters; from one to the other is
/// marked.
void caret(int from, int to);
/// The document beside the canvas, and the state for whoever drives the page from outside.
void outline(const std::string& json);
void state(const std::string& json);
/// Whether the page, loaded anew, would lose something.
void busy(bool on);
/// Whether the screen should stay lit.
void stay_awake(bool on);
/// The colour around the canvas, "#rrggbb".
void ground(const std::string& colour);

} // namespace wrapwright::page
