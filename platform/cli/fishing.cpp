#include "platform/cli/fishing.h"

#include "core/tying/tie.h"
#include "core/units/number_text.h"
#include "core/units/size_text.h"
#include "platform/cli/failure.h"

#include <fmt/core.h>

#include <array>
#include <cmath>

namespace wrapwright::cli {

namespace {

/// The number at the start of a text whose unit is one of these, or bare.
double number_of(const std::string& option, const std::string& text,
                 const std::vector<std::string>& units, const std::string& remedy) {
    const Result<LeadingNumber> number = leading_number(text);
    bool known = number.ok();
    if (known) {
        std::string unit = text.substr(number.value().length);
        while (!unit.empty() && unit.front() == ' ') unit.erase(0, 1);
        known = unit.empty();
        for (const std::string& u : units) known = known || unit == u;
    }
    if (!known) refuse_usage("--" + option + ": '" + text + "' is not understood", remedy);
    return number.value().value;
}

std::pair<std::string, std::string> halves(const std::string& text, char at) {
    const auto i = text.find(at);
    if (i == std::string::npos) return {text, {}};
    return {text.substr(0, i), text.substr(i + 1)};
}

/// [N=]MASS[:DIGIT], such as 10=2.17g:0.01g: so many weighed together on a scale of that digit.
Estimate<Mass> weighing_of(const std::string& option, const std::string& text) {
    auto [mass, digit] = halves(text, ':');
    int pieces = 1;
    if (const auto equals = mass.find('='); equals != std::string::npos) {
        const double n = number_of(option, mass.substr(0, equals), {},
                                   "write how many pieces, such as 10=2.17g:0.01g");
        if (!(n >= 1.0 && n <= 1e5) || n != std::floor(n)) {
            refuse_usage("--" + option + ": no such number of pieces",
                         "write a whole number, such as 10=2.17g:0.01g");
        }
        pieces = static_cast<int>(n);
        mass.erase(0, equals + 1);
    }
    const Mass together = mass_of(option, mass);
    const Mass last = digit.empty() ? 0.01 * together : mass_of(option, digit);
    if (!(together.si > 0.0)) {
        refuse_usage("--" + option + ": nothing was on the scale", "write a mass above 0");
    }
    return one_of_weighed(pieces, together, last);
}

Fall fall_of(const FishingOptions& options, const std::string& text) {
    // HEIGHT:SECONDS[@CELSIUS]
    const auto [what, warm] = halves(text, '@');
    const auto [height, time] = halves(what, ':');
    const std::string remedy = "write height and seconds, such as 0.5m:1.3s or 0.5m:1.3s@12";
    if (time.empty()) refuse_usage("--timed: '" + text + "' has no time", remedy);
    Fall fall;
    fall.height = length_of("timed", height);
    fall.time = seconds(number_of("timed", time, {"s", "sec"}, remedy));
    if (!warm.empty()) fall.temperature = celsius(number_of("timed", warm, {"C", "°C"}, remedy));
    fall.from_rest = options.from_rest;
    if (!options.jar.empty()) fall.jar = length_of("jar", options.jar);
    fall.kind = options.sea ? WaterKind::sea : WaterKind::fresh;
    return fall;
}

} // namespace

Mass mass_of(const std::string& option, const std::string& text) {
    const Result<WrittenMass> mass = parse_mass(text);
    if (!mass.ok()) refuse_usage("--" + option + ": " + mass.error().message, mass.error().remedy);
    return mass.value().quantity;
}

Length length_of(const std::string& option, const std::string& text) {
    const Result<WrittenLength> length = parse_length(text, LengthUnit::metre);
    if (!length.ok()) {
        refuse_usage("--" + option + ": " + length.error().message, length.error().remedy);
    }
    return length.value().quantity;
}

Speed speed_of(const std::string& option, const std::string& text) {
    return metres_per_second(
        number_of(option, text, {"m/s"}, "write metres per second, such as 0.4m/s"));
}

void add_fishing(const Command& command, FishingOptions& o) {
    command.option("--temp", o.temperature, "of the water in Celsius; 10 where not said");
    command.flag("--sea", o.sea, "salt water");
    command.option("--tippet", o.tippet, "THICKNESS:LENGTH in the water, 0.15mm:1m; or none");
    command.option("--current", o.current, "at the surface, m/s; 0.9 where not said");
    command.option("--depth", o.depth, "of the stream; 1.2 m where not said");
    command.option("--drift", o.drift, "how far it drifts; 6 m where not said");
    command.option("--bed", o.bed, "size of the bed's stones; 50 mm where not said");
    command.option("--profile", o.profile, "of the current towards the bed: power or log")
        .one_of({"power", "log"});
    command.option("--air", o.air, "mm3 of air that the dressing carries down");
    command.option("--weighed", o.weighed, "[N=]MASS[:DIGIT] of the whole fly on a scale");
    command.option("--bead", o.bead, "[N=]MASS[:DIGIT] of its bead: weigh ten, 10=1.64g:0.01g");
    command.option("--timed", o.timed, "HEIGHT:SECONDS[@CELSIUS] of a fall, without a tippet")
        .one_at_a_time();
    command.option("--jar", o.jar, "inside diameter of the jar that it fell in");
    command.flag("--from-rest", o.from_rest, "falls were timed from letting go");
}

Fishing fishing_of(const FishingOptions& o) {
    Fishing f;
    if (!o.temperature.empty()) {
        f.temperature = celsius(
            number_of("temp", o.temperature, {"C", "°C"}, "write degrees Celsius, such as 10"));
    }
    if (o.sea) f.kind = WaterKind::sea;
    if (o.tippet == "none") {
        f.tippet.length = {};
    } else if (!o.tippet.empty()) {
        const auto [thick, length] = halves(o.tippet, ':');
        if (length.empty()) {
            refuse_usage("--tippet: '" + o.tippet + "' has no length",
                         "write thickness and length, such as 0.15mm:1m, or none");
        }
        f.tippet.thickness = length_of("tippet", thick);
        f.tippet.length = length_of("tippet", length);
    }
    if (!o.current.empty()) f.stream.surface = speed_of("current", o.current);
    if (!o.depth.empty()) f.stream.depth = length_of("depth", o.depth);
    if (!o.bed.empty()) {
        f.stream.roughness = length_of("bed", o.bed);
    } else {
        f.stream.roughness = std::min(f.stream.roughness, 0.3 * f.stream.depth);
    }
    if (o.profile == "log") f.stream.profile = CurrentProfile::logarithmic;
    if (!o.drift.empty()) f.drift = length_of("drift", o.drift);
    if (!o.air.empty()) {
        f.air = cubic_millimetres(number_of("air", o.air, {"mm3"}, "write cubic millimetres, 2"));
    }
    if (!o.weighed.empty()) f.weighed = weighing_of("weighed", o.weighed);
    for (const std::string& t : o.timed) f.falls.push_back(fall_of(o, t));
    return f;
}

void weigh_beads(const FishingOptions& options, const Loaded& loaded, Fly& fly) {
    if (options.bead.empty()) return;
    const Estimate<Mass> one = weighing_of("bead", options.bead);
    bool any = false;
    for (Stuff& s : fly.resolved.materials) {
        if (s.kind != MaterialKind::bead && s.kind != MaterialKind::cone) continue;
        s.item_mass = one;
        any = true;
    }
    if (!any) refuse_usage("--bead: this fly has no bead", "leave the option out");
    tie(loaded.pattern, fly.rig, fly.resolved, Limits{}, fly.tied);
}

} // namespace wrapwright::cli
