#pragma once
// A printable page: one HTML file that needs nothing else, and drawings in it at true scale.

#include <string>
#include <string_view>

namespace wrapwright {

/// Paper, or a card, in mm.
struct PageSize {
    std::string_view name{};
    double width = 210.0, height = 297.0, margin = 10.0;
};
/// Source  ISO 216 (A4, A6), ANSI/ASME Y14.1 (Letter); an index card is 3 x 5 in
inline constexpr PageSize page_a4{"A4", 210.0, 297.0, 10.0};
inline constexpr PageSize page_letter{"letter", 215.9, 279.4, 10.0};
inline constexpr PageSize page_a6{"A6", 148.0, 105.0, 5.0};
inline constexpr PageSize page_index{"3x5in", 127.0, 76.2, 4.0};

/// Text as HTML and SVG take it.
[[nodiscard]] std::string escaped(std::string_view text);

/// A number for SVG: up to four decimals, no exponent, a point in every locale.
[[nodiscard]] std::string svg_number(double value);

/// A drawing whose unit is the millimetre; x to the right, y down.
class Drawing {
  public:
    Drawing(double width, double height) : width_(width), height_(height) {}

    void line(double x1, double y1, double x2, double y2, double thick,
              std::string_view ink = "#000", std::string_view id = {});
    void rect(double x, double y, double width, double height, std::string_view fill,
              std::string_view ink = "none", double thick = 0.0);
    void disc(double x, double y, double radius, std::string_view fill, std::string_view ink,
              double thick);
    /// Words whose capitals are 0.72 of `size` high.
    void words(double x, double y, double size, std::string_view text,
               std::string_view anchor = "start");
    /// "M x y L x y ...", as it is.
    void path(std::string_view d, std::string_view fill, std::string_view ink, double thick);
    [[nodiscard]] std::string svg() const;
    [[nodiscard]] double width() const { return width_; }
    [[nodiscard]] double height() const { return height_; }

  private:
    double width_, height_;
    std::string body_{};
};

/// A ruler of that many mm with ticks, and 1 in below it, each with words that tell whether the
/// printer kept the scale.
void scale_bar(Drawing& drawing, double x, double y, int mm);

/// The whole file: pages of that size around what is given; black and white, text that can be selected.
[[nodiscard]] std::string html_page(const PageSize& size, std::string_view title,
                                    std::string_view body);

} // namespace wrapwright
