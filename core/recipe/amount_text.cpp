#include "core/recipe/amount_scan.h"
#include "core/units/scan.h"
#include "core/units/thread_size.h"

namespace wrapwright {

namespace {

constexpr std::string_view remedy =
    "write a number with its unit (6 turns, 2.8 mm, .015 in, 70 den), a range, or a share (half "
    "the shank); or keep the words and add the number beside them: {\"text\": ..., \"is\": ...}";

/// Aught numbers of thread and X numbers of tippet: sizes that no number can be computed from.
bool is_label(std::string_view text) {
    if (!detail::has_digit(text)) return false;
    const std::size_t digits = text.find_first_not_of("0123456789");
    if (digits != std::string_view::npos && detail::lowered(text.substr(digits)) == "x") {
        return true;
    }
    const bool zeros = text.find_first_not_of('0') == std::string_view::npos && text.size() > 1;
    return (zeros || text.ends_with("/0")) && parse_thread_size(text).ok();
}

bool is_no_number(std::string_view text) {
    using detail::take_any;
    return take_any(text, {"nan", "infinity", "inf", "-nan", "-infinity", "-inf"});
}

/// What may follow an amount without changing it: a remark, what it is made of.
bool is_remark(std::string_view rest, const Reading& reading) {
    if (detail::has_digit(rest)) return false;
    if (rest.starts_with(',') || rest.starts_with('(') || rest.starts_with(';')) return true;
    return reading.basis == Basis::none && detail::take_any(rest, {"of"});
}

} // namespace

Result<Reading> read_amount(std::string_view text, const std::vector<std::string>& parts) {
    const std::string_view whole = detail::trimmed(text);
    Reading word;
    if (whole.empty()) return word;
    word.kind = AmountKind::word;
    if (is_label(whole)) return word;
    if (is_no_number(whole)) {
        return Error{ErrorCode::malformed, detail::quoted(whole) + " is no number",
                     std::string(remedy)};
    }
    std::string_view rest = whole;
    const Result<std::optional<Reading>> taken = detail::take_amount(rest, parts);
    if (!taken.ok()) {
        Error error = taken.error();
        error.message += ", in " + detail::quoted(whole);
        return error;
    }
    const std::optional<Reading>& reading = taken.value();
    if (reading && (rest.empty() || is_remark(rest, *reading))) return *reading;
    if (!detail::has_digit(whole)) return word;
    if (!reading) {
        return Error{ErrorCode::malformed, "no amount can be read from " + detail::quoted(whole),
                     std::string(remedy)};
    }
    if (rest.starts_with(',')) return detail::decimal_comma(whole);
    return Error{ErrorCode::unknown_unit,
                 detail::quoted(rest) + " is no unit, in " + detail::quoted(whole),
                 std::string(remedy)};
}

} // namespace wrapwright
