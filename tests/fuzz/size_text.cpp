// Fuzz target: every reader of size text on any bytes, and what must hold of what they read.

#include "core/units/size_text.h"
#include "core/assert.h"
#include "core/units/explain_size.h"
#include "core/units/hook_size.h"
#include "core/units/number_text.h"
#include "core/units/thread_size.h"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

using namespace wrapwright;

namespace {

void check_error(const Error& error) {
    WW_ASSERT(!error.message.empty() && !error.remedy.empty());
    for (const char c : error.message) WW_ASSERT(c != '\n' && c != '\r'); // one line
}

void check_number(std::string_view text) {
    const Result<LeadingNumber> number = leading_number(text);
    if (!number.ok()) return check_error(number.error());
    const auto [value, length] = number.value();
    WW_ASSERT(length > 0 && length <= text.size() && std::isfinite(value));
    WW_ASSERT(read_number(text.substr(0, length)).value() == value);
    const Result<double> back = read_number(write_number(value));
    WW_ASSERT(back.ok() && back.value() == value);
    const Result<double> whole = read_number(text);
    if (!whole.ok()) check_error(whole.error());
}

/// What is read comes back from its written form, as the same number in the same unit.
template <class Parse>
void check_size(std::string_view text, Parse parse) {
    const auto written = parse(text);
    if (!written.ok()) return check_error(written.error());
    WW_ASSERT(written.value().text == text);
    WW_ASSERT(std::isfinite(written.value().quantity.si) && written.value().quantity.si >= 0.0);
    const auto again = parse(write_size(written.value().number, written.value().unit));
    WW_ASSERT(again.ok());
    WW_ASSERT(again.value().number == written.value().number);
    WW_ASSERT(again.value().unit == written.value().unit);
    WW_ASSERT(again.value().quantity == written.value().quantity);
}

void check_hooks(std::string_view text) {
    const Result<WrittenHookSize> one = parse_hook_size(text);
    const Result<WrittenHookSizes> many = parse_hook_sizes(text);
    if (!one.ok()) check_error(one.error());
    if (!many.ok()) return check_error(many.error());
    WW_ASSERT(!many.value().sizes.empty() && many.value().text == text);
    if (one.ok()) WW_ASSERT(many.value().sizes == std::vector{one.value().size});
    std::string list;
    for (const HookSize size : many.value().sizes) {
        WW_ASSERT(size >= largest_hook && size <= smallest_hook);
        if (!list.empty()) list += ", ";
        list += write_hook_size(size);
    }
    WW_ASSERT(parse_hook_sizes(list).value().sizes == many.value().sizes);
}

void check_thread(std::string_view text) {
    const Result<ThreadSize> thread = parse_thread_size(text);
    if (!thread.ok()) return check_error(thread.error());
    WW_ASSERT(thread.value().text == text);
    if (!thread.value().aughts) return;
    const std::string label = std::to_string(*thread.value().aughts) + "/0";
    WW_ASSERT(compare(thread.value(), parse_thread_size(label).value()) == ThreadOrder::same_label);
}

void check_explanation(std::string_view text) {
    const SizeExplanation explanation = explain_size(text);
    WW_ASSERT(explanation.text == text);
    WW_ASSERT(!explanation.meanings.empty() || explanation.error);
    if (explanation.error) check_error(*explanation.error);
    for (const SizeMeaning& meaning : explanation.meanings) {
        WW_ASSERT(!meaning.what.empty() && !meaning.facts.empty());
        for (const SizeFact& fact : meaning.facts) {
            WW_ASSERT(!fact.name.empty() && !fact.text.empty());
            WW_ASSERT(!fact.number || std::isfinite(*fact.number));
        }
    }
    WW_ASSERT(lines(explanation).size() > 1);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    check_number(text);
    check_size(text, [](std::string_view t) { return parse_length(t); });
    check_size(text, [](std::string_view t) { return parse_length(t, LengthUnit::inch); });
    check_size(text, [](std::string_view t) { return parse_mass(t); });
    check_size(text, [](std::string_view t) { return parse_linear_density(t); });
    check_hooks(text);
    check_thread(text);
    check_explanation(text);
    return 0;
}
