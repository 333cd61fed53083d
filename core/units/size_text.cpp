#include "core/units/size_text.h"

#include "core/units/number_text.h"
#include "core/units/scan.h"

#include <cmath>

namespace wrapwright {

namespace {

using detail::quoted;

/// A unit's words, and its size as a whole-number ratio to the kind's base unit.
template <class U>
struct UnitRow {
    U unit;
    std::string_view symbol; ///< what is written
    std::string_view words;  ///< what is read, each between blanks
    double numerator;
    double denominator;
};

// Base unit mm. All but awg are exact: 1 in = 25.4 mm (1959), 1 ft = 12 in, 1 yd = 3 ft.
constexpr UnitRow<LengthUnit> length_rows[] = {
    {LengthUnit::millimetre, "mm", " mm millimetre millimetres millimeter millimeters ", 1, 1},
    {LengthUnit::centimetre, "cm", " cm centimetre centimetres centimeter centimeters ", 10, 1},
    {LengthUnit::metre, "m", " m metre metres meter meters ", 1000, 1},
    {LengthUnit::inch, "in", " in inch inches \" \u2033 \u201d '' ", 127, 5},
    {LengthUnit::thou, "thou", " thou thous mil mils ", 127, 5000},
    {LengthUnit::foot, "ft", " ft foot feet ", 1524, 5},
    {LengthUnit::yard, "yd", " yd yds yard yards ", 4572, 5},
    {LengthUnit::awg, "AWG", " awg ", 1, 1},
};

// Base unit mg. Exact: 1 lb = 453.59237 g (1959), 7,000 gr = 16 oz = 1 lb.
constexpr UnitRow<MassUnit> mass_rows[] = {
    {MassUnit::milligram, "mg", " mg milligram milligrams ", 1, 1},
    {MassUnit::gram, "g", " g gram grams gramme grammes ", 1000, 1},
    {MassUnit::grain, "gr", " gr grain grains ", 6479891, 100000},
    {MassUnit::ounce, "oz", " oz ounce ounces ", 28349523125, 1000000},
    {MassUnit::pound, "lb", " lb lbs pound pounds ", 45359237, 100},
};

// Base unit tex, which is g per km; a denier is g per 9 km. ISO 1144.
constexpr UnitRow<LinearDensityUnit> linear_density_rows[] = {
    {LinearDensityUnit::tex, "tex", " tex ", 1, 1},
    {LinearDensityUnit::decitex, "dtex", " dtex decitex ", 1, 10},
    {LinearDensityUnit::denier, "den", " den denier deniers d ", 1, 9},
};

constexpr const auto& rows(LengthUnit) { return length_rows; }
constexpr const auto& rows(MassUnit) { return mass_rows; }
constexpr const auto& rows(LinearDensityUnit) { return linear_density_rows; }

template <class U>
const UnitRow<U>& row(U unit) {
    return rows(unit)[static_cast<std::size_t>(unit)];
}

template <class U>
std::optional<U> find_unit(std::string_view word) {
    std::string low = detail::lowered(detail::trimmed(word));
    if (low.size() > 1 && low.ends_with('.')) low.pop_back();
    if (low.empty() || low.find(' ') != std::string::npos) return std::nullopt;
    for (const UnitRow<U>& r : rows(U{})) {
        if (r.words.find(' ' + low + ' ') != std::string_view::npos) return r.unit;
    }
    return std::nullopt;
}

template <class U>
double ratio(double number, U from, U to) {
    if (from == to) return number;
    const UnitRow<U>& a = row(from);
    const UnitRow<U>& b = row(to);
    return number * (a.numerator * b.denominator) / (a.denominator * b.numerator);
}

/// What the units of one kind are called in messages.
struct KindWords {
    std::string_view units;   ///< "mm, cm, ..."
    std::string_view example; ///< "2.8 mm"
};

/// Reads a number and its unit; the number's range is checked, the gauge's is not.
template <class Q, class U>
Result<Written<Q, U>> parse(std::string_view text, std::optional<U> bare, const KindWords& words) {
    const Result<LeadingNumber> number = leading_number(text);
    if (!number.ok()) {
        Error error = number.error();
        if (error.code == ErrorCode::not_found) error.code = ErrorCode::malformed;
        return error;
    }
    const std::string_view rest = detail::trimmed(text.substr(number.value().length));
    if (rest.starts_with(',')) return detail::decimal_comma(text);
    std::optional<U> unit = rest.empty() ? bare : find_unit<U>(rest);
    if (!unit) {
        const std::string why = rest.empty() ? " has no unit" : " is no unit here";
        return Error{ErrorCode::unknown_unit, quoted(rest.empty() ? text : rest) + why,
                     "write one of " + std::string(words.units) + ", such as " +
                         std::string(words.example)};
    }
    const double v = number.value().value;
    if (v < 0.0) {
        return Error{ErrorCode::out_of_range, quoted(text) + " is below nothing",
                     "write a number that is not negative"};
    }
    if (v > 1e9 || (v > 0.0 && v < 1e-12)) {
        return Error{ErrorCode::out_of_range, quoted(text) + " is beyond any size",
                     "check the digits and the unit"};
    }
    return Written<Q, U>{std::string(text), v, *unit, quantity(v, *unit)};
}

template <class U>
std::string write(double number, U unit) {
    return write_number(number) + ' ' + std::string(symbol(unit));
}

} // namespace

Result<WrittenLength> parse_length(std::string_view text, std::optional<LengthUnit> bare) {
    std::string_view rest = detail::trimmed(text);
    const bool gauge_first = detail::take_word(rest, "awg");
    constexpr KindWords words{"mm, cm, m, in, thou, ft, yd, AWG", "2.8 mm or 7/64 in"};
    Result<WrittenLength> length = gauge_first
                                       ? parse<Length, LengthUnit>(rest, LengthUnit::awg, words)
                                       : parse<Length, LengthUnit>(text, bare, words);
    if (!length.ok()) return length;
    WrittenLength& written = length.value();
    if (gauge_first && written.unit != LengthUnit::awg) {
        return Error{ErrorCode::unknown_unit, quoted(text) + " has two units",
                     "write AWG and a number, such as AWG 34, or a length"};
    }
    if (written.unit == LengthUnit::awg && written.number > 56.0) {
        return Error{ErrorCode::out_of_range, quoted(text) + " is outside AWG 0 to 56",
                     "check the gauge, or write the diameter in mm"};
    }
    written.text = std::string(text);
    return length;
}

Result<WrittenMass> parse_mass(std::string_view text, std::optional<MassUnit> bare) {
    return parse<Mass, MassUnit>(text, bare, {"mg, g, gr (grain), oz, lb", "250 mg"});
}

Result<WrittenLinearDensity> parse_linear_density(std::string_view text,
                                                  std::optional<LinearDensityUnit> bare) {
    return parse<LinearDensity, LinearDensityUnit>(text, bare, {"den, tex, dtex", "70 den"});
}

std::optional<LengthUnit> length_unit(std::string_view word) { return find_unit<LengthUnit>(word); }
std::optional<MassUnit> mass_unit(std::string_view word) { return find_unit<MassUnit>(word); }
std::optional<LinearDensityUnit> linear_density_unit(std::string_view word) {
    return find_unit<LinearDensityUnit>(word);
}

std::string_view symbol(LengthUnit unit) { return row(unit).symbol; }
std::string_view symbol(MassUnit unit) { return row(unit).symbol; }
std::string_view symbol(LinearDensityUnit unit) { return row(unit).symbol; }

// The base units are SI units times a power of ten, so a product and a division say each of them.
Length quantity(double number, LengthUnit unit) {
    if (unit == LengthUnit::awg) return wire_gauge_diameter(number);
    return {number * row(unit).numerator / (row(unit).denominator * 1e3)};
}
Mass quantity(double number, MassUnit unit) {
    return {number * row(unit).numerator / (row(unit).denominator * 1e6)};
}
LinearDensity quantity(double number, LinearDensityUnit unit) {
    return {number * row(unit).numerator / (row(unit).denominator * 1e6)};
}

double convert(double number, LengthUnit from, LengthUnit to) {
    if (from == to) return number;
    if (from == LengthUnit::awg) {
        return convert(in_millimetres(wire_gauge_diameter(number)), LengthUnit::millimetre, to);
    }
    if (to == LengthUnit::awg) {
        return wire_gauge(millimetres(convert(number, from, LengthUnit::millimetre)));
    }
    return ratio(number, from, to);
}
double convert(double number, MassUnit from, MassUnit to) { return ratio(number, from, to); }
double convert(double number, LinearDensityUnit from, LinearDensityUnit to) {
    return ratio(number, from, to);
}

std::string write_size(double number, LengthUnit unit) { return write(number, unit); }
std::string write_size(double number, MassUnit unit) { return write(number, unit); }
std::string write_size(double number, LinearDensityUnit unit) { return write(number, unit); }

Length wire_gauge_diameter(double gauge) {
    return millimetres(0.127 * std::pow(92.0, (36.0 - gauge) / 39.0));
}

double wire_gauge(Length diameter) {
    WW_ASSERT(diameter.si > 0.0);
    return 36.0 - 39.0 * std::log(in_millimetres(diameter) / 0.127) / std::log(92.0);
}

} // namespace wrapwright
