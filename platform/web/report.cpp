#include "platform/web/report.h"

#include "platform/web/page.h"

#include <algorithm>
#include <array>
#include <cstdio>
#include <nlohmann/json.hpp>

namespace wrapwright {

namespace {

using Json = nlohmann::json;

std::string text_of(const Json& json) {
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

constexpr std::array<const char*, 5> kinds{"title", "heading", "text", "live", "control"};

Json outline_json(const std::vector<OutlineRow>& rows) {
    Json list = Json::array();
    for (const OutlineRow& row : rows) {
        list.push_back({kinds[static_cast<std::size_t>(row.kind)], row.text, row.control});
    }
    return list;
}

Json state_json(const App& app) {
    const Model& m = app.model();
    Json controls = Json::object();
    for (const DrawnControl& c : app.shown().controls) {
        controls[c.label] = {c.box.x, c.box.y, c.box.width, c.box.height};
    }
    return {{"screen", static_cast<int>(m.screen)},
            {"sheet", static_cast<int>(m.sheet)},
            {"at", m.state.at},
            {"turns", m.state.turns},
            {"events", m.events.size()},
            {"of", m.course.size()},
            {"laid", std::count(m.laid_out.begin(), m.laid_out.end(), true)},
            {"recipe", m.fly ? m.fly->id : ""},
            {"trouble", m.trouble},
            {"notice", m.notice},
            {"read_only", m.read_only},
            {"yaw", m.wraps.yaw},
            {"turn", m.wraps.turn},
            {"zoom", m.wraps.zoom},
            {"shift", m.wraps.shift_x},
            {"photo", m.check.photo.picture != nullptr},
            {"more", m.more_words},
            {"controls", controls}};
}

} // namespace

void Report::tell(const App& app) {
    const Model& m = app.model();
    const Shown& shown = app.shown();
    if (std::vector<OutlineRow> rows = outline(m, shown); rows != outline_) {
        outline_ = std::move(rows);
        page::outline(text_of(outline_json(outline_)));
    }
    if (std::string state = text_of(state_json(app)); state != state_) {
        state_ = std::move(state);
        page::state(state_);
    }
    tell_field(shown);
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
        if (!field_.empty())
            page::field("", "", std::array{0.0F, 0.0F, 0.0F, 0.0F}.data(), false, false);
        field_.clear();
        return;
    }
    const std::array box{it->box.x, it->box.y, it->box.width, it->box.height};
    std::string key = it->label;
    for (const float x : box) key += ' ' + std::to_string(std::lround(x));
    if (key == field_) return; // what is written in it came from the page
    field_ = std::move(key);
    const std::size_t from = it->label.starts_with("##") ? 2 : 0;
    page::field(it->label.substr(from), it->text, box.data(), it->number, it->many_lines);
}

} // namespace wrapwright
