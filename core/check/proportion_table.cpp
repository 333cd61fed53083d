#include "core/check/proportions.h"

// What is published and what is usual, row by row. S shank, G gape, B body, E eye length.

namespace wrapwright {

namespace {

constexpr std::string_view club = "club beginners' course booklet";
constexpr std::string_view chart_page = "a seller's proportion chart";
constexpr std::string_view sheets = "a collector's classical proportion sheets";
constexpr std::string_view gregg = "1940 manual";
constexpr std::string_view instructor_page = "an instructor's glossary";
constexpr std::string_view guide = "a seller's nymph guide, 2015";
constexpr std::string_view usual = "common practice, no source";

using K = FlyKind;
using M = Measured;

constexpr ProportionRow row(std::string_view standard, K kind, M part, double s, double g, double b,
                            double e, std::string_view source, double less = 0.10,
                            double more = 0.10) {
    return {standard, kind, part, s, g, b, e, less, more, source};
}

constexpr ProportionRow rows[] = {
    // Upwinged dry: the charts differ most about the tail.
    row("club course", K::dry, M::tail, 1.0, 0, 0, 0, club),
    row("club course", K::dry, M::body, 2.0 / 3.0, 0, 0, 0, club),
    row("club course", K::dry, M::wing, 1.0, 0, 0, 0, club),
    row("club course", K::dry, M::hackle, 0, 1.5, 0, 0, club),
    row("chart", K::dry, M::tail, 0, 0, 1.25, 0, chart_page),
    row("chart", K::dry, M::wing, 1.0, 0, 0, 0, chart_page),
    row("chart", K::dry, M::hackle, 0, 1.5, 0, 0, chart_page),
    row("classical", K::dry, M::tail, 0, 0, 1.5, 0, sheets),
    row("classical", K::dry, M::body, 1.0, 0, 0, -1.0, sheets),
    row("classical", K::dry, M::wing, 1.0, 0, 0, 0, sheets),
    row("classical", K::dry, M::hackle, 0, 0, 0.75, 0, sheets),
    // Winged and hackled wets.
    row("chart", K::wet, M::tail, 0, 0, 1.0, 0, chart_page),
    row("chart", K::wet, M::body, 1.0, 0, 0, -2.0, chart_page),
    row("chart", K::wet, M::wing, 1.0, 0, 0, 0, chart_page),
    row("chart", K::wet, M::hackle, 0, 0, 0.75, 0, chart_page),
    row("manual 1940", K::wet, M::wing, 1.0, 0, 0, 0, gregg, 0.05, 0.15),
    row("common", K::soft_hackle, M::tail, 0.5, 0, 0, 0, usual, 1.0, 0.1),
    row("common", K::soft_hackle, M::body, 5.0 / 6.0, 0, 0, 0, usual, 0.2, 0.2),
    row("common", K::soft_hackle, M::hackle, 1.25, 0, 0, 0, usual, 0.2, 0.2),
    // Nymphs.
    row("instructor", K::nymph, M::tail, 5.0 / 12.0, 0, 0, 0, instructor_page, 0.2, 0.2),
    row("instructor", K::nymph, M::body, 7.0 / 12.0, 0, 0, 0, instructor_page, 0.143, 0.143),
    row("instructor", K::nymph, M::thorax, 5.0 / 12.0, 0, 0, 0, instructor_page, 0.2, 0.2),
    row("chart", K::nymph, M::tail, 0, 0, 1.0, 0, chart_page),
    row("chart", K::nymph, M::hackle, 0, 0, 0.75, 0, chart_page, 1.0, 0.0),
    row("nymph guide", K::nymph, M::tail, 5.0 / 12.0, 0, 0, 0, guide, 0.2, 0.2),
    row("nymph guide", K::nymph, M::hackle, 0, 1.0, 0, 0, guide),
    row("common", K::jig_nymph, M::tail, 0.5, 0, 0, 0, usual, 0.2, 0.2),
    row("common", K::jig_nymph, M::hackle, 0.5, 0, 0, 0, usual, 0.2, 0.2),
    // Streamers.
    row("chart", K::streamer, M::tail, 0, 0, 0.5, 0, chart_page),
    row("chart", K::streamer, M::body, 1.0, 0, 0, -2.0, chart_page),
    row("chart", K::streamer, M::wing, 1.5, 0, 0, 0, chart_page),
    row("chart", K::streamer, M::hackle, 0, 1.0, 0, 0, chart_page),
    row("classical", K::streamer, M::tail, 0, 0, 0.5, 0, sheets),
    row("classical", K::streamer, M::wing, 1.5, 0, 0, 0, sheets),
    row("common", K::woolly, M::tail, 1.0, 0, 0, 0, usual, 0.25, 0.25),
    row("common", K::woolly, M::body, 1.0, 0, 0, -1.5, usual),
    row("common", K::woolly, M::hackle, 0, 1.25, 0, 0, usual, 0.2, 0.2),
    // The rest.
    row("common", K::parachute, M::tail, 1.0, 0, 0, 0, usual),
    row("common", K::parachute, M::body, 2.0 / 3.0, 0, 0, 0, usual),
    row("common", K::parachute, M::wing, 1.0, 0, 0, 0, usual),
    row("common", K::parachute, M::hackle, 0, 1.75, 0, 0, usual, 0.15, 0.15),
    row("common", K::sedge, M::body, 2.0 / 3.0, 0, 0, 0, usual, 0.15, 0.15),
    row("common", K::sedge, M::wing, 1.075, 0, 0, 0, usual, 0.07, 0.07),
    row("common", K::sedge, M::hackle, 0, 1.0, 0, 0, usual, 0.15, 0.05),
    row("common", K::midge, M::tail, 0.2, 0, 0, 0, usual, 0.3, 0.3),
    row("common", K::midge, M::thorax, 0.29, 0, 0, 0, usual, 0.15, 0.15),
    row("common", K::scud, M::tail, 0, 0.25, 0, 0, usual, 0.3, 0.3),
    row("common", K::scud, M::hackle, 0, 1.0, 0, 0, usual, 0.2, 0.1),
    row("common", K::emerger, M::tail, 0.75, 0, 0, 0, usual, 0.33, 0.33),
    row("common", K::emerger, M::body, 7.0 / 12.0, 0, 0, 0, usual, 0.143, 0.143),
    row("common", K::emerger, M::hackle, 0, 1.5, 0, 0, usual),
};

} // namespace

std::span<const ProportionRow> proportion_rows() { return rows; }

} // namespace wrapwright
