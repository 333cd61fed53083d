#pragma once
// A marked photo of one fly on the command line: the same as the window shows.

#include "core/check/photo_found.h"
#include "platform/cli/json.h"

namespace wrapwright::cli {

/// X1,Y1,X2,Y2 ...: as many places as there are. Refuses anything else.
[[nodiscard]] std::vector<glm::dvec2> places_of(const std::string& option, const std::string& text,
                                                std::size_t least, std::size_t most);

/// Two points and the length between them: X1,Y1,X2,Y2=9.7mm.
struct SaidScale {
    std::vector<glm::dvec2> points;
    Length apart{};
};
[[nodiscard]] SaidScale said_scale(const std::string& text);

struct MarkedFly {
    std::string recipe, size, hook, standard, scale, card, line;
    std::vector<std::string> marks;
    bool flipped = false;
};

/// Adds "fly" to the JSON and lines to the text: each marked part, how it stands, the step, the cure.
void measure_fly(const GreyView& photo, const MarkedFly& fly, const PhotoDoubt& doubt, Json& json,
                 std::string& text);

} // namespace wrapwright::cli
