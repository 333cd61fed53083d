#include "platform/headless/script.h"

#include "gui/input.h"
#include "platform/files.h"
#include "platform/gl/image.h"

#include <algorithm>
#include <imgui.h>
#include <sstream>

namespace wrapwright {

namespace {

constexpr Duration between = seconds(0.6); // longer than a double press
constexpr Duration one_frame = seconds(1.0 / 60.0);

Error wrong(int line, const std::string& message, const std::string& remedy) {
    return {ErrorCode::malformed, message, remedy, {line, {}}};
}

/// The first word of a text, and the text after it.
std::string take_word(std::string& rest) {
    const std::size_t end = std::min(rest.find(' '), rest.size());
    std::string word = rest.substr(0, end);
    rest.erase(0, std::min(rest.size(), end + 1));
    return word;
}

/// The last word of a text as a number; the text before it stays.
float take_number(std::string& text) {
    const std::size_t blank = text.rfind(' ');
    const std::string word = blank == std::string::npos ? text : text.substr(blank + 1);
    text.erase(blank == std::string::npos ? 0 : blank);
    return std::strtof(word.c_str(), nullptr);
}

class Player {
  public:
    Player(Backend& backend, App& app, const std::filesystem::path& folder)
        : backend_(backend), app_(app), folder_(folder) {}

    Result<bool> line(int number, std::string text) {
        number_ = number;
        const std::string command = take_word(text);
        if (command == "key") return key(text);
        if (command == "press") return press(text);
        if (command == "type") return type(text);
        if (command == "drag") return drag(text);
        if (command == "touch") return touch(text);
        if (command == "wheel") return wheel(text);
        if (command == "wait") return frames(seconds(std::strtod(text.c_str(), nullptr)), 3);
        if (command == "shot") return shot(text);
        return wrong(number_, "'" + command + "' is no command", "see platform/headless/script.h");
    }

    Result<bool> frames(Duration pause, int count) {
        (void)backend_.wait(pause);
        for (int i = 0; i < count; ++i) {
            (void)backend_.wait(one_frame);
            const Result<bool> drawn = app_.frame();
            if (!drawn.ok()) return drawn;
        }
        return true;
    }

