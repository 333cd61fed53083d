#include "gui/tour.h"

#include <array>

namespace wrapwright {

namespace {

constexpr std::array<TourStop, 8> stops{{
    {Screen::lay_out, "What lies ready",
     "Everything that this fly asks for at this hook size, with lengths and counts. Space ticks "
     "things "
     "off; pick another size and the numbers follow."},
    {Screen::film, "The whole fly at once",
     "The tying as a film: drag the slider, or press Play. What you see is the record of one run "
     "of the "
     "recipe, and every other screen reads the same record."},
    {Screen::bench, "One step at a time",
     "Here a fly is tied: the large words say what to do now. Space or a press anywhere in them "
     "moves "
     "on, and counts turns where there are some. Undo takes back anything."},
    {Screen::edit, "Write it your way",
     "Pick the tail and type another length, as you would say it: half the shank, 1.5 gape, 12 mm. "
     "What "
     "was understood stands below, and the fly follows each letter."},
    {Screen::check, "Is it in proportion?",
     "Lengths against a standard that you pick. Type what a caliper says, or open a photo of a "
     "fly."},
    {Screen::water, "What the water does",
     "What it weighs, how fast it sinks and which way up it rides, each with its doubt."},
    {Screen::library, "All recipes",
     "Type any word of a recipe to find it. Open one, or make your own version of it."},
    {Screen::keys, "Keys, words, and this tour again",
     "Every key can be changed here, and each word of the trade is explained under Words."},
}};

} // namespace

std::span<const TourStop> tour_stops() { return stops; }

} // namespace wrapwright
