#pragma once
// The closed-form loop that a run of the tying is measured against.

#include <vector>

namespace wrapwright::bench {

/// The stretch of one winding, in cells.
struct Stretch {
    int first = 0, last = 0;
    double turns = 0.0, height = 0.0, width = 0.0, linear = 0.0;
};

/// For each stretch and cell the length of its part of a turn and the growth; the mass of all.
double closed_form(const std::vector<Stretch>& stretches, double cell, double wire,
                   double* diameter);

} // namespace wrapwright::bench
