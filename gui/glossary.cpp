#include "gui/glossary.h"

#include <array>

namespace wrapwright {

namespace {

using S = Sketched;

// Common practice, no source: what tiers mean by these words, in our own sentences.
constexpr std::array<GlossaryWord, 41> entries{{
    {"ballast", "Weighting wire wound on the bare shank, before any thread.", S::ballast},
    {"barb", "The cut that stands up behind the point; places are told by the shank above it.",
     S::barb},
    {"bead", "A bored ball that goes over the point before anything else and sits behind the eye.",
     S::bead},
    {"bend", "Where the shank ends and the wire turns down to the point.", S::bend},
    {"body", "What covers the shank between tail and thorax or hackle.", S::body},
    {"butt", "The end of a material that is cut off or bound down once it is tied in.", S::butt},
    {"collar", "A hackle in close turns at one place, behind the head.", S::hackle},
    {"counter-wrap", "Wound the other way than what lies below, so that it crosses and locks it.",
     S::counter_rib},
    {"dubbing", "Fur or fibre twisted on the thread and wound with it.", S::body},
    {"eye", "The ring that the line is tied to; places are counted from its back.", S::eye},
    {"flue", "The short fibres that stand along a herl or quill.", S::nothing},
    {"gape", "The room between shank and point; hackles and beads are measured by it.", S::gape},
    {"hackle", "A feather wound so that its barbs stand round the hook; also those barbs.",
     S::hackle},
    {"half hitch", "One loop drawn tight over the thread: it holds for now.", S::head},
    {"head", "The thread that closes the fly behind the eye.", S::head},
    {"herl", "A single barb of a long feather, with short flue, wound as a body.", S::body},
    {"hot spot", "A short bright stretch, often of bare thread.", S::head},
    {"landmark", "What one looks at to see that a step is right.", S::nothing},
    {"palmer", "A hackle in open turns along the body.", S::palmer},
    {"pinch turn",
     "A loose turn drawn tight between finger and thumb, so that what it holds stays "
     "on top.",
     S::tail},
    {"pitch", "How far each turn lies from the last.", S::rib},
    {"point", "The sharp end; places are told by the shank above it.", S::point},
    {"post", "A wing that stands straight up and has a hackle wound round its foot.", S::post},
    {"quill", "A stripped stem or barb, wound in touching turns.", S::body},
    {"restore point", "A step that holds by itself: a thread that breaks later falls back to it.",
     S::nothing},
    {"rib", "Wire, tinsel or thread in open turns over the body.", S::rib},
    {"rung", "One of the weights that the same pattern is tied in.", S::nothing},
    {"shank", "The straight of the hook from behind the eye to the bend.", S::shank},
    {"slip", "A narrow strip cut from a wing feather.", S::wing},
    {"spin", "To let hollow hair flare all round the shank under a drawn thread.", S::hackle},
    {"stack", "To even the tips of hair in a tube.", S::wing},
    {"tag end", "The short end of thread or wire that is cut away.", S::butt},
    {"tail", "Fibres that stand back over the bend.", S::tail},
    {"taper", "A body that grows thicker from the bend to the front.", S::body},
    {"thorax", "The fuller front of a body, where legs and wing case are.", S::thorax},
    {"thread base", "Close turns of thread that everything after them grips.", S::thread},
    {"tie in", "To hold one end of a material with turns of thread.", S::tail},
    {"tie off", "To hold the end of what was wound with turns of thread.", S::head},
    {"whip finish", "Turns of thread over its own end, drawn tight: the knot that holds for good.",
     S::head},
    {"wing", "Hair, feather or fibre that stands up or lies back over the body.", S::wing},
    {"wing case", "A strip tied in behind the thorax and folded forward over it.", S::wing_case},
}};

constexpr bool in_order() {
    for (std::size_t i = 1; i < entries.size(); ++i) {
        if (!(entries[i - 1].word < entries[i].word)) return false;
    }
    return true;
}
static_assert(in_order(), "a glossary is looked up by the alphabet");

} // namespace

std::span<const GlossaryWord> glossary() { return entries; }

} // namespace wrapwright
