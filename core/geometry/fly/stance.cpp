#include "core/geometry/fly/stance.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>
#include <numbers>

namespace wrapwright {

namespace {

constexpr float pi = std::numbers::pi_v<float>;

} // namespace

Stance::Stance(const Sketch& sketch, const Placed& placed)
    : wire_(sketch.base(placed.base).frame(placed.at)), length_(mm(placed.reach)),
      thick_(mm(placed.thick)), root_(0.5F * mm(placed.root)), lean_(rad(placed.lean)),
      spread_(rad(placed.spread)), around_(rad(placed.around)), all_round_(placed.all_round) {
    const std::string_view side = sketch.side(placed.part);
    both_sides_ = side.find("near") != side.npos && side.find("far") != side.npos && !all_round_;
    // Upright wings stand apart; a post does not.
    split_ = lean_ > 1.0F && spread_ > 0.17F && !all_round_ && sketch.role(placed.part) != "post";
}

Rooted Stance::middle_at(float around, float sideways) const {
    const glm::vec3 e = wire_.radial(around);
    const float lift = root_ + 0.35F * thick_;
    Rooted r;
    r.root = wire_.origin + e * lift;
    const glm::vec3 straight = wire_.along * std::cos(lean_) + e * std::sin(lean_);
    const glm::vec3 aside = wire_.round(around);
    r.direction = glm::normalize(straight * std::cos(sideways) + aside * std::sin(sideways));
    r.away = glm::normalize(wire_.along * -std::sin(lean_) + e * std::cos(lean_));
    return r;
}

Rooted Stance::one_of_pair(float side) const {
    if (both_sides_) return middle_at(side * 0.5F * pi, 0.0F);
    return middle_at(around_, side * std::max(spread_, 0.06F));
}

Rooted Stance::fibre(Dice& dice, int i, int n) const {
    const float side = i % 2 == 0 ? -1.0F : 1.0F;
    Rooted m = middle();
    if (all_round_) {
        m = middle_at(2.0F * pi * (static_cast<float>(i) + dice.even()) / static_cast<float>(n),
                      0.0F);
    } else if (split_ || both_sides_) {
        m = one_of_pair(side);
    }
    const glm::vec3 aside = glm::normalize(glm::cross(m.direction, m.away));
    // Over the width, rounder at the middle; the fan opens the way the fibre is off the middle.
    const float r = std::sqrt(dice.even());
    const float a = 2.0F * pi * dice.even();
    const float x = r * std::cos(a);
    const float y = r * std::sin(a);
    m.root += 0.5F * thick_ * (x * aside + 0.7F * y * m.away);
    const float fan = split_ ? 0.45F * spread_ : spread_;
    m.direction = glm::normalize(m.direction +
                                 std::tan(std::min(fan, 1.2F)) * (x * aside + 0.6F * y * m.away));
    m.away = glm::normalize(x * aside + y * m.away + 1e-4F * m.away);
    return m;
}

} // namespace wrapwright
