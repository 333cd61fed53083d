// Hooks, joints and targets in the editor, and the picture of a step.

#include "core/recipe/text.h"
#include "tests/gui/person.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

const Recipe& written(const Person& person) { return person.model.edit.draft().recipe; }

void pick(Person& person, const char* row) {
    person.model = apply(person.model, wish(WishKind::edit_row, 0, row), person.model.now).model;
    ImGui::SetWindowFocus(nullptr);
    person.frame();
    person.frame();
}

/// A large window, so that every row and field is in sight.
constexpr PixelSize tall{3200, 3000};

} // namespace

TEST_CASE("a second base, a joint and a target are typed as lines of the outline") {
    Person person("sill-dun", tall);
    person.press("Write");
    CHECK(person.find("##add to joints") == nullptr); // nothing to join yet
    person.bring("add to bases");
    person.press("add to bases");
    person.type("shank, 20 mm");
    person.key(ImGuiKey_Enter);
    REQUIRE(written(person).bases.size() == 2);
    CHECK(written(person).bases[1].kind == "shank");
    person.bring("add to joints");
    person.press("add to joints");
    person.type("braided wire, 12 mm");
    person.key(ImGuiKey_Enter);
    REQUIRE(written(person).joints.size() == 1);
    CHECK(written(person).joints[0].length.text == "12 mm");
    const std::size_t targets = written(person).targets.size();
    person.bring("add to targets");
    person.press("add to targets");
    person.type("tail: half the shank");
    person.key(ImGuiKey_Enter);
    CHECK(written(person).targets.size() == targets + 1);
    for (const char* row : {"bases[0]", "bases[1]", "joints[0]", "targets[0]"}) {
        CAPTURE(row);
        pick(person, row);
        CHECK(person.shown.fields.size() >= 2);
        for (const DrawnControl& c : person.shown.controls) {
            CHECK(c.box.right() <= static_cast<float>(tall.width));
        }
    }
}

TEST_CASE("a hook is measured in its field, and the fly is run on it at once") {
    Person person("sill-dun", tall);
    person.press("Write");
    pick(person, "bases[0]");
    const double before = person.model.edit.fly->tied.bases[0].hook.shank.value.si;
    person.press("bases[0].measured.shank");
    person.type("11 mm");
    CHECK(person.model.edit.draft().unread.empty());
    REQUIRE(written(person).bases[0].measured);
    CHECK(person.model.edit.halted.empty());
    const Hook& hook = person.model.edit.fly->tied.bases[0].hook;
    CHECK(hook.shank.value.si != before);
    CHECK(hook.shank.value.si == doctest::Approx(11e-3).epsilon(1e-12).scale(0));
}

TEST_CASE("a jig hook that is measured stays a jig, and loses its measure to the same bytes") {
    Person person("weirfoot-jig", tall);
    person.press("Write");
    const std::string before = write_draft(person.model.edit.draft());
    pick(person, "bases[0]");
    person.press("bases[0].measured.shank");
    person.type("8.9 mm");
    REQUIRE(written(person).bases[0].measured);
    CHECK(written(person).bases[0].measured->family == HookFamily::jig);
    CHECK(written(person).bases[0].measured->shape == HookShape::jig);
    for (int i = 0; i < 6; ++i) person.key(ImGuiKey_Backspace);
    CHECK(write_draft(person.model.edit.draft()) == before);
}

TEST_CASE("a step's picture is named in its field") {
    Person person("sill-dun", tall);
    person.press("Write");
    pick(person, "steps[1]");
    person.press("steps[1].picture");
    person.type("wing-upright.jpg");
    CHECK(written(person).steps[1].picture == "wing-upright.jpg");
}
