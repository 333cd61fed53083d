// A photo of a fly that is wrongly proportioned on purpose, measured as a person does.

#include "tests/support/fly_photo.h"
#include "core/recipe/text.h"
#include "core/units/number_text.h"
#include "platform/gl/image.h"
#include "tests/platform/cli/program.h"
#include "tests/support/close.h"
#include "tests/support/demo.h"

#include <doctest/doctest.h>

using namespace wrapwright;
using namespace wrapwright::test;
using Json = nlohmann::json;

namespace {

/// The dun with a tail of one shank and a half, where every standard says less or as much of the body.
OpenFly long_tailed() {
    Recipe recipe = demo("sill-dun").recipe;
    for (Part& p : recipe.parts) {
        if (p.id != "tail") continue;
        p.length.text = "1.5 shank";
        p.length.reading = read_amount("1.5 shank", {}).value();
    }
    OpenFly fly;
    fly.id = "sill-dun";
    fly.pattern = link(std::move(recipe)).value();
    fly.size = HookSize{14};
    fly.rig = make_rig(fly.pattern, fly.size).value();
    REQUIRE(resolve(fly.pattern, fly.rig, fly.resolved).ok());
    tie(fly.pattern, fly.rig, fly.resolved, Limits{}, fly.tied);
    return fly;
}

std::string png(const Scratch& scratch, const GreyPicture& picture) {
    Image image{{picture.width, picture.height}, {}};
    for (const float g : picture.grey) {
        const auto v = static_cast<std::uint8_t>(std::lround(255.0F * g));
        image.rgba.insert(image.rgba.end(), {v, v, v, 255});
    }
    const std::vector<std::uint8_t> bytes = png_of(image);
    return scratch.file("fly.png", std::string(bytes.begin(), bytes.end()));
}

std::string place(const glm::dvec2& p) { return write_number(p.x) + "," + write_number(p.y); }

} // namespace

TEST_CASE("a tail too long by half a shank is named with its millimetres, step and cure") {
    const Scratch scratch;
    const OpenFly fly = long_tailed();
    const FlyPhoto photo = photo_of(fly);
    std::vector<std::string> said{"measure",    png(scratch, photo.picture),
                                  "--recipe",   "sill-dun",
                                  "--size",     "14",
                                  "--standard", "club course",
                                  "--json",     "--card"};
    std::string card;
    for (std::size_t i = 0; i < 4; ++i) card += (i > 0 ? "," : "") + place(*photo.truth.at[i]);
    said.push_back(card);
    for (const PhotoSpot s : {PhotoSpot::eye, PhotoSpot::bend, PhotoSpot::tail_end,
                              PhotoSpot::body_start, PhotoSpot::body_end, PhotoSpot::hackle_tip}) {
        said.push_back("--mark");
        said.push_back(std::string(name(s)) + "=" + place(*photo.truth[s]));
    }
    const Json json = test::wrapwright(said).json()["fly"];
    const double shank = in_millimetres(fly.rig.hooks[0].shank.value);
    // Tolerance  half a body's thickness: the tail's root lies on the body, its mark on the shank
    CHECK(within(json["eye_to_bend_mm"].get<double>(), shank, 0.05));
    bool found = false;
    for (const Json& part : json["parts"]) {
        if (part["part"] != "tail") continue;
        found = true;
        CHECK(within(part["length_mm"].get<double>(), 1.5 * shank, 0.3));
        CHECK(within(part["target_mm"].get<double>(), shank, 1e-3));
        CHECK(within(part["off_mm"].get<double>(), 0.5 * shank, 0.3));
        CHECK(part["low_mm"].get<double>() < part["length_mm"].get<double>());
        CHECK(part["verdict"].get<std::string>().starts_with("too long by "));
    }
    CHECK(found);
    const auto own = own_measure(fly.pattern, fly.tied, Measured::tail);
    REQUIRE(own);
    found = false;
    for (const Json& fault : json["faults"]) {
        if (fault["sign"] != "tail too long") continue;
        found = true;
        CHECK(fault["step"] == own->step + 1);
        CHECK(fault["mend_until_step"] >= own->step + 1);
        CHECK_FALSE(fault["cure"].get<std::string>().empty());
    }
    CHECK(found);
}

TEST_CASE("marks without a recipe, or with a word that is no place, are refused plainly") {
    const Scratch scratch;
    const std::string file = png(scratch, {4, 4, std::vector<float>(16, 0.5F)});
    const Ran bare =
        test::wrapwright({"measure", file, "--scale", "0,0,3,0=1mm", "--mark", "eye=1,1"});
    CHECK(bare.code == 2);
    CHECK(bare.err.find("give --recipe") != std::string::npos);
    const Ran odd = test::wrapwright(
        {"measure", file, "--scale", "0,0,3,0=1mm", "--mark", "elbow=1,1", "--recipe", "sill-dun"});
    CHECK(odd.code == 2);
    CHECK(odd.err.find("elbow") != std::string::npos);
}

TEST_CASE("a batch of twelve tails shows its spread, and which fly is farthest off") {
    // Source  mean and n - 1 deviation of these numbers worked by hand: sum 55.2, squares 0.2
    const Json json =
        test::wrapwright({"proportions", "sill-dun", "--size", "14", "--json", "--batch",
                          "tail=4.5,4.6,4.7,4.6,4.5,4.6,4.7,4.6,4.6,4.6,4.3,4.9"})
            .json()["batches"][0];
    CHECK(json["flies"] == 12);
    CHECK(within(json["mean"].get<double>(), 4.6, 1e-6));
    CHECK(within(json["sd"].get<double>(), std::sqrt(0.22 / 11.0), 1e-6));
    CHECK(within(json["low"].get<double>(), 4.3, 1e-9));
    CHECK(within(json["high"].get<double>(), 4.9, 1e-9));
    CHECK(json["twins"] == true);
    const Json strict =
        test::wrapwright({"proportions", "sill-dun", "--size", "14", "--json", "--twins", "5",
                          "--batch", "tail=4.5,4.6,4.7,4.6,4.5,4.6,4.7,4.6,4.6,4.6,4.3,4.9"})
            .json()["batches"][0];
    CHECK(strict["twins"] == false);
    const Ran odd = test::wrapwright({"proportions", "sill-dun", "--batch", "tail=4.5,long"});
    CHECK(odd.code == 2);
}
