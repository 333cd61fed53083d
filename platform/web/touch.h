#pragma once
// Fingers on the glass, as ImGui's pointer: one presses and drags; two pinch, turn and push.

struct ImGuiIO;

namespace wrapwright {

/// What a finger does, as the page tells it.
enum class Finger : unsigned char { down, moves, up, lost };

/// The fingers that are down. Places are in the window's units.
///
/// A second finger ends what the first one did without a press. Two of them come to ImGui as what a
/// mouse would do for the same: a pinch as the wheel, a turn as the sideways wheel in rad, a push as
/// a drag with the right button.
class Touch {
  public:
    void finger(ImGuiIO& io, Finger what, int id, float x, float y);
    [[nodiscard]] bool down() const { return count_ > 0; }

  private:
    struct Point {
        int id = -1;
        float x = 0.0F, y = 0.0F;
    };
    struct Pair {
        float x, y, apart, angle;
    };
    [[nodiscard]] Pair pair() const;
    void begin_pair(ImGuiIO& io);
    void end(ImGuiIO& io, int button, bool pressed);

    Point points_[2]{};
    int count_ = 0;
    bool one_ = false; ///< the left button is held by the first finger
    bool two_ = false; ///< the right one by both
};

} // namespace wrapwright
