#include "core/loose/spellings.h"

#include "core/units/scan.h"

#include <algorithm>

namespace wrapwright {

std::vector<std::string> Spellings::alike(std::string_view word) const {
    std::vector<std::string> all{detail::lowered(word)};
    const auto found = others_.find(all.front());
    if (found != others_.end()) all.insert(all.end(), found->second.begin(), found->second.end());
    return all;
}

Result<Spellings> Spellings::read(std::string_view text) {
    Spellings spellings;
    for (int number = 1; !text.empty(); ++number) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        std::string_view line = detail::trimmed(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
        if (line.empty() || line.front() == '#') continue;
        std::vector<std::string> group;
        while (!line.empty()) {
            const std::size_t comma = std::min(line.find(','), line.size());
            group.push_back(detail::lowered(detail::trimmed(line.substr(0, comma))));
            line.remove_prefix(std::min(comma + 1, line.size()));
        }
        const bool plain = std::none_of(group.begin(), group.end(), [](const std::string& word) {
            return word.empty() || word.find(' ') != std::string::npos;
        });
        if (group.size() < 2 || !plain) {
            return Error{ErrorCode::malformed,
                         "a line of spellings without two single words",
                         "write words that mean the same, with commas: tyer, tier",
                         {number, {}}};
        }
        for (const std::string& word : group) {
            std::vector<std::string>& others = spellings.others_[word];
            for (const std::string& other : group) {
                const bool known =
                    other == word || std::find(others.begin(), others.end(), other) != others.end();
                if (!known) others.push_back(other);
            }
        }
    }
    return spellings;
}

} // namespace wrapwright
