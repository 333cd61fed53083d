// What hangs and waits: the thread to the bobbin, strands still to be wound, butts, ends not cut.

#include "core/geometry/fly/feather.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

namespace {

/// The thread from where it hangs straight down to the bobbin.
void hang_thread(Sketch& sketch, const Moment& moment) {
    const ThreadState& thread = moment.state.thread;
    const BasePlace& base = sketch.base(moment.base);
    const float radius = 0.5F * mm(sketch.profile_now(moment.base).diameter_at(thread.at));
    const float gape = mm(base.run->hook.gape.value);
    // The thread's own width, as it was wound last.
    float thick = 0.08F;
    for (int i = 0; i < sketch.windings(); ++i) {
        const Winding& w = sketch.tied.windings[static_cast<std::size_t>(i)];
        if (w.material == thread.material) thick = std::sqrt(mm(w.width) * mm(w.height));
    }
    const int piece = sketch.open(Look::thread, sketch.colour(thread.material), none, none);
    const WireFrame wire = base.frame(thread.at);
    Fibre line;
    line.root = wire.origin + wire.out * radius;
    line.direction = {0.0F, -1.0F, 0.0F};
    line.length = 2.1F * gape;
    line.thick = line.tip = sketch.visible(thick, 1.3F);
    line.face = {0.0F, 0.0F, 1.0F};
    add_fibre(sketch.mesh(piece), sketch.sections.round, line, 2);
    const int tube = sketch.open(Look::steel, linear_colour(0xA8ABB0), none, none);
    Fibre spout = line;
    spout.root = fibre_point(line, 0.96F);
    spout.length = 1.6F * gape;
    spout.thick = 0.17F * gape;
    spout.tip = spout.thick;
    add_fibre(sketch.mesh(tube), ellipse_section(sketch.sides(0.5F * spout.thick, 12)), spout, 2);
}

/// A strand that was tied in and waits: it points back and droops.
void lay_strand(Sketch& sketch, const Strand& strand) {
    const BasePlace& base = sketch.base(strand.base);
    const Hook& hook = base.run->hook;
    const WireFrame wire = base.frame(strand.at);
    const MaterialKind kind = sketch.kind(strand.material);
    const float radius = 0.5F * mm(sketch.profile_now(strand.base).diameter_at(strand.at));
    const float reach =
        std::min(strand.free.si > 0.0 ? mm(strand.free) : 100.0F, 0.9F * mm(hook.shank.value));
    const glm::vec3 root = wire.origin - wire.out * (0.8F * radius) + wire.up * (0.4F * radius);
    const glm::vec3 back = glm::normalize(wire.along + 0.12F * wire.up - 0.10F * wire.out);
    if (kind == MaterialKind::hackle || kind == MaterialKind::soft_hackle ||
        kind == MaterialKind::marabou || kind == MaterialKind::cdc) {
        FeatherShape shape;
        shape.root = root;
        shape.direction = glm::normalize(wire.along + 0.35F * wire.up);
        shape.face = -wire.out;
        shape.length = reach;
        const RecipeMaterial* material = sketch.material(strand.material);
        shape.width = std::min(material ? sketch.given_mm(material->barb_length, 0.45F * reach)
                                        : 0.45F * reach,
                               0.7F * reach);
        add_feather(sketch, strand.material, strand.part, strand.tied_in, shape, strand.tied_in);
        return;
    }
    float wide = 0.12F;
    float high = 0.12F;
    for (const Winding& w : sketch.tied.windings) {
        if (w.part != strand.part || w.material != strand.material) continue;
        wide = mm(w.width);
        high = mm(w.height);
    }
    const RecipeMaterial* material = sketch.material(strand.material);
    const Look look = material ? look_of(*material) : Look::thread;
    const int piece =
        sketch.open(look, sketch.colour(strand.material), strand.part, strand.tied_in);
    const Section section =
        ellipse_section(std::max(6, sketch.sides(0.5F * wide)),
                        static_cast<double>(std::clamp(high / std::max(wide, 1e-3F), 0.15F, 1.0F)));
    Dice dice(strand.tied_in, 709);
    const int count = kind == MaterialKind::herl || kind == MaterialKind::fibres
                          ? std::clamp(static_cast<int>(strand.count), 1, 8)
                          : 1;
    for (int i = 0; i < count; ++i) {
        Fibre fibre;
        fibre.root = root;
        fibre.direction = glm::normalize(back + 0.12F * glm::vec3{0, dice.bell(), dice.bell()});
        fibre.bend = {0.0F, strand.springy ? 0.06F : -0.22F, 0.0F};
        fibre.length = reach;
        fibre.thick = fibre.tip = sketch.visible(wide, 1.2F);
        fibre.face = wire.up - wire.out;
        add_fibre(sketch.mesh(piece), section, fibre, 16);
        if (kind == MaterialKind::chenille || kind == MaterialKind::herl) {
            add_fluff(sketch, sketch.mesh(piece), fibre, dice, 0.5F * wide + 0.3F, 160);
        }
    }
}

/// The waste of a strand that is tied off but not yet cut.
void stand_waste(Sketch& sketch, const Strand& strand) {
    for (int i = sketch.windings() - 1; i >= 0; --i) {
        const Winding& w = sketch.tied.windings[static_cast<std::size_t>(i)];
        if (w.part != strand.part || w.material != strand.material || w.base != strand.base)
            continue;
        const BasePlace& base = sketch.base(w.base);
        const WireFrame wire = base.frame(w.to);
        const float radius = 0.5F * mm(sketch.profile_now(w.base).diameter_at(w.to));
        const int piece =
            sketch.open(Look::fibre, sketch.colour(w.material), w.part, strand.tied_off);
        Fibre end;
        end.root = wire.origin + wire.up * radius;
        end.direction = glm::normalize(wire.up - 0.7F * wire.along - 0.5F * wire.out);
        end.bend = 0.1F * wire.up;
        end.length = 0.55F * mm(base.run->hook.gape.value);
        end.thick = end.tip = sketch.visible(std::min(mm(w.width), 0.3F), 1.2F);
        const double flat = std::clamp(w.height / w.width, 0.2, 1.0);
        add_fibre(sketch.mesh(piece), ellipse_section(6, flat), end, 6);
        return;
    }
}

} // namespace

