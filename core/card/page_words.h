#pragma once
// Words that several pages share; for core/card alone.

#include "core/card/recipe_pages.h"

namespace wrapwright::detail {

/// "Weirfoot Jig #14".
[[nodiscard]] std::string page_title(const PageFacts& facts);

/// "<p>text</p>" with a class; nothing for no text.
[[nodiscard]] std::string paragraph(std::string_view text, std::string_view kind = {});

/// Weight, sink rate and ride as the water has them, in sentences.
[[nodiscard]] std::vector<std::string> water_lines(const PageFacts& facts);

/// Every caution that a step asks for, each once, and the words on lead where it is in the fly.
[[nodiscard]] std::vector<std::string> caution_lines(const PageFacts& facts);

/// The fly in a drawing of its own, so many times life size but no wider than that; after a moment,
/// or finished.
[[nodiscard]] std::string fly_picture(const PageFacts& facts, double fold, double widest,
                                      double highest, int moment = none);

/// 20 mm and 1 in, true to scale.
[[nodiscard]] std::string small_scale();

} // namespace wrapwright::detail
