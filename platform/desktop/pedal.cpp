#include "platform/desktop/pedal.h"

#define GLFW_INCLUDE_NONE
#include <GLFW/glfw3.h>
#include <algorithm>
#include <imgui.h>

namespace wrapwright {

namespace {

struct Button {
    int gamepad; ///< GLFW's number on a known gamepad
    ImGuiKey key;
};

constexpr std::array<Button, 8> table{{
    {GLFW_GAMEPAD_BUTTON_A, ImGuiKey_GamepadFaceDown},
    {GLFW_GAMEPAD_BUTTON_B, ImGuiKey_GamepadFaceRight},
    {GLFW_GAMEPAD_BUTTON_X, ImGuiKey_GamepadFaceLeft},
    {GLFW_GAMEPAD_BUTTON_Y, ImGuiKey_GamepadFaceUp},
    {GLFW_GAMEPAD_BUTTON_LEFT_BUMPER, ImGuiKey_GamepadL1},
    {GLFW_GAMEPAD_BUTTON_RIGHT_BUMPER, ImGuiKey_GamepadR1},
    {GLFW_GAMEPAD_BUTTON_DPAD_LEFT, ImGuiKey_GamepadDpadLeft},
    {GLFW_GAMEPAD_BUTTON_DPAD_RIGHT, ImGuiKey_GamepadDpadRight},
}};

int first_joystick() {
    for (int i = GLFW_JOYSTICK_1; i <= GLFW_JOYSTICK_LAST; ++i) {
        if (glfwJoystickPresent(i) == GLFW_TRUE) return i;
    }
    return -1;
}

} // namespace

bool Pedal::present() { return first_joystick() >= 0; }

bool Pedal::ask(ImGuiIO& io) {
    const int joystick = first_joystick();
    std::array<bool, buttons> now{};
    if (joystick >= 0) {
        GLFWgamepadstate state{};
        int count = 0;
        if (glfwGetGamepadState(joystick, &state) == GLFW_TRUE) {
            for (std::size_t i = 0; i < buttons; ++i) now[i] = state.buttons[table[i].gamepad] != 0;
        } else if (const unsigned char* all = glfwGetJoystickButtons(joystick, &count)) {
            const auto known = std::min(buttons, static_cast<std::size_t>(count));
            for (std::size_t i = 0; i < known; ++i) now[i] = all[i] != 0;
        }
    }
    bool changed = false;
    for (std::size_t i = 0; i < buttons; ++i) {
        if (now[i] == down_[i]) continue;
        io.AddKeyEvent(table[i].key, now[i]);
        changed = true;
    }
    down_ = now;
    return changed;
}

} // namespace wrapwright
