#pragma once
// What a fly takes, and what a batch of flies takes: lengths, counts and masses from the record.
//
// Tied::takes is the tally by step already; here it is added up by part and over flies. These are
// net amounts: what is on the fly, with the tags that tying needs. Waste and whole packs are
// reckoned on top of a Draw, by whoever knows the stock.

#include "core/tying/record.h"

#include <vector>

namespace wrapwright {

/// Whether a material comes off a spool, so that its length counts and not its pieces.
[[nodiscard]] bool comes_by_length(MaterialKind kind);

/// What one part took of one material over all steps.
struct TallyLine {
    int part = none;     ///< none: a hook or a joint
    int material = none; ///< none: a hook
    int base = none;     ///< of a hook
    double count = 0.0;  ///< pieces; 0 for what comes by length
    double turns = 0.0;
    Length length{}; ///< of the strand; of one piece where nothing is wound
    Estimate<Mass> mass{};
};

/// A line for each part and material that was drawn: hooks first, then in the recipe's order.
///
/// Error   masses of one line add whole, because one strand's errors go together
[[nodiscard]] std::vector<TallyLine> tally_by_part(const Resolved& resolved, const Tied& tied);

/// One size of a batch: what one fly was tied from, its record, and how many of it.
struct BatchSize {
    const Resolved* resolved = nullptr;
    const Tied* tied = nullptr;
    int flies = 0;
};

/// What a batch draws of one material in one size: beads of 2.8 mm are not beads of 3.3 mm.
struct Draw {
    int material = none; ///< none: hooks
    int base = none;     ///< of hooks
    HookSize hook{};     ///< of hooks
    Length measure{};    ///< bead or strand diameter, strand width, barb length; 0: sizes are alike
    double count = 0.0;  ///< pieces; 0 for what comes by length
    Length length{};     ///< of all strands; of the longest piece where nothing is wound
    bool wound = false;  ///< `length` is of strand, whatever the count
    Estimate<Mass> mass{};
};

/// The draws of a whole batch, hooks first, then in the order of the materials and by measure.
///
/// Error   the flies of one batch share their doubt, so that their intervals add up whole
[[nodiscard]] std::vector<Draw> tally_batch(const std::vector<BatchSize>& batch);

/// The mass of all flies of a batch.
[[nodiscard]] Estimate<Mass> batch_mass(const std::vector<BatchSize>& batch);

} // namespace wrapwright
