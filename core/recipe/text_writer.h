#pragma once
// The visitor of core/recipe/text_keys.h that makes one JSON object of a struct.

#include "core/recipe/text_json.h"
#include "core/recipe/text_keys.h"
#include "core/recipe/text_words.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace wrapwright::detail {

/// Adds a member for every value that says something; what is empty or usual is left out.
class ObjectWriter {
  public:
    void header(std::string_view format, int newest);
    void text(std::string_view key, const std::string& value);
    void texts(std::string_view key, const std::vector<std::string>& value);
    void flag(std::string_view key, bool value, bool usual);
    void whole(std::string_view key, int value, int least, int most);
    void share(std::string_view key, double value, bool said);
    void tint(std::string_view key, const std::string& value) { text(key, value); }
    void hole(std::string_view key, const std::string& value) { text(key, value); }
    void sizes(std::string_view key, const std::string& value, const std::vector<HookSize>&) {
        text(key, value);
    }
    void amount(std::string_view key, const Amount& value, AmountOf measure);
    void spot(std::string_view key, const Spot& value);
    void made_of(std::string_view key, const std::vector<Ingredient>& value);
    void hook(std::string_view key, const std::optional<Hook>& value, const std::string& written);
    void hook_size(std::string_view key, const std::optional<HookSize>& value);
    void length(std::string_view key, const Estimate<Length>& value);
    void angle(std::string_view key, const Estimate<Angle>& value);
    void angle(std::string_view key, const Angle& value);
    void rest(const std::vector<UnknownKey>& unknown);

    template <class E>
    void word(std::string_view key, E value) {
        add(key, json::Kind::text, std::string(word_of(value)));
    }
    template <class E>
    void word(std::string_view key, E value, E usual) {
        if (value != usual) word(key, value);
    }
    template <class E>
    void maybe_word(std::string_view key, const std::optional<E>& value) {
        if (value) word(key, *value);
    }
    template <class T>
    void object(std::string_view key, const T& value) {
        ObjectWriter inner;
        visit_keys(inner, value);
        if (!inner.object_.items.empty()) add(key, std::move(inner.object_));
    }
    template <class T>
    void list(std::string_view key, const std::vector<T>& values) {
        if (values.empty()) return;
        json::Node list{json::Kind::list};
        for (const T& value : values) {
            ObjectWriter inner;
            visit_keys(inner, value);
            list.items.push_back(std::move(inner.object_));
        }
        add(key, std::move(list));
    }

    [[nodiscard]] const json::Node& object_so_far() const { return object_; }

  private:
    void add(std::string_view key, json::Kind kind, std::string text);
    void add(std::string_view key, json::Node node);

    json::Node object_{json::Kind::object};
};

} // namespace wrapwright::detail
