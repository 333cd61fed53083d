// What a length, a mass or a thread weight is in the other units.

#include "core/units/bead_label.h"
#include "core/units/explain_parts.h"
#include "core/units/number_text.h"

#include <algorithm>
#include <cmath>

namespace wrapwright::detail {

namespace {

/// So many 64ths of an inch in lowest terms: 14 gives "7/32 in", 96 gives "1 1/2 in".
std::string inches_text(int sixty_fourths) {
    const int whole = sixty_fourths / 64;
    int above = sixty_fourths % 64;
    int below = 64;
    while (above != 0 && above % 2 == 0) {
        above /= 2;
        below /= 2;
    }
    std::string text;
    if (whole > 0 || above == 0) text = std::to_string(whole);
    if (whole > 0 && above > 0) text += ' ';
    if (above > 0) text += std::to_string(above) + '/' + std::to_string(below);
    return text + " in";
}

/// "exactly", or by how much `approximation` is off.
std::string off_by(double approximation_mm, double true_mm) {
    const double difference = approximation_mm - true_mm;
    if (std::abs(difference) < 5e-8) return "exactly";
    return "which is " + write_rounded(std::abs(difference), std::abs(difference) < 5e-4 ? 6 : 3) +
           " mm " + (difference < 0 ? "less" : "more");
}

void add_fraction(SizeMeaning& meaning, double mm) {
    const double sixty_fourths = std::round(mm * 5.0 / 127.0 * 64.0);
    if (sixty_fourths < 1.0 || sixty_fourths > 640.0) return;
    const int n = static_cast<int>(sixty_fourths);
    const double approximation = n * 127.0 / 5.0 / 64.0;
    meaning.facts.push_back({"nearest 64th of an inch",
                             inches_text(n) + ", " + off_by(approximation, mm),
                             sixty_fourths / 64.0});
}

void add_gauge(SizeMeaning& meaning, double mm) {
    if (mm < 0.04 || mm > 1.1) return; // the wires of fly tying and some way around them
    const double gauge = std::round(wire_gauge(millimetres(mm)));
    const double there = in_millimetres(wire_gauge_diameter(gauge));
    meaning.facts.push_back({"nearest wire gauge",
                             "AWG " + write_number(gauge) + " (" + write_rounded(there, 3) +
                                 " mm), " + off_by(there, mm),
                             gauge});
}

bool is_sold_as(const BeadLabel& label, double mm) {
    const std::string written = write_rounded(mm, 3);
    const std::string with_point =
        written.find('.') == std::string::npos ? written + ".0" : written;
    return (", " + std::string(label.sold_as) + ',').find(", " + with_point + ',') !=
           std::string::npos;
}

void add_bead(SizeExplanation& out, SizeMeaning& meaning, double mm) {
    for (const BeadLabel& label : bead_labels) {
        const std::string name = inches_text(label.numerator * 64 / label.denominator);
        if (std::abs(label.millimetres() - mm) < 1e-6) {
            meaning.facts.push_back(
                {"bead of that label", "sold as " + std::string(label.sold_as) + " mm", {}});
            out.warnings.push_back(name + " is " + write_rounded(label.millimetres(), 6) +
                                   " mm exactly, whatever a chart or a packet says; measure the "
                                   "bead before you trust its mass");
        } else if (is_sold_as(label, mm)) {
            meaning.facts.push_back({"bead of that label",
                                     "sold under " + name + " (true " +
                                         write_rounded(label.millimetres(), 3) +
                                         " mm), together with " + std::string(label.sold_as),
                                     label.millimetres()});
        }
    }
}

template <class U>
void add_units(SizeMeaning& meaning, double number, U unit,
               std::initializer_list<std::pair<const char*, U>> units) {
    for (const auto& [name, other] : units) {
        const double there = convert(number, unit, other);
        meaning.facts.push_back({name, shown(there) + ' ' + std::string(symbol(other)), there});
    }
}

} // namespace

std::string shown(double number) {
    if (number == 0.0) return "0"; // exact: nothing is nothing in every unit
    const int whole_digits = static_cast<int>(std::floor(std::log10(std::abs(number)))) + 1;
    return write_rounded(number, std::clamp(7 - whole_digits, 0, 20));
}

void explain(SizeExplanation& out, std::string what, double number, LengthUnit unit) {
    SizeMeaning meaning{std::move(what)};
    add_units<LengthUnit>(meaning, number, unit,
                          {{"millimetres", LengthUnit::millimetre}, {"inches", LengthUnit::inch}});
    const double mm = convert(number, unit, LengthUnit::millimetre);
    add_fraction(meaning, mm);
    if (unit != LengthUnit::awg) add_gauge(meaning, mm);
    add_bead(out, meaning, mm);
    if (unit == LengthUnit::awg) {
        out.warnings.push_back("the gauge is of bare wire; enamel adds 0.005 to 0.02 mm");
    }
    out.meanings.push_back(std::move(meaning));
}

void explain(SizeExplanation& out, std::string what, double number, MassUnit unit) {
    SizeMeaning meaning{std::move(what)};
    add_units<MassUnit>(meaning, number, unit,
                        {{"milligrams", MassUnit::milligram},
                         {"grams", MassUnit::gram},
                         {"grains", MassUnit::grain},
                         {"ounces", MassUnit::ounce}});
    if (unit == MassUnit::grain) {
        out.warnings.push_back("gr is the grain, 64.79891 mg; the gram is g");
    }
    out.meanings.push_back(std::move(meaning));
}

void explain(SizeExplanation& out, std::string what, double number, LinearDensityUnit unit) {
    SizeMeaning meaning{std::move(what)};
    add_units<LinearDensityUnit>(meaning, number, unit,
                                 {{"denier", LinearDensityUnit::denier},
                                  {"tex", LinearDensityUnit::tex},
                                  {"decitex", LinearDensityUnit::decitex}});
    const double tex_there = convert(number, unit, LinearDensityUnit::tex);
    meaning.facts.push_back({"mass of a metre", shown(tex_there) + " mg", tex_there});
    out.warnings.push_back("this is mass per length, not thickness: equal denier of two fibres "
                           "differ in diameter and strength");
    out.meanings.push_back(std::move(meaning));
}

} // namespace wrapwright::detail
