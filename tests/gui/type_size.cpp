// Letters are as large as reading from a distance asks.

#include "gui/type_size.h"
#include "tests/support/close.h"

#include <doctest/doctest.h>
#include <fstream>
#include <imgui.h>
#include <iterator>
#include <string>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

constexpr const char* font_file = "/usr/share/fonts/opentype/inter/Inter-Medium.otf";

/// A font file's tables, as far as they are needed here.
/// Source  OpenType 1.9: table directory; OS/2 sCapHeight at 88; hhea ascender at 4, descender at 6
class FontFile {
  public:
    FontFile() {
        std::ifstream file(font_file, std::ios::binary);
        bytes_.assign(std::istreambuf_iterator<char>(file), {});
        REQUIRE(bytes_.size() > 1000);
    }
    [[nodiscard]] int number(const std::string& table, std::size_t at) const {
        for (std::size_t i = 0; i < two(4); ++i) {
            const std::size_t row = 12 + 16 * i;
            if (bytes_.compare(row, 4, table) != 0) continue;
            const std::size_t start = two(row + 8) << 16U | two(row + 10);
            return static_cast<short>(two(start + at));
        }
        FAIL("no table " << table);
        return 0;
    }

  private:
    [[nodiscard]] std::size_t two(std::size_t at) const {
        return static_cast<std::size_t>(static_cast<unsigned char>(bytes_[at])) << 8U |
               static_cast<unsigned char>(bytes_[at + 1]);
    }
    std::string bytes_;
};

} // namespace

TEST_CASE("a letter of 20 minutes of arc is 4.65 mm high at 0.8 m") {
    // Source     ISO 9241-303:2011 (from memory): character height by the angle that it fills;
    //            2 * 800 mm * tan(10 minutes of arc) = 4.6542 mm, worked by hand
    // Tolerance  the last digit written
    CHECK(within(in_millimetres(letter_height(metres(0.8), least_letter)), 4.6542, 5e-5));
}

TEST_CASE("the share of the capitals is that of the typeface's own tables") {
    const FontFile font;
    const double share = static_cast<double>(font.number("OS/2", 88)) /
                         (font.number("hhea", 4) - font.number("hhea", 6));
    CHECK(within(capital_share, share, 1e-12));
}

TEST_CASE("capitals fill at least 20 minutes of arc as they are drawn, at every distance") {
    ImFontAtlas atlas;
    for (const double distance : {0.4, 0.8, 1.5, 3.0, 4.0}) {
        for (const double dots : {2.5, 3.78, 6.0}) {
            CAPTURE(distance);
            CAPTURE(dots);
            const TypeSizes sizes = type_sizes(metres(distance), dots, {1280, 800});
            ImFont* font = atlas.AddFontFromFileTTF(font_file, sizes.small);
            REQUIRE(font != nullptr);
            REQUIRE(atlas.Build());
            const ImFontGlyph* capital = font->FindGlyph('H');
            const double high = static_cast<double>(capital->Y1 - capital->Y0) / dots;
            const double angle = 2.0 * std::atan(high / 2.0 / (distance * 1e3));
            // Tolerance  a glyph's box is whole dots and may stand over by a part of one
            CHECK(angle * 180.0 * 60.0 / std::numbers::pi >= 20.0 - 1e-9);
            CHECK(sizes.main >= sizes.small);
            CHECK(sizes.huge >= sizes.main);
            atlas.Clear();
        }
    }
}
