#pragma once
// Lengths and masses as the screens write them: millimetres, and inches beside them on request.

#include "core/units/quantity.h"

#include <string>

namespace wrapwright {

/// "3.4 mm", "120 mm", "1.25 m"; with inches "3.4 mm (0.134 in)".
[[nodiscard]] std::string length_words(Length length, bool inches);

/// "2.7 mg", "1.35 g".
[[nodiscard]] std::string mass_words(Mass mass);

/// "0:45", "12:05", "1:02:10".
[[nodiscard]] std::string time_words(Duration time);

/// A count with at most one decimal: "7", "11.3".
[[nodiscard]] std::string turn_words(double turns);

} // namespace wrapwright
