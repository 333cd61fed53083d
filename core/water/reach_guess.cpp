#include "core/water/reach_guess.h"

#include "core/geometry/helix.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace wrapwright {

namespace {

const Stuff& stuff_of(const Resolved& numbers, int act) {
    const int m = numbers.acts[static_cast<std::size_t>(act)].material;
    return numbers.materials[static_cast<std::size_t>(m)];
}

bool alike(Length a, Length b) { return std::abs((a - b).si) < 0.02e-3; }

/// What a combination adds: mass, volume, and the moment of its weight in water about the eye's line,
/// towards the point. kg, m3, kg m
struct Load {
    double mass = 0.0, volume = 0.0, moment = 0.0;

    Load& operator+=(const Load& o) {
        mass += o.mass;
        volume += o.volume;
        moment += o.moment;
        return *this;
    }
};

/// The steady speed by weight in water: a table in the logarithms with a cubic through its rows.
class Speeds {
  public:
    Speeds() = default;
    Speeds(const WetShape& shape, const ReachFrom& from, double least, double most)
        : first_(std::log(std::max(least, 1e-6))),
          step_(std::max(1e-3, (std::log(std::max(most, 2e-6)) - first_) / (rows - 1))) {
        for (int i = 0; i < rows; ++i) {
            const double u = speed_on_tippet(shape, std::exp(first_ + i * step_), from.water,
                                             from.fishing.tippet);
            log_speed_[static_cast<std::size_t>(i)] = std::log(std::max(u, 1e-6));
        }
    }

    [[nodiscard]] double at(double weight) const {
        if (!(weight > 0.0)) return 0.0;
        const double x = std::clamp((std::log(weight) - first_) / step_, 0.0, rows - 1.0);
        const int i = std::clamp(static_cast<int>(x), 1, rows - 3);
        const double t = x - i;
        const auto y = [&](int k) { return log_speed_[static_cast<std::size_t>(k)]; };
        const double a = y(i - 1), b = y(i), c = y(i + 1), d = y(i + 2); // Lagrange's cubic
        const double cubic = (d - a) / 6.0 + (b - c) / 2.0;
        const double square = (a + c) / 2.0 - b;
        const double linear = c - a / 3.0 - b / 2.0 - d / 6.0;
        return std::exp(b + t * (linear + t * (square + t * cubic)));
    }

  private:
    static constexpr int rows = 10;
    double first_ = 0.0, step_ = 1.0;
    std::array<double, rows> log_speed_{};
};

/// One turn of a strand on the bare wire, touching its neighbours.
struct Turn {
    Load load;
    double pitch = 0.0;
};

class Guessing {
  public:
    Guessing(const ReachFrom& from, const std::vector<Stuff>& beads,
             const std::vector<Stuff>& strands, int most_turns)
        : from_(from), beads_(beads), strands_(strands), most_turns_(most_turns),
          places_(reach_places(from.numbers)) {
        const int bead = material(places_.bead_act), ballast = material(places_.ballast_act);
        for (const Lump& l : from.body.lumps) {
            const int m = from.body.portions[static_cast<std::size_t>(l.portion)].material;
            if (m != none && (m == bead || m == ballast)) continue;
            rest_ += load(l.mass.si, l.volume.si, l.at);
        }
        if (places_.ballast_act == none) return;
        for (const Stuff& s : strands_) turns_.push_back(turn_of(s));
    }

    std::vector<Guess> all() {
        if (places_.bead_act == none) {
            add_bead(none);
        } else {
            for (std::size_t i = 0; i < beads_.size(); ++i) add_bead(static_cast<int>(i));
        }
        return std::move(out_);
    }

  private:
    [[nodiscard]] int material(int act) const {
        return act == none ? none : from_.numbers.acts[static_cast<std::size_t>(act)].material;
    }
    [[nodiscard]] Load load(double mass, double volume, const glm::dvec2& at) const {
        const double weight = mass - from_.water.density.si * volume;
        return {mass, volume, weight * (from_.body.eye.y - at.y)};
    }
    [[nodiscard]] double weight_of(const Load& l) const {
        return (l.mass - from_.water.density.si * l.volume) * free_fall;
    }

    [[nodiscard]] Load load_of_bead(const Stuff& bead) const {
        const double mass = bead.item_mass.value.si;
        const glm::dvec2 at = from_.tied.bases.front().line.position(0.5 * bore_length(bead.bead));
        return load(mass, mass / std::max(1.0, bead.density.value.si), at);
    }

    [[nodiscard]] Turn turn_of(const Stuff& strand) const {
        const Length wire = from_.rig.hooks.front().wire.value;
        const Length centre = centre_radius(wire, strand.height.value);
        const Result<Length> touching = touching_pitch(strand.width.value, centre);
        const Length pitch = touching.ok() ? touching.value() : strand.width.value;
        const double mass = (strand.linear.value * helix_length(1.0, centre, pitch)).si;
        return {load(mass, mass / std::max(1.0, strand.density.value.si), {0.0, 0.0}), pitch.si};
    }

    [[nodiscard]] WetShape with_bead(const Stuff& bead) const {
        WetShape shape = from_.shape;
        const double before = shape.bead.si, after = bead.bead.diameter.value.si;
        const double open =
            shape.blunt.si + std::numbers::pi / 4.0 * (before * before - after * after);
        shape.bead = {after};
        shape.blunt = {std::max(0.0, open)};
        return shape;
    }

