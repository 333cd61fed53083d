// Hackle barbs that stand round the hook: collar, palmer, soft hackle, parachute.

#include "core/geometry/fly/feather.h"
#include "core/geometry/fly/wound_path.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>
#include <numbers>
#include <optional>

namespace wrapwright {

namespace {

constexpr float turn = 2.0F * std::numbers::pi_v<float>;

/// The winding of the stem that carries those barbs, if there is one.
const Winding* stem_of(const Sketch& sketch, const Placed& placed) {
    for (int i = sketch.windings() - 1; i >= 0; --i) {
        const Winding& w = sketch.tied.windings[static_cast<std::size_t>(i)];
        const bool feather = sketch.kind(w.material) != MaterialKind::thread;
        if (w.act == placed.act && w.base == placed.base && feather) return &w;
    }
    return nullptr;
}

/// How barbs of a kind of feather stand. By eye.
struct Barb {
    float thick = 0.05F;
    float tip = 0.012F;
    float curve = 0.08F;  ///< tailward, share of the length
    float limp = 0.0F;    ///< swing of a soft barb
    float uneven = 0.06F; ///< spread of lengths
    int segments = 5;
    double fuller = 1.0; ///< barbs drawn for each in the record: a picture has no fuzz of its own
};

Barb barb_of(MaterialKind kind) {
    switch (kind) {
    case MaterialKind::soft_hackle: return {0.075F, 0.014F, 0.34F, 0.03F, 0.12F, 8, 1.3};
    case MaterialKind::marabou: return {0.08F, 0.01F, 0.62F, 0.09F, 0.35F, 12, 4.0};
    case MaterialKind::cdc: return {0.05F, 0.008F, 0.3F, 0.07F, 0.35F, 9, 2.5};
    default: return {0.070F, 0.012F, 0.08F, 0.0F, 0.08F, 6, 1.8};
    }
}

/// Whether a step has cut the barbs level along the top.
bool trimmed_on_top(const Sketch& sketch, const Placed& placed) {
    if (sketch.moment < 0) return false;
    const int now = sketch.tied.moments[static_cast<std::size_t>(sketch.moment)].step;
    for (int step = placed.step; step <= now; ++step) {
        if (sketch.does(step, placed.part, Op::shape)) return true;
    }
    return false;
}

/// Where one barb starts and what it stands round.
struct BarbRoot {
    glm::vec3 root{};
    glm::vec3 axis{};  ///< along the stem's axis: tailward on a hook, up on a post
    glm::vec3 out{};   ///< straight out from it
    glm::vec3 round{}; ///< across both
};

/// Barbs one by one along their stem, round their post, or round the hook.
class BarbRow {
  public:
    BarbRow(const Sketch& sketch, const Placed& placed)
        : base_(sketch.base(placed.base)), placed_(placed),
          post_(sketch.does(placed.step, placed.part, Op::wind_post)) {
        if (const Winding* stem = stem_of(sketch, placed)) path_.emplace(sketch, *stem);
    }
    /// The barb at a share of the row.
    [[nodiscard]] BarbRoot at(float share, Dice& dice) const {
        if (post_) return on_post(share);
        WireFrame wire;
        float angle = 0.0F;
        glm::vec3 root{};
        if (path_) {
            const StrandFrame f = path_->frame(static_cast<double>(share) * path_->turns());
            root = f.origin;
            wire = f.wire;
            angle = f.angle;
        } else {
            wire = base_.frame(placed_.at + static_cast<double>(share) * (placed_.to - placed_.at));
            // Where barbs are not all round they fan about one side.
            angle = placed_.all_round
                        ? 7.31F * turn * share
                        : rad(placed_.around) + 1.3F * rad(placed_.spread) * dice.bell();
            root = wire.origin + wire.radial(angle) * (0.5F * mm(placed_.root));
        }
        angle += 0.10F * dice.bell();
        return {root, wire.along, wire.radial(angle), wire.round(angle)};
    }
    [[nodiscard]] bool on_a_post() const { return post_; }

