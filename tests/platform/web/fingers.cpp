// Fingers and keys of the browser, on a real ImGui without a window.

#include "platform/web/keys.h"
#include "platform/web/touch.h"
#include "tests/support/close.h"

#include <cmath>
#include <doctest/doctest.h>
#include <imgui.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// A window with one wide button, and what came of the touches on it.
class Glass {
  public:
    Glass() : context_(ImGui::CreateContext()) {
        ImGui::SetCurrentContext(context_);
        ImGuiIO& io = ImGui::GetIO();
        io.IniFilename = nullptr;
        io.DisplaySize = {400.0F, 300.0F};
        unsigned char* pixels = nullptr;
        int width = 0, height = 0;
        io.Fonts->GetTexDataAsAlpha8(&pixels, &width, &height);
        frames(2);
    }
    Glass(const Glass&) = delete;
    Glass& operator=(const Glass&) = delete;
    ~Glass() { ImGui::DestroyContext(context_); }

    void finger(Finger what, int id, float x, float y) {
        touch.finger(ImGui::GetIO(), what, id, x, y);
        frames(1);
    }
    void frames(int count) {
        for (int i = 0; i < count; ++i) {
            ImGui::GetIO().DeltaTime = 1.0F / 60.0F;
            ImGui::NewFrame();
            ImGui::SetNextWindowPos({0.0F, 0.0F});
            ImGui::SetNextWindowSize({400.0F, 300.0F});
            ImGui::Begin("glass", nullptr, ImGuiWindowFlags_NoDecoration);
            if (ImGui::InvisibleButton("on", {380.0F, 280.0F})) ++presses;
            wheel += ImGui::GetIO().MouseWheel;
            turn += ImGui::GetIO().MouseWheelH;
            right = right || ImGui::GetIO().MouseDown[ImGuiMouseButton_Right];
            ImGui::End();
            ImGui::Render();
        }
    }

    Touch touch{};
    int presses = 0;
    float wheel = 0.0F, turn = 0.0F;
    bool right = false;

  private:
    ImGuiContext* context_;
};

} // namespace

TEST_CASE("a finger that comes and goes is one press, however fast") {
    Glass glass;
    glass.finger(Finger::down, 7, 100.0F, 100.0F);
    glass.finger(Finger::up, 7, 100.0F, 100.0F);
    glass.frames(4);
    CHECK(glass.presses == 1);
    glass.touch.finger(ImGui::GetIO(), Finger::down, 8, 100.0F, 100.0F);
    glass.touch.finger(ImGui::GetIO(), Finger::up, 8, 100.0F, 100.0F); // in one and the same frame
    glass.frames(6);
    CHECK(glass.presses == 2);
    CHECK_FALSE(glass.touch.down());
}

TEST_CASE("a finger that is gone points at nothing") {
    Glass glass;
    glass.finger(Finger::down, 1, 100.0F, 100.0F);
    glass.finger(Finger::up, 1, 100.0F, 100.0F);
    glass.frames(4);
    CHECK_FALSE(ImGui::IsMousePosValid());
}

TEST_CASE("a finger that the browser takes away, or a second one, ends the first without a press") {
    Glass glass;
    glass.finger(Finger::down, 1, 100.0F, 100.0F);
    glass.finger(Finger::lost, 1, 100.0F, 100.0F);
    glass.frames(4);
    CHECK(glass.presses == 0);
    glass.finger(Finger::down, 2, 100.0F, 100.0F);
    glass.finger(Finger::down, 3, 200.0F, 100.0F);
    glass.frames(2);
    glass.finger(Finger::up, 2, 100.0F, 100.0F);
    glass.finger(Finger::up, 3, 200.0F, 100.0F);
    glass.frames(6);
    CHECK(glass.presses == 0);
    CHECK(glass.right); // the picture is pushed with it
    CHECK_FALSE(ImGui::GetIO().MouseDown[ImGuiMouseButton_Left]);
    CHECK_FALSE(ImGui::GetIO().MouseDown[ImGuiMouseButton_Right]);
}

TEST_CASE("two fingers pinch and turn by what they do, and a third one changes nothing") {
    Glass glass;
    glass.finger(Finger::down, 1, 150.0F, 100.0F);
    glass.finger(Finger::down, 2, 200.0F, 100.0F);
    glass.finger(Finger::down, 3, 300.0F, 250.0F);
    glass.frames(3);
    glass.finger(Finger::moves, 3, 10.0F, 10.0F);
    glass.frames(3);
    CHECK(glass.wheel == 0.0F); // exact: nothing was added
    glass.finger(Finger::moves, 2, 250.0F, 100.0F);
    glass.frames(4);
    // Twice as far apart is a zoom by 2: 1.15 to the power of the wheel's steps.
    CHECK(within(std::pow(1.15F, glass.wheel), 2.0, 2e-4)); // floats, summed over frames
    glass.finger(Finger::moves, 2, 150.0F, 200.0F);         // a quarter turn at the same distance
    glass.frames(4);
    CHECK(within(std::pow(1.15F, glass.wheel), 2.0, 2e-4)); // floats, summed over frames
    CHECK(within(glass.turn, 1.5707963, 2e-4));
}

TEST_CASE("the browser's words name our keys") {
    CHECK(key_of(" ", "Space") == ImGuiKey_Space);
    CHECK(key_of("PageDown", "PageDown") == ImGuiKey_PageDown);
    CHECK(key_of("Enter", "NumpadEnter") == ImGuiKey_KeypadEnter);
    CHECK(key_of("F1", "F1") == ImGuiKey_F1);
    CHECK(key_of("+", "BracketRight") == ImGuiKey_Equal);
    CHECK(key_of("Dead", "Quote") == ImGuiKey_None);
    // What a key writes counts, not where it lies: z and y change places on a German keyboard.
    CHECK(key_of("z", "KeyY") == ImGuiKey_Z);
    CHECK(key_of("U", "KeyU") == ImGuiKey_U);
}