    [[nodiscard]] bool passes(const Stuff& bead) const {
        const BeadFit fit =
            bead_fit(bead.bead, from_.tied.bases.front().hook, from_.limits.bead_clearance);
        for (const PassageCheck* c : {&fit.wire, &fit.barb, &fit.bend, &fit.jig_bend}) {
            if (c->verdict == Passage::sticks) return false;
        }
        return true;
    }

    void add(Guess guess, const Load& l, const Speeds& speeds) {
        guess.distance = distance_from(from_.goal, from_.fishing, l.mass, speeds.at(weight_of(l)));
        // By the line parallel to the shank alone; tying in full tells the rest.
        if (from_.goal.ride && (l.moment < 0.0) != (*from_.goal.ride == Ride::point_up)) {
            guess.distance += 1.0;
        }
        out_.push_back(guess);
    }

    void add_bead(int b) {
        Guess guess;
        guess.bead = b;
        Load base = rest_;
        double front = from_.tied.bases.front().bead_rear.si;
        WetShape shape = from_.shape;
        if (b != none) {
            const Stuff& bead = beads_[static_cast<std::size_t>(b)];
            if (!passes(bead)) return;
            base += load_of_bead(bead);
            front = bore_length(bead.bead).si;
            shape = with_bead(bead);
            guess.change = is_same_bead(bead, stuff_of(from_.numbers, places_.bead_act)) ? 0 : 1;
            guess.lead = bead.toxic;
        }
        const double room = from_.tied.bases.front().line.stations().bend.si - front;
        Speeds speeds;
        if (!from_.goal.mass) {
            double heaviest = base.mass;
            for (const Turn& t : turns_) {
                const double fit = std::min<double>(most_turns_, room / t.pitch);
                heaviest = std::max(heaviest, base.mass + std::max(0.0, fit) * t.load.mass);
            }
            speeds = Speeds(shape, from_, weight_of(base), heaviest * free_fall);
        }
        add_ballasts(guess, base, room, speeds);
    }

    void add_ballasts(const Guess& bead, const Load& base, double room, const Speeds& speeds) {
        const int act = places_.ballast_act;
        if (act == none) {
            add(bead, base, speeds);
            return;
        }
        const double now = from_.numbers.acts[static_cast<std::size_t>(act)].turns.value;
        Guess guess = bead;
        guess.change = bead.change + 0.5 + 0.05 * now;
        add(guess, base, speeds);
        for (std::size_t k = 0; k < turns_.size(); ++k) {
            const bool kept = is_same_strand(strands_[k], stuff_of(from_.numbers, act));
            guess.strand = static_cast<int>(k);
            guess.lead = bead.lead || strands_[k].toxic;
            Load l = base;
            for (int n = 1; n <= most_turns_ && n * turns_[k].pitch <= room; ++n) {
                l += turns_[k].load;
                guess.turns = n;
                guess.change = bead.change + (kept ? 0.0 : 1.0) + 0.05 * std::abs(n - now);
                add(guess, l, speeds);
            }
        }
    }

    const ReachFrom& from_;
    const std::vector<Stuff>&beads_, &strands_;
    int most_turns_;
    ReachPlaces places_;
    Load rest_;
    std::vector<Turn> turns_;
    std::vector<Guess> out_;
};

} // namespace

bool is_same_bead(const Stuff& a, const Stuff& b) {
    return a.substance == b.substance && a.kind == b.kind &&
           alike(a.bead.diameter.value, b.bead.diameter.value);
}

bool is_same_strand(const Stuff& a, const Stuff& b) {
    return a.substance == b.substance && alike(a.width.value, b.width.value);
}

ReachPlaces reach_places(const Resolved& numbers) {
    ReachPlaces out;
    for (std::size_t i = 0; i < numbers.acts.size(); ++i) {
        const Act& a = numbers.acts[i];
        if (a.base != 0 || a.material == none) continue;
        const MaterialKind kind = numbers.materials[static_cast<std::size_t>(a.material)].kind;
        const bool bead = kind == MaterialKind::bead || kind == MaterialKind::cone;
        if (a.op == Op::slide_on && bead && out.bead_act == none) {
            out.bead_act = static_cast<int>(i);
        }
        if (a.op == Op::wind_ballast && out.ballast_act == none) {
            out.ballast_act = static_cast<int>(i);
        }
    }
    return out;
}

double distance_from(const ReachGoal& goal, const Fishing& fishing, double mass, double speed) {
    if (goal.mass) return std::abs(std::log(mass / goal.mass->si));
    if (goal.sink) return std::abs(std::log(std::max(speed, 1e-6) / goal.sink->si));
    if (!goal.depth) return 0.0;
    const Length z =
        speed > 1e-4 ? drift_depth(fishing.stream, Speed{speed}, goal.along) : Length{};
    return std::abs((z - *goal.depth).si) / goal.depth->si;
}

double speed_on_tippet(const WetShape& shape, double weight, const Water& water,
                       const Tippet& tippet) {
    const Force w = Force{weight} + tippet_weight(tippet, water);
    const auto one = [&](TippetWay way) { return terminal_speed(shape, w, water, tippet, way).si; };
    const double axial = one(TippetWay::axial);
    if (!(tippet.length.si > 0.0)) return axial;
    return std::sqrt(std::max(0.0, axial * one(TippetWay::bowed)));
}

std::vector<Guess> guess_all(const ReachFrom& from, const std::vector<Stuff>& beads,
                             const std::vector<Stuff>& strands, int most_turns) {
    return Guessing(from, beads, strands, most_turns).all();
}

} // namespace wrapwright
