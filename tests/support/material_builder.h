#pragma once
// Materials for tests.

#include "core/material/material.h"

#include <array>
#include <doctest/doctest.h>

namespace wrapwright::test {

inline constexpr int material_kinds = static_cast<int>(MaterialKind::other) + 1;

inline MaterialFacts facts_of(MaterialKind kind, Substance substance = Substance::unknown) {
    MaterialFacts facts;
    facts.kind = kind;
    facts.substance = substance;
    return facts;
}

inline Stuff complete(const MaterialFacts& facts, double gape_mm = 4.3) {
    const Result<Stuff> stuff = complete_material(facts, millimetres(gape_mm));
    REQUIRE(stuff.ok());
    return stuff.value();
}

} // namespace wrapwright::test
