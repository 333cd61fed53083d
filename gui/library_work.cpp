#include "gui/library_work.h"

#include "core/units/size_text.h"

namespace wrapwright {

std::optional<Mass> asked_weight(std::string_view text, bool inches) {
    const Result<WrittenMass> read =
        parse_mass(text, inches ? MassUnit::grain : MassUnit::milligram);
    if (!read.ok()) return std::nullopt;
    return read.value().quantity;
}

} // namespace wrapwright
