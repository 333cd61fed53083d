#include "gui/overlays.h"

#include "core/check/target_marks.h"
#include "core/geometry/fly/strand_line.h"
#include "core/geometry/helix.h"
#include "core/units/number_text.h"
#include "core/units/number_words.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>
#include <numbers>

namespace wrapwright {

namespace {

constexpr float two_pi = 2.0F * std::numbers::pi_v<float>;
constexpr int points_per_turn = 24;
constexpr int most_ticks = 80; ///< more would be a solid bar

float mm(Length x) { return static_cast<float>(in_millimetres(x)); }

class Marks {
  public:
    Marks(const Model& model, const OpenFly& fly, int moment, Scene& scene)
        : model_(model), fly_(fly), moment_(moment), scene_(scene),
          counted_(counted_at(fly_, moment)),
          text_(scene.text_px * scene.camera.height / static_cast<float>(scene.size.height)) {}

    void add() {
        const Moment& now = fly_.tied.moments[static_cast<std::size_t>(moment_)];
        if (on(Overlay::ruler)) ruler(now.base);
        if (on(Overlay::targets)) targets();
        if (on(Overlay::no_go)) no_go(now.base);
        const int i = active();
        if (i < 0) return;
        const Winding& w = fly_.tied.windings[static_cast<std::size_t>(i)];
        if (w.turns <= 0.0) return;
        if (on(Overlay::ends)) ends(w);
        if (on(Overlay::spacing)) spacing(i, w);
        if (on(Overlay::sense)) sense(w);
        if (on(Overlay::rib_angle) && w.spacing != Spacing::touching) rib_angle(i, w);
        if (on(Overlay::crossings) && w.spacing != Spacing::touching) crossing(i, w);
        if (on(Overlay::ghost)) ghost(i, w);
    }

  private:
    [[nodiscard]] bool on(Overlay overlay) const {
        return model_.settings.overlays[static_cast<std::size_t>(overlay)];
    }
    /// The stretch that is wound now, where an action has several; -1 where it winds none.
    [[nodiscard]] int active() const {
        double left = at_work(model_) ? model_.state.turns : 0.0;
        int i = counted_.first;
        while (i + 1 < counted_.last) {
            const double turns = fly_.tied.windings[static_cast<std::size_t>(i)].turns;
            if (left < turns - 0.5) break;
            left -= turns;
            ++i;
        }
        return i < counted_.last ? i : -1;
    }
    [[nodiscard]] WirePlace place(int base, Length at) const {
        return wire_place(fly_.pattern, fly_.tied, moment_, base, at);
    }
    /// Half of what is on the hook there now, mm.
    [[nodiscard]] float radius(const Winding& w, Length at) const {
        const Profile& below = fly_.tied.profiles[static_cast<std::size_t>(w.profile_below)];
        return 0.5F * mm(below.diameter_at(at)) + mm(w.height);
    }
    void line(glm::vec3 from, glm::vec3 to, Ink ink = Ink::measure, float width = 1.5F,
              LineEnd end = LineEnd::plain) {
        scene_.lines.push_back({from, to, ink, end, width});
    }
    void label(glm::vec3 at, std::string text, LabelSide side, Ink ink = Ink::measure) {
        scene_.labels.push_back({at, std::move(text), ink, side, true});
    }
    void chain(const std::vector<glm::vec3>& points, Ink ink, float width) {
        for (std::size_t i = 1; i < points.size(); ++i) line(points[i - 1], points[i], ink, width);
    }

    void ruler(int base) {
        const Stations& s = fly_.tied.bases[static_cast<std::size_t>(base)].line.stations();
        const int whole = static_cast<int>(in_millimetres(s.bend));
        for (int i = 0; i <= whole; ++i) {
            const WirePlace p = place(base, millimetres(i));
            const glm::vec3 foot = p.origin - p.up * (2.2F * text_);
            line(foot, foot - p.up * (i % 5 == 0 ? 0.9F : 0.45F) * text_);
            if (i % 5 == 0) {
                label(foot - p.up * 0.9F * text_, std::to_string(i) + (i == 0 ? " mm" : ""),
                      LabelSide::below);
            }
        }
        const WirePlace front = place(base, Length{});
        const WirePlace rear = place(base, millimetres(whole));
        line(front.origin - front.up * (2.2F * text_), rear.origin - rear.up * (2.2F * text_));
    }

    /// Where each part should end by the picked standard, within its tolerance.
    void targets() {
        for (const TargetMark& m : target_marks(fly_.pattern, fly_.tied,
                                                only(model_.check.targets, standard_of(model_)))) {
            const auto at = [](const glm::vec2& p) { return glm::vec3(p, 0.0F); };
            const glm::vec3 half = 0.9F * text_ * at(m.across);
            line(at(m.root), at(m.aim), Ink::faint, 1.0F);
            line(at(m.low) - 0.6F * half, at(m.low) + 0.6F * half, Ink::warning, 1.0F);
            line(at(m.high) - 0.6F * half, at(m.high) + 0.6F * half, Ink::warning, 1.0F);
            line(at(m.aim) - half, at(m.aim) + half, Ink::warning, 2.5F);
            label(at(m.aim) + half, std::string(name(m.part)), LabelSide::above, Ink::warning);
        }
    }

    void no_go(int base) {
        const BaseRun& run = fly_.tied.bases[static_cast<std::size_t>(base)];
        if (run.bead != none || run.no_go.si <= 0.0) return;
        const WirePlace eye = place(base, Length{});
        const WirePlace end = place(base, run.no_go);
        const float half = 0.4F * mm(run.hook.eye_diameter.value) + 0.2F;
        scene_.hatches.push_back({{eye.origin + half * eye.up, end.origin + half * end.up,
                                   end.origin - half * end.up, eye.origin - half * eye.up},
                                  Ink::warning});
        label(0.5F * (eye.origin + end.origin) - half * eye.up, "for the head", LabelSide::below,
              Ink::warning);
    }

