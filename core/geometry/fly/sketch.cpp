#include "core/geometry/fly/sketch.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace wrapwright {

glm::vec3 WireFrame::radial(float angle) const {
    return up * std::cos(angle) + out * std::sin(angle);
}

glm::vec3 WireFrame::round(float angle) const {
    return out * std::cos(angle) - up * std::sin(angle);
}

WireFrame BasePlace::frame(Length at) const {
    const glm::dvec2 p = run->line.position(at) * 1e3;
    const glm::dvec2 t = run->line.tangent(at);
    WireFrame f;
    f.origin = {static_cast<float>(p.x) + shift, static_cast<float>(p.y), 0.0F};
    f.along = {static_cast<float>(t.x), static_cast<float>(t.y), 0.0F};
    f.up = {-f.along.y, f.along.x, 0.0F};
    f.out = {0.0F, 0.0F, 1.0F};
    return f;
}

Sketch::Sketch(const Pattern& recipe, const Tied& record, int at_moment, const FlyDetail& wanted,
               FlyModel& out)
    : pattern(recipe), tied(record), detail(wanted),
      moment(std::min(at_moment, static_cast<int>(record.moments.size()) - 1)), out_(out),
      base_count_(std::min(static_cast<int>(record.bases.size()), most_bases)) {
    lay_bases();
    choose_drawn();
}

void Sketch::lay_bases() {
    const BaseShifts shifts = base_shifts(pattern, tied);
    for (int i = 0; i < base_count_; ++i) {
        BasePlace& place = bases_[static_cast<std::size_t>(i)];
        place.run = &tied.bases[static_cast<std::size_t>(i)];
        place.shift = static_cast<float>(in_millimetres(shifts[static_cast<std::size_t>(i)]));
    }
}

void Sketch::choose_drawn() {
    if (moment < 0 || moment + 1 == static_cast<int>(tied.moments.size())) return;
    for (BasePlace& place : bases_) place.drawn = false;
    const int active = tied.moments[static_cast<std::size_t>(moment)].base;
    if (active >= base_count_) return;
    bases_[static_cast<std::size_t>(active)].drawn = true;
    // A base in hand shows what is joined to it by now.
    bool joined = false;
    for (int i = 0; i < placed(); ++i) {
        const Placed& p = tied.placed[static_cast<std::size_t>(i)];
        joined = joined || (p.kind == PlacedKind::joint && there(p));
    }
    if (joined) {
        for (BasePlace& place : bases_) place.drawn = true;
    }
}

int Sketch::open(Look look, const Colour& colour, int part, int act, float opacity) {
    if (used_ == out_.pieces.size()) out_.pieces.emplace_back();
    FlyPiece& piece = out_.pieces[used_];
    piece.mesh.vertices.clear();
    piece.mesh.indices.clear();
    piece.look = look;
    piece.colour = colour;
    piece.opacity = opacity;
    piece.part = part;
    piece.act = act;
    return static_cast<int>(used_++);
}

Shades Sketch::open_shades(Look look, const Colour& colour, int part, int act, float spread) {
    return {{open(look, shade(colour, 1.0F - spread), part, act), open(look, colour, part, act),
             open(look, shade(colour, 1.0F + spread), part, act)}};
}

Mesh& Sketch::mesh(int piece) { return out_.pieces[static_cast<std::size_t>(piece)].mesh; }

void Sketch::close() {
    out_.pieces.resize(used_);
    out_.low.fill(std::numeric_limits<float>::max());
    out_.high.fill(std::numeric_limits<float>::lowest());
    for (std::size_t i = 0; i < used_; ++i) {
        if (gear_ >= 0 && static_cast<int>(i) >= gear_) break;
        for (const Vertex& v : out_.pieces[i].mesh.vertices) {
            for (std::size_t k = 0; k < 3; ++k) {
                out_.low[k] = std::min(out_.low[k], v.position[k]);
                out_.high[k] = std::max(out_.high[k], v.position[k]);
            }
        }
    }
    if (out_.low[0] > out_.high[0]) out_.low = out_.high = {0.0F, 0.0F, 0.0F};
    std::erase_if(out_.pieces, [](const FlyPiece& p) { return p.mesh.indices.empty(); });
}

