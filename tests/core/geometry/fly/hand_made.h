#pragma once
// Records written by hand, so that the drawing is tested apart from the tying: what is in them is
// known to the last turn.

#include "core/assert.h"
#include "core/geometry/fly/build.h"

#include <algorithm>
#include <cmath>
#include <string>

namespace wrapwright::test {

/// One base, its record grown call by call; each call is one act and one moment.
struct HandMade {
    Pattern pattern;
    Tied tied;

    explicit HandMade(HookFamily family = HookFamily::wet, int size = 14) {
        tied.size = HookSize{size};
        add_base(family, size);
    }

    void add_base(HookFamily family, int size) {
        Result<Hook> hook = typical_hook(family, HookSize{size});
        WW_ASSERT(hook.ok());
        Profile bare;
        const Centreline line(hook.value());
        bare.cell = line.stations().bend_bottom / profile_cells;
        bare.diameter.fill(hook.value().wire.value.si);
        // The first of each base is bare, in the order of bases.
        tied.profiles.insert(tied.profiles.begin() + static_cast<long>(tied.bases.size()), bare);
        tied.last_profile.push_back(static_cast<int>(tied.bases.size()));
        tied.bases.push_back({hook.value(), line, hook.value().eye_length.value, none, Length{}});
        Base base;
        base.id = "base" + std::to_string(tied.bases.size());
        pattern.recipe.bases.push_back(base);
    }

    int material(MaterialKind kind, const char* colour, const char* role) {
        RecipeMaterial m;
        m.kind = kind;
        m.colour = colour;
        pattern.recipe.materials.push_back(m);
        Part p;
        p.role = role;
        pattern.recipe.parts.push_back(p);
        return static_cast<int>(pattern.recipe.materials.size()) - 1;
    }

    [[nodiscard]] double shank_mm() const { return in_millimetres(tied.bases[0].hook.shank.value); }

    /// A winding of so many turns of a strand, in mm.
    Winding& wind(int material, double from, double to, double turns, double width, double height,
                  Sense sense = Sense::with_thread) {
        const int act = static_cast<int>(tied.moments.size());
        Winding w;
        w.act = act;
        w.part = w.material = material;
        w.from = millimetres(from);
        w.to = millimetres(to);
        w.turns = turns;
        w.pitch = millimetres(std::abs(to - from) / turns);
        w.width = millimetres(width);
        w.height = millimetres(height);
        w.sense = sense;
        w.profile_below = tied.last_profile[0];
        Profile now = tied.profile(0);
        const double covered = std::min(1.0, width * turns / std::max(std::abs(to - from), 1e-6));
        w.core = now.diameter_at(0.5 * (w.from + w.to));
        for (int i = now.index(std::min(w.from, w.to)); i <= now.index(std::max(w.from, w.to));
             ++i) {
            now.diameter[static_cast<std::size_t>(i)] += 2e-3 * height * covered;
        }
        tied.windings.push_back(w);
        end_act(now);
        return tied.windings.back();
    }

    /// A body of a given diameter, as dubbing makes one.
    Winding& dub(int material, double from, double to, double first, double last) {
        Winding& w = wind(material, from, to, std::abs(to - from) / 0.4, 0.4, 0.4);
        Profile now = tied.profile(0);
        for (int i = 0; i < profile_cells; ++i) {
            const double f = (in_millimetres(now.at(i)) - from) / (to - from);
            if (f < 0.0 || f > 1.0) continue;
            now.diameter[static_cast<std::size_t>(i)] = (first + f * (last - first)) / 1e3;
        }
        tied.profiles.back() = now;
        return w;
    }

    Placed& put(PlacedKind kind, int material, double at, double to, double reach, double count) {
        Placed p;
        p.kind = kind;
        p.act = static_cast<int>(tied.moments.size());
        p.part = p.material = material;
        p.at = millimetres(at);
        p.to = millimetres(to);
        p.reach = millimetres(reach);
        p.count = count;
        p.root = tied.profile(0).diameter_at(p.at);
        p.all_round = kind != PlacedKind::bundle;
        tied.placed.push_back(p);
        end_act(tied.profile(0));
        return tied.placed.back();
    }

    /// Barbs of the feather wound last.
    Placed& barbs(double reach, double count, double lean) {
        const Winding& stem = tied.windings.back();
        Placed& p = put(PlacedKind::barbs, stem.material, in_millimetres(stem.from),
                        in_millimetres(stem.to), reach, count);
        p.act = stem.act;
        p.lean = degrees(lean);
        p.spread = degrees(6.0);
        return p;
    }

    [[nodiscard]] int last() const { return static_cast<int>(tied.moments.size()) - 1; }

    FlyModel draw(int moment, const FlyDetail& detail = {}) const {
        FlyModel model;
        build_fly(pattern, tied, moment, detail, model);
        return model;
    }
    [[nodiscard]] FlyModel draw() const { return draw(last()); }

  private:
    void end_act(const Profile& now) {
        tied.last_profile[0] = static_cast<int>(tied.profiles.size());
        tied.profiles.push_back(now);
        Moment m;
        m.act = static_cast<int>(tied.moments.size());
        m.profile = tied.last_profile[0];
        m.windings = static_cast<int>(tied.windings.size());
        m.placed = static_cast<int>(tied.placed.size());
        m.state.clamped = true;
        tied.moments.push_back(m);
    }
};

/// The piece of a part, or the first of several.
inline const FlyPiece* piece_of(const FlyModel& model, int part) {
    for (const FlyPiece& p : model.pieces) {
        if (p.part == part) return &p;
    }
    return nullptr;
}

} // namespace wrapwright::test
