// What a fly is tied on, what joins two of these, and targets of the recipe's own, field by field.

#include "gui/edit_form.h"

#include "core/recipe/text_json.h"
#include "core/units/number_text.h"

#include <array>

namespace wrapwright {

namespace {

struct HookMeasure {
    const char* key;
    const char* label;
    const char* help;
};

constexpr std::array<HookMeasure, 7> measures{{
    {"shank", "Shank, measured", "With a caliper, from the back of the eye to the bend: 13.5 mm."},
    {"gape", "Gape, measured", "From shank to point: 6.2 mm. What you leave out is filled in."},
    {"wire", "Wire, measured", "Its diameter: 0.6 mm."},
    {"eye_length", "Eye, along", "Outside, along the shank: 1.9 mm."},
    {"eye_diameter", "Eye, across", "Outside: 1.7 mm."},
    {"size", "Its number",
     "On the packet: 14. The fly is run on it at that size, at others on typical "
     "ones; at all sizes where nothing is said."},
    {"barb_height", "Barb", "Above the wire; 0 mm where it is barbless or pressed flat."},
}};

std::vector<std::string> base_ids(const Recipe& recipe) { return ids_with_nothing(recipe.bases); }

} // namespace

std::vector<Field> base_fields(const EditWork& work, std::size_t i) {
    const Base& b = work.draft().recipe.bases[i];
    Form form(work, row_of("bases", static_cast<int>(i)));
    form.words("text", "In your words", b.text,
               "The hook as on the packet, or the shank, tube or needle.");
    form.pick("kind", "What it is", b.kind, {"hook", "shank", "tube", "needle", "trailing hook"},
              "The first one in the list is what the fly is built on.");
    std::vector<std::string> kinds = words_to(HookFamily::jig);
    kinds.insert(kinds.begin(), std::string());
    form.pick("family", "Kind of hook", b.family ? name(*b.family) : std::string_view{},
              std::move(kinds), "Which table of typical hooks the sizes are taken from.");
    form.amount("size", "Size of its own", b.size, nullptr,
                "Where it does not follow the size of the fly: 8.");
    form.pick("dressed", "Dressed", b.dressed ? "yes" : "no", {"yes", "no"},
              "No for a trailing hook that is only joined on.");
    // A measured hook stands as it was written, so that 7/64 in is not turned into millimetres.
    const Result<json::Node> written = json::read(b.measured_json);
    for (const HookMeasure& m : measures) {
        const json::Node* node = written.ok() ? written.value().find(m.key) : nullptr;
        std::string text = node != nullptr && node->kind == json::Kind::text ? node->text : "";
        if (node != nullptr && node->kind == json::Kind::object) {
            const json::Node* value = node->find("value"); // with its doubt, from a file
            if (value != nullptr) text = value->text;
        }
        form.words(std::string("measured.") + m.key, m.label, text, m.help);
    }
    return form.take();
}

std::vector<Field> joint_fields(const EditWork& work, std::size_t i) {
    const Recipe& r = work.draft().recipe;
    const Joint& j = r.joints[i];
    Form form(work, row_of("joints", static_cast<int>(i)));
    form.pick("from", "From", j.from, base_ids(r), "The hook or shank in front.");
    form.pick("to", "To", j.to, base_ids(r), "The one behind it.");
    form.pick("material", "Made of", j.material, ids_with_nothing(r.materials),
              "Wire, braid or a ring, among the materials of this recipe.");
    form.amount("length", "Free length", j.length, nullptr,
                "Between the two: 12 mm. It has to clear the bend in front.");
    form.pick("beads", "Beads on it", j.beads, ids_with_nothing(r.materials),
              "Beads among the materials, where there are any on the joint.");
    form.amount("bead_count", "How many beads", j.bead_count, nullptr, "2.");
    return form.take();
}

std::vector<Field> target_fields(const EditWork& work, std::size_t i) {
    const OwnTarget& t = work.draft().recipe.targets[i];
    Form form(work, row_of("targets", static_cast<int>(i)));
    form.pick("part", "Part", t.part, {"tail", "body", "thorax", "wing", "hackle"},
              "What is measured on the finished fly.");
    form.amount("length", "How long", t.length, nullptr,
                "Half the shank, 1.5 gape, 12 mm: in place of what a standard says.");
    form.number("within", "Within", t.within_said ? write_rounded(t.within, 3) : std::string(),
                "Tolerance as a share: 0.15. A tenth where nothing is said.");
    return form.take();
}

} // namespace wrapwright