  private:
    Result<bool> key(std::string text) {
        std::string rest = text;
        const std::string first = take_word(rest);
        int times = 1;
        if (!rest.empty() && first.find_first_not_of("0123456789") == std::string::npos) {
            times = std::atoi(first.c_str());
            text = rest;
        }
        bool ctrl = false;
        if (text.starts_with("ctrl ")) {
            ctrl = true;
            text.erase(0, 5);
        }
        ImGuiKey found = ImGuiKey_None;
        for (int k = ImGuiKey_NamedKey_BEGIN; k < ImGuiKey_NamedKey_END; ++k) {
            if (key_word(static_cast<ImGuiKey>(k), false) == text) found = static_cast<ImGuiKey>(k);
            if (found != ImGuiKey_None) break;
        }
        if (found == ImGuiKey_None) return wrong(number_, "no key '" + text + "'", "name another");
        ImGuiIO& io = ImGui::GetIO();
        for (int i = 0; i < times; ++i) {
            if (ctrl) io.AddKeyEvent(ImGuiMod_Ctrl, true);
            io.AddKeyEvent(found, true);
            if (const Result<bool> drawn = frames(between, 1); !drawn.ok()) return drawn;
            io.AddKeyEvent(found, false);
            if (ctrl) io.AddKeyEvent(ImGuiMod_Ctrl, false);
            if (const Result<bool> drawn = frames({}, 2); !drawn.ok()) return drawn;
        }
        return true;
    }
    const DrawnControl* control(const std::string& label) const {
        const auto& all = app_.shown().controls;
        const auto it = std::find_if(all.begin(), all.end(), [&](const DrawnControl& c) {
            return c.label == label || c.label.starts_with(label + "##") || c.label == "##" + label;
        });
        return it == all.end() ? nullptr : &*it;
    }
    Result<bool> point_at(const std::string& label) {
        const DrawnControl* c = control(label);
        if (c == nullptr) {
            std::string there;
            for (const DrawnControl& one : app_.shown().controls) there += " [" + one.label + "]";
            return wrong(number_, "no control '" + label + "'", "there are" + there);
        }
        ImGui::GetIO().AddMousePosEvent(c->box.x + 0.5F * c->box.width,
                                        c->box.y + 0.5F * c->box.height);
        return frames({}, 1);
    }
    Result<bool> button(bool down) {
        ImGui::GetIO().AddMouseButtonEvent(0, down);
        return frames({}, 2);
    }
    Result<bool> press(const std::string& label) {
        (void)backend_.wait(between);
        if (const Result<bool> at = point_at(label); !at.ok()) return at;
        if (const Result<bool> down = button(true); !down.ok()) return down;
        return button(false);
    }
    Result<bool> type(const std::string& text) {
        ImGui::GetIO().AddInputCharactersUTF8(text.c_str());
        return frames({}, 1 + static_cast<int>(text.size())); // a letter comes with each frame
    }
    Result<bool> drag(std::string text) {
        const float y = take_number(text);
        const float x = take_number(text);
        const std::string& label = text;
        if (const Result<bool> at = point_at(label); !at.ok()) return at;
        const DrawnControl* c = control(label);
        const ImVec2 from{c->box.x + 0.5F * c->box.width, c->box.y + 0.5F * c->box.height};
        if (const Result<bool> down = button(true); !down.ok()) return down;
        for (int i = 1; i <= 4; ++i) {
            const float share = static_cast<float>(i) / 4.0F;
            ImGui::GetIO().AddMousePosEvent(from.x + share * x, from.y + share * y);
            if (const Result<bool> drawn = frames({}, 1); !drawn.ok()) return drawn;
        }
        return button(false);
    }
    Result<bool> touch(std::string text) {
        const float y = take_number(text);
        const float x = take_number(text);
        const std::string& label = text;
        if (const Result<bool> at = point_at(label); !at.ok()) return at;
        const DrawnControl* c = control(label);
        ImGui::GetIO().AddMousePosEvent(c->box.x + 0.5F * c->box.width + x,
                                        c->box.y + 0.5F * c->box.height + y);
        if (const Result<bool> moved = frames(between, 1); !moved.ok()) return moved;
        if (const Result<bool> down = button(true); !down.ok()) return down;
        return button(false);
    }
    Result<bool> wheel(std::string text) {
        const float by = take_number(text);
        if (const Result<bool> at = point_at(text); !at.ok()) return at;
        ImGui::GetIO().AddMouseWheelEvent(0.0F, by);
        return frames({}, 2);
    }
    Result<bool> shot(const std::string& name) {
        if (const Result<bool> drawn = frames({}, 1); !drawn.ok()) return drawn;
        const Gl& gl = backend_.gl();
        gl.BindFramebuffer(GL_FRAMEBUFFER, backend_.framebuffer());
        const std::vector<std::uint8_t> png = png_of(read_pixels(gl, backend_.size()));
        return write_file(folder_ / name, {reinterpret_cast<const char*>(png.data()), png.size()});
    }

    Backend& backend_;
    App& app_;
    const std::filesystem::path& folder_;
    int number_ = 0;
};

} // namespace

Result<bool> play(Backend& backend, App& app, std::string_view script,
                  const std::filesystem::path& folder) {
    Player player(backend, app, folder);
    if (const Result<bool> drawn = player.frames({}, 3); !drawn.ok()) return drawn;
    std::istringstream lines{std::string(script)};
    std::string text;
    for (int number = 1; std::getline(lines, text); ++number) {
        if (text.empty() || text[0] == '#') continue;
        const Result<bool> done = player.line(number, text);
        if (!done.ok()) return done;
    }
    return true;
}

} // namespace wrapwright