    void ends(const Winding& w) {
        const bool tailward = w.to > w.from;
        // Each label stands outside of the stretch: the eye is at the right, or in a mirror left.
        const auto mark = [&](Length at, const std::string& word, bool eyeward) {
            const WirePlace p = place(w.base, at);
            const float high = radius(w, at) + 1.3F * text_;
            line(p.origin - 0.6F * high * p.up, p.origin + high * p.up);
            const bool right = eyeward != scene_.camera.mirrored;
            label(p.origin + high * p.up, word + " " + length_words(at, model_.settings.inches),
                  right ? LabelSide::right : LabelSide::left);
        };
        mark(w.from, "start", tailward);
        mark(w.to, "stop", !tailward);
    }

    void spacing(int index, const Winding& w) {
        const int turns = static_cast<int>(w.turns);
        if (turns < 1 || turns > most_ticks) return;
        const auto tops =
            strand_line(fly_.pattern, fly_.tied, moment_, index, 0.0, turns, turns + 1);
        for (const glm::vec3& p : tops) {
            // Straight above the wire, whatever side of the hook the turn starts on.
            const glm::vec3 foot(p.x, 0.0F, 0.0F);
            const WirePlace here = place(w.base, 0.5 * (w.from + w.to));
            const float high = here.origin.y + radius(w, 0.5 * (w.from + w.to));
            line(foot + glm::vec3(0.0F, high + 0.25F * text_, 0.0F),
                 foot + glm::vec3(0.0F, high + 0.85F * text_, 0.0F));
        }
        if (w.spacing == Spacing::touching || w.pitch.si <= 0.0) return;
        const WirePlace middle = place(w.base, 0.5 * (w.from + w.to));
        label(middle.origin - middle.up * (radius(w, 0.5 * (w.from + w.to)) + 0.4F * text_),
              length_words(w.pitch, model_.settings.inches) + " apart", LabelSide::below);
    }

    /// An arc round the hook at the winding's middle, with its head the way it goes.
    void sense(const Winding& w) {
        const Length at = 0.5 * (w.from + w.to);
        const WirePlace p = place(w.base, at);
        const float r = radius(w, at) + 0.7F * text_;
        const float way = w.sense == Sense::with_thread ? 1.0F : -1.0F;
        std::vector<glm::vec3> arc;
        for (int i = 0; i <= points_per_turn; ++i) {
            const float angle =
                way * two_pi * (-0.2F + 0.5F * static_cast<float>(i) / points_per_turn);
            arc.push_back(p.origin + r * (std::cos(angle) * p.up + std::sin(angle) * p.out));
        }
        chain(arc, Ink::measure, 2.0F);
        const glm::vec3 tip = arc.back();
        const glm::vec3 back = glm::normalize(arc[arc.size() - 3] - tip);
        for (const float side : {-1.0F, 1.0F}) {
            line(tip, tip + 0.6F * text_ * (back + side * 0.6F * p.along), Ink::measure, 2.0F);
        }
    }

    void rib_angle(int index, const Winding& w) {
        const double turn = std::max(0.0, 0.5 * w.turns - 0.5);
        const auto strand = strand_line(fly_.pattern, fly_.tied, moment_, index, turn,
                                        std::min(w.turns, turn + 0.5), 12);
        const Length at = 0.5 * (w.from + w.to);
        // Source  unrolled, a turn rises by the pitch over the length round the core
        const double round =
            2.0 * std::numbers::pi * 0.5e-3 * static_cast<double>(radius(w, at)) * 2.0;
        const double degrees_to_shank = std::atan2(round, w.pitch.si) * 180.0 / std::numbers::pi;
        label(strand[6], write_rounded(degrees_to_shank, 0) + "° to the shank", LabelSide::right);
    }

    /// Where a rib lies over the turns of a body: one mark a turn, and how often in all.
    void crossing(int index, const Winding& w) {
        for (int i = index - 1; i >= 0; --i) {
            const Winding& body = fly_.tied.windings[static_cast<std::size_t>(i)];
            const bool over = body.base == w.base && body.part != w.part &&
                              std::min(body.from, body.to) < std::max(w.from, w.to) &&
                              std::max(body.from, body.to) > std::min(w.from, w.to);
            if (!over || body.part == none || body.turns < 1.0) continue;
            const Crossings times = crossings(w.turns, body.turns, w.sense == body.sense);
            const WirePlace p = place(w.base, w.to);
            label(p.origin - p.up * (radius(w, w.to) + 1.7F * text_),
                  "crosses about " + write_rounded(times.mean, 0) + " times", LabelSide::below);
            return;
        }
    }

    /// The turn that comes next, as a line.
    void ghost(int index, const Winding& w) {
        if (!at_work(model_) || !model_.settings.count_turns) return;
        double done = model_.state.turns;
        for (int i = counted_.first; i < index; ++i) {
            done -= fly_.tied.windings[static_cast<std::size_t>(i)].turns;
        }
        if (done < -1e-9 || done >= w.turns) return;
        done = std::max(0.0, done);
        chain(strand_line(fly_.pattern, fly_.tied, moment_, index, done,
                          std::min(w.turns, done + 1.0), points_per_turn + 1),
              Ink::warning, 3.0F);
    }

    const Model& model_;
    const OpenFly& fly_;
    int moment_;
    Scene& scene_;
    Counted counted_;
    float text_; ///< height of a letter, mm
};

} // namespace

void add_overlays(const Model& model, const OpenFly& fly, int moment, Scene& scene) {
    Marks(model, fly, moment, scene).add();
}

} // namespace wrapwright
