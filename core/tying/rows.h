#pragma once
// The inner loops of a winding, over the cells of its stretch: plain rows of numbers in, one row out.
//
// A run of a recipe spends most of its time here. Each loop does one thing to one row, so that several
// cells are taken at a time; where the processor has wide registers they are used, with the same bits
// in the result.
// Units   m, turns per m
// Valid   n >= 1; rows of at least n numbers that do not overlap

namespace wrapwright::rows {

/// 1 + tan^2 of the core's slope in each cell, from its neighbours within the stretch: what lies beyond
/// it (a bead, a step) is not under the strand.
void lengthening(const double* diameter, int n, double cell, double* out);

/// Touching turns per metre in each cell.
void touching_density(const double* diameter, const double* lengthening, int n, double width,
                      double height, double* out);

/// Length of strand per metre of core, for turns that are even: `rise` is what the diameter of the
/// strand's middle has over the core's, `density` the turns per metre.
void even_lengths(const double* diameter, const double* lengthening, int n, double rise,
                  double density, double* out);

/// The same for turns of any density on a core that grows by `grown`; `least` is the least rise.
void paced_lengths(const double* diameter, const double* lengthening, const double* density,
                   const double* grown, int n, double least, double* out);

} // namespace wrapwright::rows
