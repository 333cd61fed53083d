#pragma once
// The visitor of core/recipe/text_keys.h that fills a struct from one JSON object.

#include "core/recipe/text_json.h"
#include "core/recipe/text_keys.h"
#include "core/recipe/text_words.h"

#include <algorithm>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright::detail {

/// What the objects of one document share: the part ids, where the walk is, the first error.
struct Document {
    std::vector<std::string> parts{};
    std::string path{};
    std::optional<Error> error{};
    bool any_version = false; ///< a newer one is read as far as it can be
    int version = 0;          ///< what the file says
};

/// The hook that a base's "measured" says, completed; nothing where it says none.
[[nodiscard]] std::optional<Hook> read_measured(std::string_view json);

/// Reads the members of one object, each at most once; after an error the rest does nothing.
class ObjectReader {
  public:
    ObjectReader(Document& document, const json::Node& object);

    void header(std::string_view format, int newest);
    void text(std::string_view key, std::string& value);
    void texts(std::string_view key, std::vector<std::string>& value);
    void flag(std::string_view key, bool& value, bool usual);
    void whole(std::string_view key, int& value, int least, int most);
    void share(std::string_view key, double& value, bool& said);
    void tint(std::string_view key, std::string& value);
    void hole(std::string_view key, std::string& value);
    void sizes(std::string_view key, std::string& value, std::vector<HookSize>& list);
    void amount(std::string_view key, Amount& value, AmountOf measure);
    void spot(std::string_view key, Spot& value);
    void made_of(std::string_view key, std::vector<Ingredient>& value);
    void hook(std::string_view key, std::optional<Hook>& value, std::string& written);
    void hook_size(std::string_view key, std::optional<HookSize>& value);
    void length(std::string_view key, Estimate<Length>& value);
    void plain_length(std::string_view key, Length& value);
    void plain_mass(std::string_view key, Mass& value);
    void angle(std::string_view key, Estimate<Angle>& value);
    void angle(std::string_view key, Angle& value);
    /// Keeps every member that no call has asked for.
    void rest(std::vector<UnknownKey>& unknown);
    /// Refuses every member that no call has asked for, where a slip would go unseen.
    void refuse_rest(std::string_view what);

    template <class E>
    void word(std::string_view key, E& value, E = E{}) {
        at(key, [&](const json::Node& node) {
            if (!expect(node, json::Kind::text, "a word")) return;
            const auto words = words_of<E>();
            if (const auto i = find_word(node.text, words)) {
                value = static_cast<E>(*i);
            } else {
                refuse(node, unknown_word(node.text, Words<E>::what, words));
            }
        });
    }
    template <class E>
    void maybe_word(std::string_view key, std::optional<E>& value) {
        E known{};
        if (object_.find(key) == nullptr) return;
        word(key, known);
        value = known;
    }
    template <class T>
    void object(std::string_view key, T& value) {
        at(key, [&](const json::Node& node) { read_object(node, value); });
    }
    template <class T>
    void list(std::string_view key, std::vector<T>& value) {
        each(key, [&](const json::Node& node) { read_object(node, value.emplace_back()); });
    }

  private:
    template <class F>
    void at(std::string_view key, F read) {
        const json::Node* node = take(key);
        if (node == nullptr || document_.error) return;
        const std::size_t end = document_.path.size();
        if (end > 0) document_.path += '.';
        document_.path += key;
        read(*node);
        document_.path.resize(end);
    }
    template <class F>
    void each(std::string_view key, F read) {
        at(key, [&](const json::Node& list) {
            if (!expect(list, json::Kind::list, "a list in square brackets")) return;
            const std::size_t end = document_.path.size();
            for (std::size_t i = 0; i < list.items.size() && !document_.error; ++i) {
                document_.path += '[' + std::to_string(i) + ']';
                read(list.items[i]);
                document_.path.resize(end);
            }
        });
    }
    template <class T>
    void read_object(const json::Node& node, T& value) {
        if (!expect(node, json::Kind::object, "an object in braces")) return;
        ObjectReader inner(document_, node);
        visit_keys(inner, value);
    }

    const json::Node* take(std::string_view key);
    bool expect(const json::Node& node, json::Kind kind, std::string_view wanted);
    /// Stores the first error, at that value and the path where the walk is.
    void refuse(const json::Node& node, Error error);
    Reading reading(const json::Node& node, AmountOf measure);
    Reading lenient_reading(const json::Node& node, AmountOf measure);
    void amount_object(const json::Node& node, Amount& value, AmountOf measure);
    void sized_texts(const json::Node& node, Amount& value, AmountOf measure);
    void spot_text(const json::Node& node, Spot& value);
    void length_text(const json::Node& node, Length& value);
    void angle_text(const json::Node& node, Angle& value);
    template <class Q, class ReadText>
    void estimate(std::string_view key, Estimate<Q>& value, ReadText read_text);

    Document& document_;
    const json::Node& object_;
    std::vector<bool> met_;
};

} // namespace wrapwright::detail