void draw_butt(Sketch& sketch, const Placed& placed) {
    const BasePlace& base = sketch.base(placed.base);
    const RecipeMaterial* material = sketch.material(placed.material);
    const Look look = material ? look_of(*material) : Look::fibre;
    const int piece = sketch.open(look, sketch.colour(placed.material), placed.part, placed.act);
    const Profile* before = sketch.profile_after(placed.act - 1, placed.base);
    const Profile& below = before ? *before : sketch.profile_now(placed.base);
    const int count = std::clamp(static_cast<int>(placed.count), 1, 9);
    const float each = mm(placed.thick) / std::sqrt(static_cast<float>(count));
    const Section section = ellipse_section(6, 0.6, 1.0);
    // Thread presses them into a flat band along the top.
    for (int i = 0; i < count; ++i) {
        const float off =
            count == 1 ? 0.0F
                       : 1.4F * (static_cast<float>(i) / static_cast<float>(count - 1) - 0.5F);
        constexpr std::size_t steps = 24;
        std::array<PathPoint, steps + 1> path{};
        for (std::size_t k = 0; k <= steps; ++k) {
            const Length at =
                placed.at + (static_cast<double>(k) / steps) * (placed.to - placed.at);
            const WireFrame wire = base.frame(at);
            const glm::vec3 e = wire.radial(rad(placed.around) + off);
            path[k] = {wire.origin + e * (0.5F * mm(below.diameter_at(at)) + 0.1F * each),
                       0.5F * each};
        }
        append_path(sketch.mesh(piece), path, section,
                    base.frame(placed.at).radial(rad(placed.around) + off));
    }
}

void draw_loose_ends(Sketch& sketch) {
    if (sketch.moment < 0) return;
    const Moment& moment = sketch.tied.moments[static_cast<std::size_t>(sketch.moment)];
    for (int i = 0; i < sketch.strands(); ++i) {
        const Strand& s = sketch.tied.strands[static_cast<std::size_t>(i)];
        const auto done = [&](int act) { return act != none && act <= sketch.act(); };
        if (!s.to_wind || done(s.trimmed) || !sketch.base(s.base).drawn) continue;
        if (!done(s.wound)) lay_strand(sketch, s);
        // What no step cuts is taken as cut.
        if (done(s.wound) && done(s.tied_off) && s.trimmed != none) stand_waste(sketch, s);
    }
    if (moment.state.thread.on) hang_thread(sketch, moment);
}

} // namespace wrapwright
