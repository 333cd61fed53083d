#include "core/card/page.h"

#include "core/units/number_text.h"

#include <cmath>

namespace wrapwright {

namespace {

std::string attribute(std::string_view name, std::string_view value) {
    std::string out(" ");
    return out.append(name).append("=\"").append(value).append("\"");
}

std::string mm(double value) { return svg_number(value).append("mm"); }

} // namespace

std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
        switch (c) {
        case '&': out.append("&amp;"); break;
        case '<': out.append("&lt;"); break;
        case '>': out.append("&gt;"); break;
        case '"': out.append("&quot;"); break;
        default:
            // Control characters have no place in a page.
            if (static_cast<unsigned char>(c) >= 0x20 || c == '\n') out.push_back(c);
        }
    }
    return out;
}

std::string svg_number(double value) {
    std::string text = write_rounded(std::isfinite(value) ? value : 0.0, 4);
    return text;
}

void Drawing::line(double x1, double y1, double x2, double y2, double thick, std::string_view ink,
                   std::string_view id) {
    body_.append("<line");
    if (!id.empty()) body_.append(attribute("id", id));
    body_.append(attribute("x1", svg_number(x1))).append(attribute("y1", svg_number(y1)));
    body_.append(attribute("x2", svg_number(x2))).append(attribute("y2", svg_number(y2)));
    body_.append(attribute("stroke", ink)).append(attribute("stroke-width", svg_number(thick)));
    body_.append("/>\n");
}

void Drawing::rect(double x, double y, double width, double height, std::string_view fill,
                   std::string_view ink, double thick) {
    body_.append("<rect").append(attribute("x", svg_number(x)));
    body_.append(attribute("y", svg_number(y))).append(attribute("width", svg_number(width)));
    body_.append(attribute("height", svg_number(height))).append(attribute("fill", fill));
    body_.append(attribute("stroke", ink)).append(attribute("stroke-width", svg_number(thick)));
    body_.append("/>\n");
}

void Drawing::disc(double x, double y, double radius, std::string_view fill, std::string_view ink,
                   double thick) {
    body_.append("<circle").append(attribute("cx", svg_number(x)));
    body_.append(attribute("cy", svg_number(y))).append(attribute("r", svg_number(radius)));
    body_.append(attribute("fill", fill)).append(attribute("stroke", ink));
    body_.append(attribute("stroke-width", svg_number(thick))).append("/>\n");
}

void Drawing::words(double x, double y, double size, std::string_view text,
                    std::string_view anchor) {
    body_.append("<text").append(attribute("x", svg_number(x)));
    body_.append(attribute("y", svg_number(y))).append(attribute("font-size", svg_number(size)));
    body_.append(attribute("text-anchor", anchor)).append(">").append(escaped(text));
    body_.append("</text>\n");
}

void Drawing::path(std::string_view d, std::string_view fill, std::string_view ink, double thick) {
    body_.append("<path").append(attribute("d", d)).append(attribute("fill", fill));
    body_.append(attribute("stroke", ink)).append(attribute("stroke-width", svg_number(thick)));
    body_.append(" stroke-linecap=\"round\" stroke-linejoin=\"round\"/>\n");
}

std::string Drawing::svg() const {
    std::string out("<svg xmlns=\"http://www.w3.org/2000/svg\"");
    out.append(attribute("width", mm(width_))).append(attribute("height", mm(height_)));
    std::string box("0 0 ");
    box.append(svg_number(width_)).append(" ").append(svg_number(height_));
    return out.append(attribute("viewBox", box)).append(">\n").append(body_).append("</svg>\n");
}

void scale_bar(Drawing& drawing, double x, double y, int mm) {
    drawing.line(x, y, x + mm, y, 0.3, "#000", "scale-mm");
    for (int i = 0; i <= mm; ++i) {
        const double tall = i % 10 == 0 ? 3.0 : i % 5 == 0 ? 2.2 : 1.4;
        drawing.line(x + i, y, x + i, y - tall, 0.12);
    }
    std::string words = std::to_string(mm);
    words.append(" mm: measure it; if it is not, print again at 100 %");
    drawing.words(x, y + 3.2, 2.8, words);
    constexpr double inch = 25.4;
    const double low = y + 7.5;
    drawing.line(x, low, x + inch, low, 0.3, "#000", "scale-in");
    for (int i = 0; i <= 16; ++i) {
        const double tall = i % 16 == 0 ? 3.0 : i % 4 == 0 ? 2.0 : 1.2;
        drawing.line(x + i * inch / 16.0, low, x + i * inch / 16.0, low - tall, 0.12);
    }
    drawing.words(x + inch + 2.0, low, 2.8, "1 in");
}

std::string html_page(const PageSize& size, std::string_view title, std::string_view body) {
    std::string out(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>");
    out.append(escaped(title)).append("</title>\n<style>\n@page { size: ");
    out.append(mm(size.width)).append(" ").append(mm(size.height)).append("; margin: ");
    out.append(mm(size.margin)).append("; }\n");
    out.append("html { -webkit-print-color-adjust: exact; print-color-adjust: exact; }\n"
               "body { margin: 0; color: #000; background: #fff; "
               "font-family: Inter, 'Helvetica Neue', Arial, sans-serif; }\n"
               "svg { display: block; } svg text { fill: #000; }\n"
               ".page { break-after: page; } .page:last-child { break-after: auto; }\n"
               ".keep { break-inside: avoid; }\n");
    out.append("@media screen { body { padding: ").append(mm(size.margin)).append("; max-width: ");
    out.append(mm(size.width - 2.0 * size.margin)).append("; } }\n");
    return out.append("</style>\n</head>\n<body>\n").append(body).append("</body>\n</html>\n");
}

} // namespace wrapwright
