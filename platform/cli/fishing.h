#pragma once
// Where and how a fly is fished, as options of several commands say it.

#include "core/water/in_water.h"
#include "platform/cli/commands.h"
#include "platform/cli/water_json.h"

namespace wrapwright::cli {

/// The texts of the options, before they are read.
struct FishingOptions {
    std::string temperature, tippet, current, depth, drift, bed, profile, air, weighed, bead, jar;
    std::vector<std::string> timed;
    bool sea = false, from_rest = false;
};

/// Adds --temp, --sea, --tippet, --current, --depth, --drift, --bed, --profile, --air, --weighed, --bead,
/// --timed, --jar and --from-rest.
void add_fishing(const Command& command, FishingOptions& options);

/// The options as numbers; what is not said stays as Fishing has it.
[[nodiscard]] Fishing fishing_of(const FishingOptions& options);

/// The recipe's beads as they were weighed, in its numbers and tied anew, where --bead says so.
void weigh_beads(const FishingOptions& options, const Loaded& loaded, Fly& fly);

/// A mass or speed that an option says: "180mg", "0.4m/s".
[[nodiscard]] Mass mass_of(const std::string& option, const std::string& text);
[[nodiscard]] Speed speed_of(const std::string& option, const std::string& text);
[[nodiscard]] Length length_of(const std::string& option, const std::string& text);

/// The value of a result, or the end of the command with what its option cannot be.
template <class T>
T or_refuse_option(Result<T> result) {
    if (!result.ok()) {
        const Error& error = result.error();
        const std::string key = error.place.key.empty() ? "" : "--" + error.place.key + ": ";
        refuse_usage(key + error.message, error.remedy);
    }
    return std::move(result).value();
}

} // namespace wrapwright::cli
