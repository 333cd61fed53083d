#pragma once
// The hook as measured: millimetres first, the number on the packet second.

#include "core/result.h"
#include "core/units/estimate.h"
#include "core/units/hook_size.h"

#include <optional>
#include <string>
#include <string_view>

namespace wrapwright {

enum class HookShape : unsigned char {
    straight, ///< a straight shank with a round bend
    curved,   ///< the shank itself is an arc (grub, scud)
    jig,      ///< an eye leg, a sharp bend, then a straight shank; rides point up as a rule
};

/// The columns of the table of typical hooks: what a label most likely is, when nothing is
/// measured.
enum class HookFamily : unsigned char { dry, wet, long_shank, streamer, curved, jig };

std::string_view name(HookShape shape);
std::string_view name(HookFamily family);

/// One hook, in the numbers that everything else is computed from.
///
/// Units   all lengths along or across the wire's centreline as the member says
/// Valid   every length > 0 except barb_height, jig_leg and jig_radius, which may be 0
struct Hook {
    std::string label;              ///< as written, such as "#14 1XL"; never computed from
    std::optional<HookSize> size{}; ///< the number on the packet, where there is one
    HookShape shape = HookShape::straight;
    HookFamily family = HookFamily::wet;
    Estimate<Length> shank;        ///< from the back of the eye (jig: of the jig bend) to the bend
    Estimate<Length> gape;         ///< shank to point, between centrelines
    Estimate<Length> wire;         ///< wire diameter
    Estimate<Length> eye_length;   ///< along the shank, outside
    Estimate<Length> eye_diameter; ///< of the ring, outside
    Estimate<Length> barb_height;  ///< above the wire's surface; 0 when barbless or pressed flat
    Estimate<Length> jig_leg;      ///< jig: from the back of the eye to the jig bend
    Estimate<Length> jig_radius;   ///< jig: radius of the centreline in the jig bend
    Estimate<Angle> jig_angle;     ///< jig: eye leg to shank
    Angle eye_angle; ///< of the ring to the wire behind it: up positive, down negative
    friend bool operator==(const Hook&, const Hook&) = default;
};

/// The typical hook of that family and number, each value with its spread and origin "typical".
///
/// Error   sizes between the rows of the table are interpolated geometrically
/// Fails   out_of_range for a number outside the family's column, naming its ends
/// Source  anchors published, the rest common practice: see typical.cpp beside each column
[[nodiscard]] Result<Hook> typical_hook(HookFamily family, HookSize size);

/// The hook with every value that was not given filled in from the given ones.
///
/// Given is whatever is not 0, and a 0 that was measured or stated (a barbless hook). A shank alone
/// gives a typical gape of the family, and so on; what is given is never changed. Shape and family
/// that disagree: a curved or jig one wins over the other's default.
/// Fails   out_of_range, naming the value, when a given one is negative, not finite or absurd, or
///         when nothing tells how large the hook is
[[nodiscard]] Result<Hook> complete_hook(Hook measured);

/// The mass of the bare hook from its developed length of wire.
///
/// Error   +-25 % when measured: forging, eye and point are not modelled; wider when typical
/// Source  developed length = the centreline behind the eye (straight: shank + 2.27 gape) + 8.2
///         wire for the eye's loop (common practice, no source); carbon-steel wire 7.85 g/cm3,
///         Morton & Hearle, table 5.2
[[nodiscard]] Estimate<Mass> hook_mass(const Hook& hook);

} // namespace wrapwright
