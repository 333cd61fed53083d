// The bare base: hook with eye, barb and needle point; shank, tube and needle as well.

#include "core/geometry/fly/lathe.h"
#include "core/geometry/fly/turned.h"

namespace wrapwright {

namespace {

constexpr float pi = std::numbers::pi_v<float>;
/// Eyes are drawn down before they are bent. Common practice, no source.
constexpr float eye_share = 0.84F;

/// How the wire of a base ends at the rear.
enum class RearEnd { point, loop, needle };

RearEnd rear_end(const Sketch& sketch, int base) {
    const auto& bases = sketch.pattern.recipe.bases;
    if (base >= static_cast<int>(bases.size())) return RearEnd::point;
    const std::string& kind = bases[static_cast<std::size_t>(base)].kind;
    if (kind == "shank") return RearEnd::loop;
    if (kind == "needle") return RearEnd::needle;
    return RearEnd::point;
}

/// Diameter of the wire at a place: full, then drawn to a needle over the last few diameters.
float wire_at(float wire, float to_tip, float taper) {
    if (to_tip >= taper) return wire;
    const float u = std::max(to_tip / taper, 0.0F);
    return wire * (0.03F + 0.97F * std::pow(u, 0.72F));
}

/// A ring of wire round `centre`, whose hole runs along `normal`.
void add_eye(Mesh& mesh, const Sketch& sketch, const glm::vec3& centre, const glm::vec3& forward,
             const glm::vec3& normal, float outside, float wire) {
    const float minor = 0.5F * eye_share * wire;
    const float major = std::max(0.5F * outside - minor, 1.15F * minor);
    std::array<Corner, 20> circle{};
    for (std::size_t i = 0; i < circle.size(); ++i) {
        const float angle = 2.0F * pi * static_cast<float>(i) / static_cast<float>(circle.size());
        circle[i] = {-minor * std::cos(angle), major + minor * std::sin(angle), false};
    }
    add_turned(mesh, {centre, normal, forward, glm::cross(normal, forward)}, circle,
               std::max(20, sketch.sides(0.5F * outside)));
}

/// The sliver that is cut up from the wire on the side towards the shank.
void add_barb(Mesh& mesh, const BasePlace& base, float wire, float height, float taper) {
    const BaseRun& run = *base.run;
    const float length = std::max(3.2F * height, 1.1F * wire);
    const Length root = run.line.stations().tip - millimetres(static_cast<double>(taper * 0.92F));
    std::array<PathPoint, 5> path{};
    for (std::size_t i = 0; i < path.size(); ++i) {
        // From its root near the point back towards the bend, rising off the wire.
        const float u = static_cast<float>(i) / 4.0F;
        const WireFrame f = base.frame(root - millimetres(static_cast<double>(u * length)));
        const float lift = 0.31F * wire + u * u * (height + 0.10F * wire);
        path[i] = {f.origin - f.up * lift, wire * (0.31F - 0.28F * u)};
    }
    append_path(mesh, path, ellipse_section(6, 0.55, 1.0), -base.frame(root).up);
}

/// The wire from inside the eye ring to its end.
void add_wire(Sketch& sketch, Mesh& mesh, const BasePlace& base, Length end, bool pointed,
              float taper) {
    const float wire = mm(base.run->hook.wire.value);
    const float start = -0.2F * wire;
    const float last = mm(end);
    std::array<PathPoint, 640> path{};
    // A fifth of the wire turns any bend finely enough; the needle's end asks for more.
    const float least = std::max(0.2F * wire, (last - start) / 500.0F);
    std::size_t count = 0;
    for (float at = start; count < path.size();) {
        const WireFrame f = base.frame(millimetres(static_cast<double>(at)));
        // Drawn down to the ring in front, to the needle behind.
        const float drawn =
            eye_share + (1.0F - eye_share) * std::clamp(at / (1.6F * wire), 0.0F, 1.0F);
        path[count++] = {f.origin,
                         0.5F * drawn * (pointed ? wire_at(wire, last - at, taper) : wire)};
        const float left = last - at;
        if (left <= 0.0F) break;
        const float step = left < taper && pointed ? std::max(0.12F * left, 0.05F * least) : least;
        at = left <= 1.2F * step ? last : at + step;
    }
    append_path(mesh, std::span(path).first(count), ellipse_section(sketch.sides(0.5F * wire, 8)),
                {0.0F, 0.0F, 1.0F});
}

} // namespace

void draw_hook(Sketch& sketch, int index) {
    const BasePlace& base = sketch.base(index);
    const BaseRun& run = *base.run;
    const float wire = mm(run.hook.wire.value);
    const RearEnd rear = rear_end(sketch, index);
    const Stations& at = run.line.stations();
    const auto& bases = sketch.pattern.recipe.bases;
    const bool tube = index < static_cast<int>(bases.size()) &&
                      bases[static_cast<std::size_t>(index)].kind == "tube";
    if (tube) {
        const int piece = sketch.open(Look::film, linear_colour(0xD8D8D0), none, none, 0.7F);
        add_lathe(sketch.mesh(piece), base, at.front, at.bend, 4, sketch.sides(wire, 12),
                  [&](float, float) { return 0.5F * wire; });
        return;
    }
    const int piece = sketch.open(Look::steel, linear_colour(0x6A6560), none, none);
    Mesh& mesh = sketch.mesh(piece);

    const Length end = rear == RearEnd::point ? at.tip : at.bend;
    const float taper = rear == RearEnd::needle ? 6.0F * wire : 4.6F * wire;
    add_wire(sketch, mesh, base, end, rear != RearEnd::loop, taper);

    const WireFrame front = base.frame(Length{});
    const glm::vec2 centre = run.line.eye_centre() * 1e3;
    const glm::vec3 eye{centre.x + base.shift, centre.y, 0.0F};
    glm::vec3 forward = eye - front.origin;
    forward = glm::length(forward) > 1e-6F ? glm::normalize(forward) : -front.along;
    const glm::vec3 hole = glm::cross(front.out, forward);
    add_eye(mesh, sketch, eye, forward, hole, mm(run.hook.eye_diameter.value), wire);

    if (rear == RearEnd::loop) {
        const WireFrame f = base.frame(at.bend);
        const float outside = mm(run.hook.eye_diameter.value);
        add_eye(mesh, sketch, f.origin + f.along * (0.5F * outside), f.along, f.up, outside, wire);
    }
    const float barb = mm(run.hook.barb_height.value);
    if (rear == RearEnd::point && barb > 0.0F) add_barb(mesh, base, wire, barb, taper);
}

} // namespace wrapwright
