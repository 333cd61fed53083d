#include "core/geometry/fly/build.h"

#include "core/geometry/fly/sketch.h"

namespace wrapwright {

namespace {

void draw_placed(Sketch& sketch, const Placed& placed) {
    switch (placed.kind) {
    case PlacedKind::bead:
    case PlacedKind::cone:
    case PlacedKind::dumbbell:
    case PlacedKind::tube: return draw_bead(sketch, placed);
    case PlacedKind::butt: return draw_butt(sketch, placed);
    case PlacedKind::bundle:
    case PlacedKind::post: return draw_bundle(sketch, placed);
    case PlacedKind::barbs: return draw_barbs(sketch, placed);
    case PlacedKind::case_strip: return draw_case(sketch, placed);
    case PlacedKind::clump: return draw_clump(sketch, placed);
    case PlacedKind::joint: return draw_joint(sketch, placed);
    case PlacedKind::coat: // clear, and therefore last
    case PlacedKind::loop: // its turns are windings
    case PlacedKind::knot: return;
    }
}

} // namespace

void build_fly(const Pattern& pattern, const Tied& tied, int moment, const FlyDetail& detail,
               FlyModel& out) {
    Sketch sketch(pattern, tied, moment, detail, out);
    for (int b = 0; b < sketch.base_count(); ++b) {
        if (sketch.base(b).drawn) draw_hook(sketch, b);
    }
    for (int i = 0; i < sketch.windings(); ++i) {
        const Winding& w = tied.windings[static_cast<std::size_t>(i)];
        if (sketch.base(w.base).drawn) draw_winding(sketch, w);
    }
    for (const bool clear : {false, true}) {
        for (int i = 0; i < sketch.placed(); ++i) {
            const Placed& p = tied.placed[static_cast<std::size_t>(i)];
            if (!sketch.there(p) || !sketch.base(p.base).drawn) continue;
            if (!clear) {
                draw_placed(sketch, p);
            } else if (p.kind == PlacedKind::coat) {
                draw_coat(sketch, p);
            }
        }
    }
    sketch.begin_gear();
    if (detail.hanging_thread) draw_loose_ends(sketch);
    if (detail.vise && sketch.moment >= 0) {
        const Moment& m = tied.moments[static_cast<std::size_t>(sketch.moment)];
        if (m.state.clamped) draw_vise(sketch, m.base);
    }
    sketch.close();
}

} // namespace wrapwright
