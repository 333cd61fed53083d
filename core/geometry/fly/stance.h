#pragma once
// Where a bundle stands, which way, and where each of its fibres starts.

#include "core/geometry/fly/dice.h"
#include "core/geometry/fly/sketch.h"

namespace wrapwright {

/// The start of one fibre of a bundle.
struct Rooted {
    glm::vec3 root{};
    glm::vec3 direction{};
    glm::vec3 away{}; ///< out of the bundle's middle, to fan and sag by
};

/// The place and pose of one bundle, with its width and its fan.
class Stance {
  public:
    Stance(const Sketch& sketch, const Placed& placed);
    /// The start of fibre i of n: spread over the bundle's width and fan.
    [[nodiscard]] Rooted fibre(Dice& dice, int i, int n) const;
    /// The bundle's middle line, for things of one piece.
    [[nodiscard]] Rooted middle() const { return middle_at(around_, 0.0F); }
    /// The same for one of a pair: side -1 is near a right-hander, 1 far.
    [[nodiscard]] Rooted one_of_pair(float side) const;

    [[nodiscard]] const WireFrame& wire() const { return wire_; }
    [[nodiscard]] float length() const { return length_; }
    [[nodiscard]] bool split() const { return split_; }

  private:
    [[nodiscard]] Rooted middle_at(float around, float sideways) const;

    WireFrame wire_;
    float length_, thick_, root_, lean_, spread_, around_;
    bool all_round_, split_, both_sides_;
};

} // namespace wrapwright
