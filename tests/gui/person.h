#pragma once
// A person before the screens, in memory: real keys and presses on real widgets, no GPU.

#include "gui/apply.h"
#include "gui/screen.h"
#include "tests/support/demo.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <imgui.h>
#include <string>
#include <vector>

namespace wrapwright::test {

inline constexpr const char* font_file = "/usr/share/fonts/opentype/inter/Inter-Medium.otf";

/// One window on one model, with the store as a list of what it was told to keep.
class Person {
  public:
    Person(const char* recipe, PixelSize window, Settings settings = {})
        : context_(ImGui::CreateContext()), window_(window) {
        ImGui::SetCurrentContext(context_);
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.BackendFlags |= ImGuiBackendFlags_RendererHasVtxOffset;
        io.DisplaySize = {static_cast<float>(window.width), static_cast<float>(window.height)};
        model.settings = settings;
        model.now = seconds(now_);
        const auto fly = open_fly(recipe, demo(recipe).recipe);
        REQUIRE(fly.ok());
        model = with_fly(model, fly.value());
        model.screen = Screen::lay_out;
        sizes = sizes_for(model, window);
        ImFontAtlas& atlas = *io.Fonts;
        static constexpr ImWchar latin[] = {0x20, 0xFF, 0};
        fonts_ = {atlas.AddFontFromFileTTF(font_file, sizes.small, nullptr, latin),
                  atlas.AddFontFromFileTTF(font_file, sizes.main, nullptr, latin),
                  atlas.AddFontFromFileTTF(font_file, sizes.huge, nullptr, latin)};
        unsigned char* pixels = nullptr;
        int width = 0;
        int height = 0;
        atlas.GetTexDataAsAlpha8(&pixels, &width, &height);
        frame();
        frame();
    }
    Person(const Person&) = delete;
    Person& operator=(const Person&) = delete;
    ~Person() { ImGui::DestroyContext(context_); }

    /// One frame, and the answers to what it asked for.
    void frame(double later = 1.0 / 60.0) {
        now_ += later;
        ImGui::GetIO().DeltaTime = static_cast<float>(later);
        model.now = seconds(now_);
        ImGui::NewFrame();
        shown = draw_screen(model, typing_, fonts_, sizes);
        ImGui::Render();
        for (const Wish& w : shown.wishes) answer(w);
        if (on_frame) on_frame(*this);
    }
    void wait(double pause) {
        now_ += pause;
        answer(wish(WishKind::tick_clock));
    }
    void key(ImGuiKey key, double pause = 0.6) {
        wait(pause);
        ImGui::GetIO().AddKeyEvent(key, true);
        frame();
        ImGui::GetIO().AddKeyEvent(key, false);
        frame();
        frame();
    }
    [[nodiscard]] const DrawnControl* find(const std::string& label) const {
        const auto it =
            std::find_if(shown.controls.begin(), shown.controls.end(), [&](const DrawnControl& c) {
                return c.label == label || c.label == "##" + label ||
                       c.label.starts_with(label + "##");
            });
        return it == shown.controls.end() ? nullptr : &*it;
    }
    /// Presses a control in its middle, as a finger would.
    void press(const std::string& label, double pause = 0.6) {
        wait(pause);
        const DrawnControl* control = find(label);
        REQUIRE_MESSAGE(control != nullptr, "no control " << label);
        ImGuiIO& io = ImGui::GetIO();
        io.AddMousePosEvent(control->box.x + 0.5F * control->box.width,
                            control->box.y + 0.5F * control->box.height);
        frame();
        io.AddMouseButtonEvent(0, true);
        frame();
        io.AddMouseButtonEvent(0, false);
        frame();
        frame();
    }
    /// Turns the wheel over a part that scrolls, until a control in it is in sight.
    void bring(const std::string& label) {
        ImGuiIO& io = ImGui::GetIO();
        for (int i = 0; i < 200; ++i) {
            const DrawnControl* control = find(label);
            REQUIRE_MESSAGE(control != nullptr, "no control " << label);
            const float middle = control->box.y + 0.5F * control->box.height;
            const float high = io.DisplaySize.y;
            if (middle > 0.5F * high && middle < 0.85F * high) return;
            io.AddMousePosEvent(control->box.x + 4.0F, 0.7F * high);
            frame();
            io.AddMouseWheelEvent(0.0F, middle > 0.5F * high ? -0.3F : 0.3F);
            frame();
            frame();
            const DrawnControl* moved = find(label);
            if (moved != nullptr && moved->box.y + 0.5F * moved->box.height == middle) return;
        }
    }
    void type(const std::string& text) {
        ImGui::GetIO().AddInputCharactersUTF8(text.c_str());
        for (std::size_t i = 0; i <= text.size(); ++i) frame();
    }
    [[nodiscard]] Typing& typing() { return typing_; }
    [[nodiscard]] bool finished() const {
        return !model.events.empty() && model.state.finished(model.course);
    }

    Model model{};
    Shown shown{};
    TypeSizes sizes{};
    std::vector<Event> stored{};
    [[nodiscard]] const Typing& typing() const { return typing_; }
    std::vector<Effect> effects{}; ///< all that the world was asked for
    void (*on_frame)(Person&) = nullptr;

  private:
    void answer(const Wish& w) {
        Applied applied = apply(model, w, seconds(now_));
        for (const Effect& e : applied.effects) {
            if (e.kind == EffectKind::begin_sitting) stored = {e.event};
            if (e.kind == EffectKind::append) stored.push_back(e.event);
            effects.push_back(e);
        }
        model = std::move(applied.model);
    }

    ImGuiContext* context_;
    PixelSize window_;
    Fonts fonts_{};
    Typing typing_{};
    double now_ = 1000.0;
};

/// Whether these words are on the screen.
inline bool says(const Person& person, std::string_view words) {
    return std::any_of(person.shown.texts.begin(), person.shown.texts.end(),
                       [&](const DrawnText& t) { return t.text.find(words) != t.text.npos; });
}

} // namespace wrapwright::test