  private:
    [[nodiscard]] BarbRoot on_post(float share) const {
        const WireFrame wire = base_.frame(placed_.at);
        const float angle = 7.31F * turn * share;
        const glm::vec3 out = wire.along * std::cos(angle) + wire.out * std::sin(angle);
        const glm::vec3 round = wire.out * std::cos(angle) - wire.along * std::sin(angle);
        const float body = 0.5F * mm(base_.run->hook.wire.value) + 0.5F;
        // Each turn goes below the last.
        const glm::vec3 root = wire.origin + wire.up * (body + 0.8F * (1.0F - share)) +
                               out * (0.5F * mm(placed_.root));
        return {root, wire.up, out, round};
    }

    const BasePlace& base_;
    const Placed& placed_;
    bool post_;
    std::optional<WoundPath> path_;
};

} // namespace

void draw_barbs(Sketch& sketch, const Placed& placed) {
    const float length = mm(placed.reach);
    if (length <= 0.0F || placed.count < 1.0) return;
    const MaterialKind kind = sketch.kind(placed.material);
    const Barb barb = barb_of(kind);
    const Colour colour = sketch.colour(placed.material);
    const Shades shades = sketch.open_shades(Look::fibre, colour, placed.part, placed.act, 0.22F);
    const RecipeMaterial* words = sketch.material(placed.material);
    const bool barred = words && is_barred(*words);
    const int bars =
        barred ? sketch.open(Look::fibre, shade(colour, 0.45F), placed.part, placed.act) : 0;
    const bool soft = barb.limp > 0.05F;
    const bool level_top = trimmed_on_top(sketch, placed);
    const float stubble = 0.18F * mm(sketch.base(placed.base).run->hook.gape.value);

    const BarbRow row(sketch, placed);
    const double wanted = placed.count * barb.fuller;
    const int count = std::clamp(static_cast<int>(wanted), 6, soft ? 220 : 420);
    // What is beyond the most is widened.
    const auto widen =
        static_cast<float>(std::clamp(std::sqrt(wanted / static_cast<double>(count)), 1.0, 1.8));
    const float lean = row.on_a_post() ? 1.45F : rad(placed.lean);
    const float spread = std::max(rad(placed.spread), 0.03F);
    Dice dice(placed.act, 911);
    for (int i = 0; i < count; ++i) {
        const float share =
            (static_cast<float>(i) + 0.8F * dice.even()) / static_cast<float>(count);
        const BarbRoot start = row.at(share, dice);
        // The two sides of a feather lean apart.
        const float own = lean + (i % 2 == 0 ? 0.6F : -0.6F) * spread + 0.6F * spread * dice.bell();
        Fibre fibre;
        fibre.root = start.root;
        fibre.direction = start.out * std::sin(own) + start.axis * std::cos(own);
        fibre.bend = start.axis * (barb.curve * dice.between(0.6F, 1.3F)) -
                     start.out * (0.5F * barb.curve * barb.curve) +
                     0.04F * dice.bell() * start.round;
        fibre.length = length * (1.0F - barb.uneven * dice.even());
        fibre.wave = barb.limp * start.round * dice.bell() * 2.0F;
        fibre.waves = 1.6F;
        fibre.phase = turn * dice.even();
        fibre.thick = sketch.visible(barb.thick * widen, 1.3F);
        fibre.tip = sketch.visible(barb.tip, 0.3F);
        fibre.fullness = 1.8F;
        if (level_top && start.out.y > 0.25F) {
            fibre.length = std::min(fibre.length, stubble / std::max(start.out.y, 0.3F));
        }
        Mesh& mesh = shades.mesh(sketch, i);
        if (barred) {
            add_barred(sketch, mesh, sketch.mesh(bars), fibre, 9, i % 2);
        } else {
            add_fibre(mesh, soft ? sketch.sections.fine : sketch.sections.round, fibre,
                      barb.segments);
        }
        if (soft) add_fluff(sketch, mesh, fibre, dice, std::min(0.08F * length, 1.3F), 20);
    }
}

} // namespace wrapwright
