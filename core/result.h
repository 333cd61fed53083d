#pragma once
// What a function returns that reads input: a value, or a refusal that names the place and the
// remedy. Our own bugs are assertions (core/assert.h), never a Result.

#include "core/assert.h"

#include <string>
#include <utility>
#include <variant>

namespace wrapwright {

enum class ErrorCode {
    not_found,       ///< the thing named does not exist
    malformed,       ///< the text is not in its form
    out_of_range,    ///< a number that its use cannot mean
    unknown_unit,    ///< a unit that does not measure this
    unknown_word,    ///< a name that stands for nothing here
    unknown_version, ///< written by a newer program
    duplicate,       ///< said twice
    cyclic,          ///< an amount that leads back to itself
    too_large,       ///< beyond a stated limit
    ambiguous,       ///< several meanings, and only the person can choose
};

/// Where in somebody's file an error is; line 0 and an empty key mean "nowhere in particular".
struct Place {
    int line = 0;
    std::string key; ///< path of keys, such as steps[3].actions[0].turns
    friend bool operator==(const Place&, const Place&) = default;
};

/// A refusal: what is wrong, where, and what mends it. Each text is one line.
struct Error {
    ErrorCode code = ErrorCode::malformed;
    std::string message; ///< what is wrong, with the offending text
    std::string remedy;  ///< what to write instead
    Place place{};
};

/// A value or the Error that stands in its place.
template <class T>
class [[nodiscard]] Result {
  public:
    Result(T value) : held_(std::in_place_index<0>, std::move(value)) {}
    Result(Error error) : held_(std::in_place_index<1>, std::move(error)) {}

    [[nodiscard]] bool ok() const { return held_.index() == 0; }
    [[nodiscard]] const T& value() const& {
        WW_ASSERT(ok());
        return *std::get_if<0>(&held_);
    }
    [[nodiscard]] T& value() & {
        WW_ASSERT(ok());
        return *std::get_if<0>(&held_);
    }
    [[nodiscard]] T&& value() && {
        WW_ASSERT(ok());
        return std::move(*std::get_if<0>(&held_));
    }
    [[nodiscard]] const Error& error() const {
        WW_ASSERT(!ok());
        return *std::get_if<1>(&held_);
    }

  private:
    std::variant<T, Error> held_;
};

} // namespace wrapwright
