#include "core/recipe/text_json.h"

#include "core/units/scan.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <iterator>

namespace wrapwright::json {

namespace {

using Position = std::string_view::const_iterator;

/// Reads the text and tells its owner how far it has come.
struct Cursor {
    // NOLINTBEGIN(readability-identifier-naming): std::iterator_traits asks for these names
    using iterator_category = std::input_iterator_tag;
    using value_type = char;
    using difference_type = std::ptrdiff_t;
    using pointer = const char*;
    using reference = const char&;
    // NOLINTEND(readability-identifier-naming)

    Position at{};
    Position* seen = nullptr;

    reference operator*() const { return *at; }
    Cursor& operator++() {
        *seen = ++at;
        return *this;
    }
    Cursor operator++(int) {
        const Cursor old = *this;
        ++*this;
        return old;
    }
    friend bool operator==(const Cursor& a, const Cursor& b) { return a.at == b.at; }
};

/// Builds the tree from the parser's events, and stops at the first thing that it cannot hold.
class Builder {
  public:
    Builder(std::string_view text, const Position& seen)
        : text_(text), counted_(text.begin()), seen_(seen) {}

    bool null() { return scalar(Kind::null, "null"); }
    bool boolean(bool value) { return scalar(Kind::boolean, value ? "true" : "false"); }
    bool number_integer(std::int64_t value) {
        // The parser counts "-0" as a whole number, which has no sign for it.
        return number(value == 0 ? "-0" : std::to_string(value));
    }
    bool number_unsigned(std::uint64_t value) { return number(std::to_string(value)); }
    bool number_float(double, std::string written) {
        // The lexer has put the decimal sign of the process's locale where the point was.
        const auto point = written.find_first_not_of("0123456789+-eE");
        if (point != std::string::npos) written[point] = '.';
        return number(std::move(written));
    }
    bool string(std::string& value) { return scalar(Kind::text, std::move(value)); }
    bool binary(std::vector<std::uint8_t>&) { return false; }
    bool start_object(std::size_t) { return open(Kind::object); }
    bool start_array(std::size_t) { return open(Kind::list); }
    bool end_array() { return close(); }
    bool end_object() { return check_keys(open_.back()->items) && close(); }
    bool key(std::string& name) {
        count_lines(0);
        key_ = std::move(name);
        return true;
    }
    bool parse_error(std::size_t, const std::string& last, const nlohmann::detail::exception& why) {
        const std::string_view reason = why.what();
        const auto says = [&](std::string_view words) {
            return reason.find(words) != std::string_view::npos;
        };
        const bool broken_line = says("control character");
        // A text that runs over the end of its line is at fault in the line where it stands.
        count_lines(broken_line ? 1 : 0);
        if (why.id == 406) {
            return refuse(ErrorCode::out_of_range, detail::quoted(last) + " is beyond any number",
                          "write a number of a size that things have");
        }
        if (says("UTF-8")) {
            return refuse(ErrorCode::malformed, "a byte that is not UTF-8",
                          "save the file in the encoding UTF-8");
        }
        if (says("missing closing quote") || says("unexpected end of input")) {
            return refuse(ErrorCode::malformed, "the text ends before it is complete",
                          "look for a missing quotation mark, bracket or brace; or take an "
                          "undamaged copy");
        }
        if (broken_line) {
            return refuse(ErrorCode::malformed, "a line break or control character inside a text",
                          "close the quotation marks in the same line; write a line break as \\n");
        }
        if (says("expected end of input")) {
            return refuse(ErrorCode::malformed, "something follows after the end",
                          "let the file end with the brace that closes the first one");
        }
        const std::string word = detail::lowered(token());
        if (word == "nan" || word == "infinity" || word == "-infinity" || word == "inf") {
            return refuse(ErrorCode::malformed, detail::quoted(token()) + " is no number",
                          "leave out what is not known");
        }
        return refuse(ErrorCode::malformed, "not JSON at " + detail::quoted(token()),
                      "look there for a missing comma, quotation mark or bracket, or one too many");
    }

    Node root{};
    std::optional<Error> error{};

