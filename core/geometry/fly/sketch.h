#pragma once
// What every part of the drawing shares: places on the bases, the moment, the pieces being filled.

#include "core/geometry/fly/base_shifts.h"
#include "core/geometry/fly/build.h"
#include "core/geometry/fly/colour.h"
#include "core/geometry/fly/fibre.h"

#include <array>
#include <glm/vec3.hpp>

namespace wrapwright {

/// A point of the wire in model space with the directions there, all unit vectors.
struct WireFrame {
    glm::vec3 origin{}; ///< mm
    glm::vec3 along{};  ///< tailward along the wire
    glm::vec3 up{};     ///< away from the point, across the wire
    glm::vec3 out{};    ///< away from a right-hander

    /// Straight out from the wire at an angle round it: 0 is up, growing towards `out`.
    [[nodiscard]] glm::vec3 radial(float angle) const;
    /// The direction in which angles grow there.
    [[nodiscard]] glm::vec3 round(float angle) const;
};

/// One base in model space.
struct BasePlace {
    const BaseRun* run = nullptr;
    float shift = 0.0F; ///< of its shank front along x, mm
    bool drawn = true;

    [[nodiscard]] WireFrame frame(Length at) const;
};

/// Pieces of one colour in a few shades, so that fibres stand apart.
class Sketch;
struct Shades {
    static constexpr int count = 3;
    std::array<int, count> piece{};
    /// The mesh that fibre i goes to: each in turn.
    [[nodiscard]] Mesh& mesh(Sketch& sketch, int i) const;
};

/// The drawing under way.
class Sketch {
  public:
    Sketch(const Pattern& recipe, const Tied& record, int at_moment, const FlyDetail& wanted,
           FlyModel& out);

    const Pattern& pattern;
    const Tied& tied;
    const FlyDetail& detail;
    int moment = -1; ///< index into tied.moments; -1 where there are none
    const FibreSections sections{};

    /// Opens a piece and returns its number; pieces opened later do not disturb it.
    int open(Look look, const Colour& colour, int part, int act, float opacity = 1.0F);
    /// Opens three pieces of one colour: darker, as it is, lighter.
    Shades open_shades(Look look, const Colour& colour, int part, int act, float spread = 0.16F);
    [[nodiscard]] Mesh& mesh(int piece);
    /// Drops what the model held beyond the pieces opened, and empty pieces; sets the bounds.
    void close();

    [[nodiscard]] const BasePlace& base(int index) const;
    [[nodiscard]] int base_count() const { return base_count_; }
    /// The counts up to which things exist now.
    [[nodiscard]] int windings() const;
    [[nodiscard]] int placed() const;
    [[nodiscard]] int strands() const;
    /// The act that this moment is after.
    [[nodiscard]] int act() const;
    [[nodiscard]] bool there(const Placed& placed) const;
    /// The base's diameters now, and right after an act (its own profile when it made none).
    [[nodiscard]] const Profile& profile_now(int base) const;
    [[nodiscard]] const Profile* profile_after(int act, int base) const;

    [[nodiscard]] const RecipeMaterial* material(int index) const;
    [[nodiscard]] MaterialKind kind(int material) const;
    [[nodiscard]] Colour colour(int material) const;
    /// What the recipe calls a part, and where it says that it goes.
    [[nodiscard]] std::string_view role(int part) const;
    [[nodiscard]] std::string_view side(int part) const;
    /// Whether the step of an act does that to a part.
    [[nodiscard]] bool does(int step, int part, Op op) const;
    /// A length that the material gives at this size, else the typical one.
    [[nodiscard]] float given_mm(const Amount& amount, float typical_mm) const;

    /// Sides of a round thing, and steps of an arc, that keep within a quarter of a pixel.
    [[nodiscard]] int sides(float radius_mm, int least = 5) const;
    [[nodiscard]] float pixels(float mm) const;
    /// A fibre's thickness, widened to what the picture can show.
    [[nodiscard]] float visible(float thick_mm, float least_px = 0.9F) const;

    /// From here on what is opened is gear: vise, bobbin, loose ends. Bounds leave it out.
    void begin_gear() { gear_ = static_cast<int>(used_); }

  private:
    void lay_bases();
    void choose_drawn();

    FlyModel& out_;
    std::size_t used_ = 0;
    int gear_ = -1;
    int base_count_ = 0;
    std::array<BasePlace, most_bases> bases_{};
};

inline Mesh& Shades::mesh(Sketch& sketch, int i) const {
    return sketch.mesh(piece[static_cast<std::size_t>(i % count)]);
}

/// A length in model millimetres.
[[nodiscard]] inline float mm(Length x) { return static_cast<float>(in_millimetres(x)); }

/// An angle round the hook as the meshes take it.
[[nodiscard]] inline float rad(Angle x) { return static_cast<float>(x.si); }

// The subjects, in the order of drawing. Each draws what the sketch's moment holds of its kind.
void draw_hook(Sketch& sketch, int base);
void draw_vise(Sketch& sketch, int base);
void draw_bead(Sketch& sketch, const Placed& placed);
void draw_butt(Sketch& sketch, const Placed& placed);
void draw_winding(Sketch& sketch, const Winding& winding);
void draw_fur(Sketch& sketch, const Winding& winding);
void draw_flue(Sketch& sketch, const Winding& winding);
void draw_bundle(Sketch& sketch, const Placed& placed);
void draw_hair(Sketch& sketch, const Placed& placed);
void draw_barbs(Sketch& sketch, const Placed& placed);
void draw_clump(Sketch& sketch, const Placed& placed);
void draw_slips(Sketch& sketch, const Placed& placed);
void draw_case(Sketch& sketch, const Placed& placed);
void draw_coat(Sketch& sketch, const Placed& placed);
void draw_joint(Sketch& sketch, const Placed& placed);
void draw_loose_ends(Sketch& sketch);

} // namespace wrapwright
