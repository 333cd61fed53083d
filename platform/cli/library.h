#pragma once
// The person's library, for the commands that read or change it.

#include "platform/cli/failure.h"
#include "platform/store/store.h"

#include <filesystem>
#include <string>
#include <utility>

namespace wrapwright::cli {

/// The folder that was said, else the usual one.
[[nodiscard]] std::filesystem::path data_folder(const std::string& said);

/// The value of a result of the store, or the end of the command.
template <class T>
T or_give_up(Result<T> result) {
    if (!result.ok()) {
        throw Failure{ExitCode::outside,
                      printable(result.error().message + "; " + result.error().remedy)};
    }
    return std::move(result).value();
}

/// The store of a folder; one that has none gets it only where `may_make` says so.
[[nodiscard]] Store open_there(const std::filesystem::path& folder, bool may_make);

/// Seconds since 1970.
[[nodiscard]] std::int64_t now_seconds();

} // namespace wrapwright::cli
