#include "gui/dimensions.h"

#include "core/units/number_text.h"
#include "gui/picture.h"
#include "tests/support/close.h"
#include "tests/support/demo.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>

using namespace wrapwright;
using test::within;

namespace {

constexpr std::string_view demos[] = {"weirfoot-jig", "sill-dun", "tailrace-spider",
                                      "lockgate-sedge", "millpool-leech"};

const Measure* find(const std::vector<Measure>& measures, std::string_view what) {
    const auto it = std::find_if(measures.begin(), measures.end(),
                                 [&](const Measure& m) { return m.label.starts_with(what); });
    return it == measures.end() ? nullptr : &*it;
}

// The number of millimetres in a label.
double said(const Measure& m) {
    const std::size_t digit = m.label.find_first_of("0123456789");
    const Result<LeadingNumber> number = leading_number(std::string_view(m.label).substr(digit));
    REQUIRE(number.ok());
    return number.value().value;
}

bool overlap(const LabelBox& a, const LabelBox& b) {
    return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

} // namespace

TEST_CASE("each measure says the length at which it is drawn, on every demo fly at every size") {
    for (const std::string_view name : demos) {
        const Pattern pattern = test::demo(name);
        for (const HookSize size : pattern.recipe.size_list) {
            const Tied tied = test::tied(pattern, size);
            const int last = static_cast<int>(tied.moments.size()) - 1;
            for (const Measure& m : measures_of(pattern, tied, last)) {
                CAPTURE(m.label);
                // Tolerance  half a unit of the last digit written: hundredths below 3 mm
                const double unit = said(m) < 3.0 ? 0.01 : 0.1;
                CHECK(within(glm::distance(m.from, m.to), said(m), 0.5 * unit + 1e-4));
            }
        }
    }
}

TEST_CASE("the measures are those of the record") {
    const Pattern pattern = test::demo("weirfoot-jig");
    const Tied tied = test::tied(pattern, HookSize{14});
    const int last = static_cast<int>(tied.moments.size()) - 1;
    const std::vector<Measure> measures = measures_of(pattern, tied, last);
    const BaseRun& base = tied.bases.front();
    const auto bead = std::find_if(tied.placed.begin(), tied.placed.end(),
                                   [](const Placed& p) { return p.kind == PlacedKind::bead; });
    REQUIRE(bead != tied.placed.end());
    for (const auto& [what, length] : {std::pair{"shank", base.hook.shank.value},
                                       {"gape", base.hook.gape.value},
                                       {"bead", bead->reach}}) {
        CAPTURE(what);
        const Measure* measure = find(measures, what);
        REQUIRE(measure != nullptr);
        CHECK(within(said(*measure), in_millimetres(length), 0.05)); // written to a tenth
    }
    const auto rib =
        std::find_if(tied.windings.begin(), tied.windings.end(), [&](const Winding& w) {
            return w.part != none &&
                   pattern.recipe.parts[static_cast<std::size_t>(w.part)].role == "rib";
        });
    REQUIRE(rib != tied.windings.end());
    REQUIRE(find(measures, "rib pitch") != nullptr);
    CHECK(within(said(*find(measures, "rib pitch")), in_millimetres(rib->pitch), 0.005));
}

TEST_CASE("a typical hook's lengths say about, a measured one's do not") {
    const Pattern pattern = test::demo("sill-dun");
    Tied tied = test::tied(pattern, HookSize{14});
    CHECK(find(measures_of(pattern, tied, 0), "shank about ") != nullptr);
    tied.bases[0].hook.shank.origin = Origin::measured;
    CHECK(find(measures_of(pattern, tied, 0), "shank about ") == nullptr);
    CHECK(find(measures_of(pattern, tied, 0), "shank ") != nullptr);
}

TEST_CASE("what is not yet on the fly is not measured") {
    const Pattern pattern = test::demo("sill-dun");
    const Tied tied = test::tied(pattern, HookSize{14});
    const int last = static_cast<int>(tied.moments.size()) - 1;
    for (const std::string_view what : {"tail", "body", "hackle"}) {
        CAPTURE(std::string(what));
        CHECK(find(measures_of(pattern, tied, 0), what) == nullptr);
        CHECK(find(measures_of(pattern, tied, last), what) != nullptr);
    }
    CHECK(find(measures_of(pattern, tied, 0), "gape") != nullptr); // the hook always is
}

TEST_CASE("labels neither overlap nor leave the picture, whatever the fly, size, step and hand") {
    PictureOptions options;
    options.dimensions = true;
    options.vise = false;
    for (const PixelSize size : {PixelSize{1600, 1000}, PixelSize{640, 400}}) {
        options.size = size;
        for (const std::string_view name : demos) {
            const Pattern pattern = test::demo(name);
            for (const HookSize hook : pattern.recipe.size_list) {
                const Tied tied = test::tied(pattern, hook);
                for (std::size_t m = 0; m < tied.moments.size(); m += 5) {
                    options.left_handed = m % 2 == 1;
                    FlyModel model;
                    Scene scene;
                    compose_picture(pattern, tied, static_cast<int>(m), options, model, scene);
                    std::vector<LabelBox> boxes;
                    for (const OverlayLabel& label : scene.labels) {
                        boxes.push_back(label_box(scene, label));
                    }
                    CAPTURE(std::string(name));
                    CAPTURE(hook.number);
                    CAPTURE(m);
                    for (std::size_t i = 0; i < boxes.size(); ++i) {
                        CAPTURE(scene.labels[i].text);
                        for (std::size_t k = 0; k < i; ++k)
                            CHECK_FALSE(overlap(boxes[i], boxes[k]));
                        CHECK(std::min(boxes[i].low.x, boxes[i].low.y) >= -0.01F);
                        CHECK(boxes[i].high.x <= static_cast<float>(size.width) + 0.01F);
                        CHECK(boxes[i].high.y <= static_cast<float>(size.height) + 0.01F);
                    }
                }
            }
        }
    }
}

TEST_CASE("the ruler has a long tick and a number every 5 mm and lies along the shank") {
    const Pattern pattern = test::demo("sill-dun");
    const Tied tied = test::tied(pattern, HookSize{12});
    PictureOptions options;
    options.dimensions = true;
    FlyModel model;
    Scene scene;
    compose_picture(pattern, tied, 0, options, model, scene);
    for (const auto& [number, x] : {std::pair{"0", 0.0F}, {"5", 5.0F}}) {
        const auto label = std::find_if(scene.labels.begin(), scene.labels.end(),
                                        [&](const OverlayLabel& l) { return l.text == number; });
        REQUIRE(label != scene.labels.end());
        CHECK(label->at.x == x); // exact: small whole numbers
    }
    CHECK(in_millimetres(tied.bases[0].hook.shank.value) < 10.0); // and so there is no 10
    CHECK(std::none_of(scene.labels.begin(), scene.labels.end(),
                       [](const OverlayLabel& l) { return l.text == "10"; }));
}