  private:
    void count_lines(std::ptrdiff_t held_back) {
        const Position end = std::max(counted_, seen_ - held_back);
        line_ += static_cast<int>(std::count(counted_, end, '\n'));
        counted_ = end;
    }
    bool refuse(ErrorCode code, std::string message, std::string remedy) {
        error = Error{code, std::move(message), std::move(remedy), {line_, path()}};
        return false;
    }
    /// What stands where the parser gave up, up to the next blank or mark on either side.
    [[nodiscard]] std::string_view token() const {
        constexpr std::string_view ends = " \t\r\n,:[]{}";
        const auto seen = static_cast<std::size_t>(seen_ - text_.begin());
        const std::size_t last = seen == 0 ? 0 : seen - 1;
        const std::size_t before =
            last == 0 ? std::string_view::npos : text_.find_last_of(ends, last - 1);
        const std::size_t start = before == std::string_view::npos ? 0 : before + 1;
        const std::size_t end = text_.find_first_of(ends, last + 1);
        return text_.substr(start, end == std::string_view::npos ? end : end - start);
    }
    /// The keys and places from the outermost value to where the parser is, the first few of them.
    [[nodiscard]] std::string path() const {
        std::string path;
        const auto step = [&](const std::string& key) {
            if (!path.empty() && !key.empty()) path += '.';
            path += key;
        };
        constexpr std::size_t most = 8; // a recipe has no more
        if (open_.size() > most) {
            for (std::size_t i = 0; i < most; ++i) step(open_[i]->key);
            return path;
        }
        for (std::size_t i = 0; i < open_.size(); ++i) {
            step(open_[i]->key);
            if (open_[i]->kind == Kind::list && i + 1 < open_.size()) {
                path += '[' + std::to_string(open_[i]->items.size() - 1) + ']';
            }
        }
        step(key_);
        return path;
    }
    Node* add(Kind kind, std::string text) {
        if (++values_ > most_values) {
            refuse(ErrorCode::too_large, "more than 200,000 values",
                   "split the file: a recipe has a few hundred");
            return nullptr;
        }
        Node* node = &root;
        if (!open_.empty()) node = &open_.back()->items.emplace_back();
        *node = {kind, line_, std::move(key_), std::move(text), {}};
        key_.clear();
        return node;
    }
    bool scalar(Kind kind, std::string text) {
        count_lines(0);
        return add(kind, std::move(text)) != nullptr;
    }
    bool number(std::string text) {
        count_lines(1); // the parser has to see the byte after a number to know that it ended
        return add(Kind::number, std::move(text)) != nullptr;
    }
    bool open(Kind kind) {
        count_lines(0);
        if (open_.size() >= static_cast<std::size_t>(most_levels)) {
            return refuse(ErrorCode::too_large, "nested deeper than 48 levels",
                          "a recipe needs 8 levels at most: look for brackets that do not close");
        }
        Node* node = add(kind, {});
        if (node == nullptr) return false;
        open_.push_back(node); // stays valid: nothing is added beside it while it is open
        return true;
    }
    bool close() {
        count_lines(0);
        open_.pop_back();
        return true;
    }
    bool check_keys(const std::vector<Node>& members) {
        std::vector<const Node*> sorted;
        sorted.reserve(members.size());
        for (const Node& member : members) sorted.push_back(&member);
        // By address among equals, so that the later one is the second.
        std::sort(sorted.begin(), sorted.end(), [](const Node* a, const Node* b) {
            return a->key != b->key ? a->key < b->key : a < b;
        });
        const auto twice =
            std::adjacent_find(sorted.begin(), sorted.end(),
                               [](const Node* a, const Node* b) { return a->key == b->key; });
        if (twice == sorted.end()) return true;
        const Node& second = **std::next(twice);
        line_ = second.line;
        key_ = second.key;
        return refuse(ErrorCode::duplicate,
                      "the key " + detail::quoted(second.key) + " is there twice, first in line " +
                          std::to_string((*twice)->line),
                      "keep one of the two");
    }

    std::vector<Node*> open_{};
    std::string key_{};
    std::string_view text_;
    Position counted_;
    const Position& seen_;
    int line_ = 1;
    int values_ = 0;
};

} // namespace

const Node* Node::find(std::string_view member) const {
    const auto it = std::find_if(items.begin(), items.end(),
                                 [&](const Node& item) { return item.key == member; });
    return kind != Kind::object || it == items.end() ? nullptr : &*it;
}

Result<Node> read(std::string_view text, std::size_t most) {
    if (text.size() > most) {
        return Error{ErrorCode::too_large,
                     "the text is longer than " + std::to_string(most >> 20U) + " MiB",
                     "take a recipe file: it has a few thousand bytes, and photos stay beside it"};
    }
    if (detail::trimmed(text).empty()) {
        return Error{ErrorCode::malformed,
                     "the text is empty",
                     "start from one of the demo recipes, or take an undamaged copy",
                     {1, {}}};
    }
    if (text.starts_with("\xff\xfe") || text.starts_with("\xfe\xff")) {
        return Error{ErrorCode::malformed,
                     "the text is in UTF-16",
                     "save the file in the encoding UTF-8",
                     {1, {}}};
    }
    Position seen = text.begin();
    Builder builder(text, seen);
    const Cursor first{text.begin(), &seen};
    const Cursor last{text.end(), &seen};
    const bool ok = nlohmann::json::sax_parse(first, last, &builder);
    if (builder.error) return *builder.error;
    WW_ASSERT(ok);
    return std::move(builder.root);
}

} // namespace wrapwright::json
