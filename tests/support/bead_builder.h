#pragma once
// Beads for tests, in millimetres.

#include "core/material/bead.h"

namespace wrapwright::test {

inline Bead drilled(double diameter_mm, double bore_mm) {
    Bead bead;
    bead.diameter = exactly(millimetres(diameter_mm));
    bead.bore = exactly(millimetres(bore_mm));
    return bead;
}

inline Bead countersunk(double diameter_mm, double bore_mm, double mouth_mm, Angle half) {
    Bead bead = drilled(diameter_mm, bore_mm);
    bead.hole = BeadHole::countersunk;
    bead.mouth = exactly(millimetres(mouth_mm));
    bead.countersink_half = half;
    return bead;
}

inline Bead slotted(double diameter_mm, double bore_mm, double slot_mm, double from_mm) {
    Bead bead = drilled(diameter_mm, bore_mm);
    bead.hole = BeadHole::slotted;
    bead.slot_width = exactly(millimetres(slot_mm));
    bead.slot_from = millimetres(from_mm);
    return bead;
}

} // namespace wrapwright::test
