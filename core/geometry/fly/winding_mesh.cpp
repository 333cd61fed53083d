// Strands that are wound: thread, wire, tinsel, floss, quill, stems.

#include "core/geometry/fly/lathe.h"
#include "core/geometry/fly/wound_path.h"

namespace wrapwright {

namespace {

/// The section of a strand that lies `wide` by `high` mm.
Section strand_section(const Sketch& sketch, float wide, float high) {
    const double half_high = 0.5 * static_cast<double>(high);
    const double half_wide = 0.5 * static_cast<double>(wide);
    const int sides = std::max(sketch.sides(0.5F * std::max(wide, high), 6), 6);
    if (wide < 2.0F * high) return ellipse_section(sides, half_high, half_wide);
    return ellipse_section(std::min(std::max(sides, 8), 16), half_high, half_wide);
}

/// Many turns too fine to tell apart: a body turned over them, its light rippled turn by turn.
void add_blurred(Sketch& sketch, Mesh& mesh, const Winding& winding) {
    const BasePlace& base = sketch.base(winding.base);
    const Length from = std::min(winding.from, winding.to) - 0.5 * winding.width;
    const Length to = std::max(winding.from, winding.to) + 0.5 * winding.width;
    const Profile& before = sketch.tied.profiles[static_cast<std::size_t>(winding.profile_below)];
    const Profile* made = sketch.profile_after(winding.act, winding.base);
    const Surface below(base, before);
    const Surface after(base, made ? *made : before);
    const float height = mm(winding.height);
    const float wave = std::max(2.0F * mm(winding.pitch), 3.0F / sketch.pixels(1.0F));
    const float sense = winding.sense == Sense::with_thread ? 1.0F : -1.0F;
    const float way = winding.to > winding.from ? 1.0F : -1.0F;
    const int steps = std::clamp(static_cast<int>(sketch.pixels(mm(to - from))), 8, 400);
    const float turn = 2.0F * std::numbers::pi_v<float>;
    add_lathe(mesh, base, from, to, steps, std::max(12, sketch.sides(0.5F * mm(winding.core))),
              [&](float at, float angle) {
                  return std::max(below.radius(at) + height, after.radius(at)) +
                         0.12F * height * std::sin(turn * at / wave - sense * way * angle);
              });
}

/// Whether later turns hide a winding altogether.
bool is_covered(const Sketch& sketch, const Winding& winding) {
    for (int i = 0; i < sketch.placed(); ++i) {
        const Placed& p = sketch.tied.placed[static_cast<std::size_t>(i)];
        // What a clear coat makes thicker still shows what is below it.
        if (p.kind == PlacedKind::coat && p.base == winding.base) return false;
    }
    const Profile& now = sketch.profile_now(winding.base);
    const Profile& below = sketch.tied.profiles[static_cast<std::size_t>(winding.profile_below)];
    const Length margin = millimetres(0.15);
    const int a = now.index(std::min(winding.from, winding.to) - winding.width);
    const int b = now.index(std::max(winding.from, winding.to) + winding.width);
    for (int i = a; i <= b; ++i) {
        const Length at = now.at(i);
        if (now.diameter_at(at) < below.diameter_at(at) + 2.0 * winding.height + margin) {
            return false;
        }
    }
    return true;
}

/// A stripped quill: the band and its dark edge.
void draw_quill(Sketch& sketch, const Winding& winding, const WoundPath& path,
                const Colour& colour) {
    const float wide = mm(winding.width);
    const float high = mm(winding.height);
    const int band = sketch.open(Look::fibre, colour, winding.part, winding.act);
    const int edge = sketch.open(Look::fibre, shade(colour, 0.16F), winding.part, winding.act);
    path.add(sketch.mesh(band), strand_section(sketch, wide, high));
    path.add(sketch.mesh(edge), strand_section(sketch, 0.34F * wide, 0.9F * high), -0.33F * wide,
             0.14F * high);
}

} // namespace

void draw_winding(Sketch& sketch, const Winding& winding) {
    if (winding.turns <= 0.0 || winding.width.si <= 0.0 || winding.height.si <= 0.0) return;
    const MaterialKind kind = sketch.kind(winding.material);
    if (kind == MaterialKind::dubbing) return draw_fur(sketch, winding);
    if (is_covered(sketch, winding)) return;
    if (kind == MaterialKind::herl || kind == MaterialKind::chenille ||
        kind == MaterialKind::yarn) {
        return draw_flue(sketch, winding);
    }
    const WoundPath path(sketch, winding);
    const RecipeMaterial* material = sketch.material(winding.material);
    const Look look = material ? look_of(*material) : Look::thread;
    const Colour colour = sketch.colour(winding.material);
    if (kind == MaterialKind::quill || kind == MaterialKind::biot) {
        return draw_quill(sketch, winding, path, colour);
    }
    const int piece = sketch.open(look, colour, winding.part, winding.act);
    Mesh& mesh = sketch.mesh(piece);
    if (sketch.pixels(std::abs(mm(winding.pitch))) < 1.5F && winding.turns > 3.0) {
        return add_blurred(sketch, mesh, winding);
    }
    const bool stem = kind == MaterialKind::hackle || kind == MaterialKind::soft_hackle ||
                      kind == MaterialKind::marabou || kind == MaterialKind::cdc;
    const float thin = stem ? std::min(1.0F, 0.13F / mm(winding.width)) : 1.0F;
    if (kind == MaterialKind::thread && winding.pitch.si < 1.3 * winding.width.si) {
        path.add_filling(mesh, sketch);
    }
    path.add(mesh, strand_section(sketch, thin * mm(winding.width), thin * mm(winding.height)));
}

} // namespace wrapwright
