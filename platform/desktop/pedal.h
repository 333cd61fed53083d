#pragma once
// Gamepads, joysticks and pedals that count as one: their buttons as ImGui's gamepad keys.

#include <array>
#include <cstddef>

struct ImGuiIO;

namespace wrapwright {

/// The first joystick that is plugged in. Needs GLFW to be running.
class Pedal {
  public:
    [[nodiscard]] static bool present();
    /// Hands buttons that went down or up since the last time to ImGui; whether there were any.
    ///
    /// A known gamepad gives its own buttons; of any other joystick the first button is the lower
    /// face button, the second the right one.
    bool ask(ImGuiIO& io);

  private:
    static constexpr std::size_t buttons = 8;
    std::array<bool, buttons> down_{};
};

} // namespace wrapwright
