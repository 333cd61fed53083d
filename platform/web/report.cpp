#include "platform/web/report.h"

#include "platform/web/page.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <string_view>

namespace wrapwright {

namespace {

/// A text as JSON has it. What is no UTF-8 comes through as it is: the page reads it leniently.
std::string quoted(std::string_view text) {
    std::string out(1, '"');
    for (const char c : text) {
        if (c == '"' || c == '\\') out += '\\';
        if (static_cast<unsigned char>(c) >= 0x20) {
            out += c;
            continue;
        }
        std::array<char, 8> code{};
        std::snprintf(code.data(), code.size(), "\\u%04x", static_cast<unsigned>(c));
        out += code.data();
    }
    return out += '"';
}

/// Rows and objects of JSON, in the order in which they are given.
class JsonText {
  public:
    explicit JsonText(bool object) : close_(object ? '}' : ']'), text_(1, object ? '{' : '[') {}
    JsonText& key(std::string_view name) {
        next();
        text_ += quoted(name) += ':';
        first_ = true;
        return *this;
    }
    JsonText& raw(std::string_view value) {
        next();
        text_ += value;
        return *this;
    }
    JsonText& words(std::string_view value) { return raw(quoted(value)); }
    JsonText& flag(bool value) { return raw(value ? "true" : "false"); }
    JsonText& number(double value) {
        std::array<char, 32> digits{};
        std::snprintf(digits.data(), digits.size(), "%.9g", std::isfinite(value) ? value : 0.0);
        return raw(digits.data());
    }
    JsonText& number(std::size_t value) { return number(static_cast<double>(value)); }
    JsonText& number(int value) { return number(static_cast<double>(value)); }
    [[nodiscard]] std::string end() { return text_ += close_; }

  private:
    void next() {
        if (!first_) text_ += ',';
        first_ = false;
    }
    char close_;
    std::string text_;
    bool first_ = true;
};

constexpr std::array<const char*, 5> kinds{"title", "heading", "text", "live", "control"};

std::string outline_json(const std::vector<OutlineRow>& rows) {
    JsonText list(false);
    for (const OutlineRow& row : rows) {
        JsonText one(false);
        one.words(kinds[static_cast<std::size_t>(row.kind)]).words(row.text).number(row.control);
        list.raw(one.end());
    }
    return list.end();
}

std::string state_json(const App& app) {
    const Model& m = app.model();
    JsonText controls(true);
    for (const DrawnControl& c : app.shown().controls) {
        JsonText box(false);
        box.number(c.box.x).number(c.box.y).number(c.box.width).number(c.box.height);
        controls.key(c.label).raw(box.end());
    }
    JsonText fields(false);
    for (const DrawnField& f : app.shown().fields) {
        JsonText one(false);
        one.words(f.label).number(f.box.x).number(f.box.y).number(f.box.width);
        fields.raw(one.number(f.box.height).flag(f.active).flag(f.number).end());
    }
    JsonText all(true);
    all.key("screen").number(static_cast<int>(m.screen));
    all.key("sheet").number(static_cast<int>(m.sheet));
    all.key("at").number(m.state.at);
    all.key("turns").number(m.state.turns);
    all.key("events").number(m.events.size());
    all.key("of").number(m.course.size());
    all.key("recipe").words(m.fly ? m.fly->id : "");
    all.key("trouble").words(m.trouble);
    all.key("notice").words(m.notice);
    all.key("read_only").flag(m.read_only);
    all.key("yaw").number(m.wraps.yaw);
    all.key("turn").number(m.wraps.turn);
    all.key("zoom").number(m.wraps.zoom);
    all.key("shift").number(m.wraps.shift_x);
    all.key("photo").flag(m.check.photo.picture != nullptr);
    all.key("readings").number(m.check.readings.size());
    all.key("lines").number(m.book.book ? m.book.book->lines.size() : std::size_t{0});
    all.key("items").number(m.book.book ? m.book.book->items.size() : std::size_t{0});
    all.key("more").flag(m.more_words);
    all.key("fields").raw(fields.end());
    all.key("controls").raw(controls.end());
    return all.end();
}

} // namespace

void Report::tell(const App& app) {
    const Model& m = app.model();
    const Shown& shown = app.shown();
    if (std::vector<OutlineRow> rows = outline(m, shown); rows != outline_) {
        outline_ = std::move(rows);
        page::outline(outline_json(outline_));
    }
    if (std::string state = state_json(app); state != state_) {
        state_ = std::move(state);
        page::state(state_);
    }
    tell_field(shown);
    if (app.in_the_middle() != busy_) {
        busy_ = !busy_;
        page::busy(busy_);
    }
    if (at_work(m) != awake_) {
        awake_ = !awake_;
        page::stay_awake(awake_);
    }
    const Colour c = palette(m.settings.theme).ground;
    std::array<char, 8> hex{};
    std::snprintf(hex.data(), hex.size(), "#%02x%02x%02x", c.r, c.g, c.b);
    if (ground_ != hex.data()) {
        ground_ = hex.data();
        page::ground(ground_);
    }
}

void Report::tell_field(const Shown& shown) {
    const auto it = std::find_if(shown.fields.begin(), shown.fields.end(),
                                 [](const DrawnField& f) { return f.active; });
    if (it == shown.fields.end()) {
        if (!field_.empty()) page::no_field();
        field_.clear();
        return;
    }
    const std::array box{it->box.x, it->box.y, it->box.width, it->box.height};
    std::string key = it->label;
    for (const float x : box) key += ' ' + std::to_string(std::lround(x));
    if (key != field_) { // else what is written in it came from the page
        field_ = std::move(key);
        const std::size_t from = it->label.starts_with("##") ? 2 : 0;
        page::field(it->label.substr(from), it->text, box.data(), it->number, it->many_lines);
    }
    tell_caret(*it);
}

/// Where it was put by hand, once; where it goes by what is typed, the page knows.
void Report::tell_caret(const DrawnField& field) {
    const bool same = caret_[0] == field.caret_from && caret_[1] == field.caret_to;
    caret_[0] = field.caret_from;
    caret_[1] = field.caret_to;
    if (!same && field.caret_from >= 0) page::caret(field.caret_from, field.caret_to);
}

} // namespace wrapwright