const BasePlace& Sketch::base(int index) const {
    return bases_[static_cast<std::size_t>(std::clamp(index, 0, base_count_ - 1))];
}

int Sketch::windings() const {
    return moment < 0 ? 0 : tied.moments[static_cast<std::size_t>(moment)].windings;
}
int Sketch::placed() const {
    return moment < 0 ? 0 : tied.moments[static_cast<std::size_t>(moment)].placed;
}
int Sketch::strands() const {
    return moment < 0 ? 0 : tied.moments[static_cast<std::size_t>(moment)].strands;
}
int Sketch::act() const {
    return moment < 0 ? none : tied.moments[static_cast<std::size_t>(moment)].act;
}

bool Sketch::there(const Placed& p) const { return p.removed_act == none || p.removed_act > act(); }

const Profile& Sketch::profile_now(int base_index) const {
    for (int i = moment; i >= 0; --i) {
        const Moment& m = tied.moments[static_cast<std::size_t>(i)];
        if (m.base == base_index) return tied.profiles[static_cast<std::size_t>(m.profile)];
    }
    return tied.profiles[static_cast<std::size_t>(base_index)];
}

const Profile* Sketch::profile_after(int made_by, int base_index) const {
    for (int i = 0; i <= moment; ++i) {
        const Moment& m = tied.moments[static_cast<std::size_t>(i)];
        if (m.act == made_by && m.base == base_index) {
            return &tied.profiles[static_cast<std::size_t>(m.profile)];
        }
    }
    return nullptr;
}

const RecipeMaterial* Sketch::material(int index) const {
    const auto& materials = pattern.recipe.materials;
    if (index < 0 || index >= static_cast<int>(materials.size())) return nullptr;
    return &materials[static_cast<std::size_t>(index)];
}

MaterialKind Sketch::kind(int index) const {
    const RecipeMaterial* m = material(index);
    return m ? m->kind : MaterialKind::other;
}

Colour Sketch::colour(int index) const {
    const RecipeMaterial* m = material(index);
    return m ? colour_of(*m) : linear_colour(0x8A8274);
}

std::string_view Sketch::role(int part) const {
    if (part < 0) return {};
    return pattern.recipe.parts[static_cast<std::size_t>(part)].role;
}

std::string_view Sketch::side(int part) const {
    if (part < 0) return {};
    return pattern.recipe.parts[static_cast<std::size_t>(part)].side;
}

bool Sketch::does(int step, int part, Op op) const {
    for (const Pattern::LinkedAction& a : pattern.actions) {
        if (a.step != step || a.part != part) continue;
        const auto& actions = pattern.recipe.steps[static_cast<std::size_t>(step)].actions;
        if (actions[static_cast<std::size_t>(a.index)].op == op) return true;
    }
    return false;
}

float Sketch::given_mm(const Amount& amount, float typical_mm) const {
    if (!amount.given()) return typical_mm;
    const Reading& r = amount.at(tied.size);
    const bool number =
        r.kind == AmountKind::exact || r.kind == AmountKind::range || r.kind == AmountKind::about;
    return number && r.unit == Unit::length ? static_cast<float>(r.value * 1e3) : typical_mm;
}

int Sketch::sides(float radius_mm, int least) const {
    const float radius_px = pixels(radius_mm);
    if (radius_px < 0.5F) return least;
    const float n = std::numbers::pi_v<float> / std::acos(1.0F - 0.25F / radius_px);
    return std::clamp(static_cast<int>(std::ceil(n)), least, 48);
}

float Sketch::pixels(float length_mm) const {
    return length_mm * static_cast<float>(detail.pixels_per_mm);
}

float Sketch::visible(float thick_mm, float least_px) const {
    return std::max(thick_mm, least_px / static_cast<float>(detail.pixels_per_mm));
}

} // namespace wrapwright
