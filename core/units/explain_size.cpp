#include "core/units/explain_size.h"

#include "core/units/explain_parts.h"
#include "core/units/number_text.h"
#include "core/units/scan.h"
#include "core/units/thread_size.h"

#include <algorithm>
#include <cmath>

namespace wrapwright {

namespace {

using detail::explain;
using detail::take_word;

constexpr std::string_view examples =
    "write a size, such as 7/64 in, #14, 2/0, 70 den, AWG 34 or 250 mg";

/// What the text itself says it is, by a word in front.
enum class Said : unsigned char { nothing, hook, thread };

Said take_said(std::string_view& rest) {
    if (take_word(rest, "thread")) return Said::thread;
    bool hook = false;
    for (const std::string_view word : {"hooks", "hook"}) hook |= take_word(rest, word);
    for (const std::string_view word : {"sizes", "size"}) take_word(rest, word);
    hook |= take_word(rest, "#");
    return hook ? Said::hook : Said::nothing;
}

void explain_measures(SizeExplanation& out, std::string_view rest,
                      const Result<WrittenLength>& length) {
    if (length.ok()) explain(out, "length", length.value().number, length.value().unit);
    const Result<WrittenMass> mass = parse_mass(rest);
    if (mass.ok()) explain(out, "mass", mass.value().number, mass.value().unit);
    const Result<WrittenLinearDensity> linear = parse_linear_density(rest);
    if (linear.ok()) explain(out, "thread weight", linear.value().number, linear.value().unit);
}

/// `whole` is the text with the word in front, `rest` without it.
void explain_labels(SizeExplanation& out, std::string_view whole, std::string_view rest,
                    Said said) {
    bool large_hook = false;
    if (said != Said::thread) {
        const Result<WrittenHookSizes> hooks = parse_hook_sizes(whole);
        if (hooks.ok()) {
            detail::explain_hooks(out, hooks.value());
            large_hook = hooks.value().sizes.front().number <= 0;
        } else {
            out.error = hooks.error();
            if (!rest.empty() && rest.find_first_not_of('0') == std::string_view::npos) {
                detail::explain_old_hook(out, rest);
            }
        }
    }
    if (said == Said::hook) return;
    const Result<ThreadSize> thread = parse_thread_size(rest);
    if (!thread.ok()) {
        if (said == Said::thread) out.error = thread.error();
        return;
    }
    if (!thread.value().aughts) {
        out.meanings.push_back(
            {"thread label", {{"as thread", "a letter size: heavy thread, a label only"}}});
        return;
    }
    detail::explain_aught(out, *thread.value().aughts);
    if (large_hook) {
        out.warnings.push_back(std::string(rest) + " is a large hook or a thread that counts "
                                                   "zeros: say which");
    }
}

/// A number that carries no unit: what it is in each unit that such a label is usually in.
void explain_bare(SizeExplanation& out, std::string_view rest) {
    const Result<double> read = read_number(rest);
    if (!read.ok() || read.value() <= 0.0 || read.value() > 1e6) return;
    const double number = read.value();
    const bool is_whole = number == std::floor(number); // exact: floor of a double is a double
    const bool is_fraction = rest.find('/') != std::string_view::npos;
    const bool inches_first = is_fraction || number < 0.5;
    const std::size_t before = out.meanings.size();
    if (is_whole) {
        if (number >= 20.0 && number <= 44.0) {
            explain(out, "wire, if a gauge is meant", number, LengthUnit::awg);
        }
        if (number >= 20.0 && number <= 1000.0) {
            explain(out, "thread, if denier is meant", number, LinearDensityUnit::denier);
        }
    } else {
        if (!inches_first) {
            explain(out, "length, if millimetres are meant", number, LengthUnit::millimetre);
        }
        explain(out, "length, if inches are meant", number, LengthUnit::inch);
        if (is_fraction && number <= 1.0 / 16.0) {
            explain(out, "weighted eyes or head, if ounces are meant", number, MassUnit::ounce);
        }
    }
    if (out.meanings.size() == before) return;
    out.warnings.push_back("no unit is written: in a recipe write it out, such as " +
                           std::string(rest) +
                           (is_whole ? " den" : (inches_first ? " in" : " mm")));
}

/// Why a text has no meaning at all: the refusal of what it was most likely meant as.
Error nothing_meant(std::string_view rest, const Error& as_label, const Error& as_length) {
    if (std::none_of(rest.begin(), rest.end(), detail::is_digit)) {
        return {ErrorCode::malformed, detail::quoted(rest) + " is no size",
                std::string(examples) + "; a recipe keeps a word as it is"};
    }
    if (as_length.code == ErrorCode::out_of_range || as_length.code == ErrorCode::too_large) {
        return as_length;
    }
    const Result<LeadingNumber> number = leading_number(rest);
    if (!number.ok()) return as_label;
    const std::string_view after = detail::trimmed(rest.substr(number.value().length));
    if (!after.empty() && detail::is_letter(after.front())) {
        return {ErrorCode::unknown_unit, detail::quoted(after) + " is no unit",
                "write mm, cm, m, in, thou, ft, yd, AWG; mg, g, gr, oz, lb; den, tex or dtex"};
    }
    if (after.starts_with(',') && detail::is_letter(rest.back())) return as_length;
    return as_label;
}

} // namespace

SizeExplanation explain_size(std::string_view text) {
    SizeExplanation out;
    out.text = std::string(text);
    if (text.size() > 200) {
        out.error = Error{ErrorCode::too_large, "a size of more than 200 bytes",
                          "write one size, one list or one range"};
        return out;
    }
    std::string_view whole = detail::trimmed(text);
    take_word(whole, "old");
    std::string_view rest = whole;
    const Said said = take_said(rest);
    if (rest.empty()) {
        out.error = Error{ErrorCode::malformed, "no size is written", std::string(examples)};
        return out;
    }
    const Result<WrittenLength> length = parse_length(rest);
    explain_measures(out, rest, length);
    if (!out.meanings.empty()) return out;

    explain_labels(out, whole, rest, said);
    if (said == Said::nothing) {
        explain_bare(out, rest);
        if (out.meanings.empty()) out.error = nothing_meant(rest, *out.error, length.error());
    }
    if (!out.meanings.empty() && out.error && out.error->code != ErrorCode::ambiguous) {
        out.error.reset();
    }
    return out;
}

std::vector<std::string> lines(const SizeExplanation& explanation) {
    std::vector<std::string> out{explanation.text};
    std::size_t width = 0;
    for (const SizeMeaning& meaning : explanation.meanings) {
        for (const SizeFact& fact : meaning.facts) width = std::max(width, fact.name.size());
    }
    for (const SizeMeaning& meaning : explanation.meanings) {
        out.push_back("  " + meaning.what);
        for (const SizeFact& fact : meaning.facts) {
            std::string line = "    " + fact.name;
            line.append(width + 2 - fact.name.size(), ' ');
            out.push_back(line + fact.text);
        }
    }
    for (const std::string& warning : explanation.warnings) out.push_back("  note: " + warning);
    if (explanation.error) {
        out.push_back("  not settled: " + explanation.error->message);
        out.push_back("  remedy: " + explanation.error->remedy);
    }
    return out;
}

} // namespace wrapwright
