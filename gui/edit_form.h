#pragma once
// Collects the fields of one row of a recipe; for gui/edit_fields*.cpp alone.

#include "core/recipe/amount_words.h"
#include "core/recipe/pattern.h"
#include "core/units/hook_size.h"
#include "core/units/number_words.h"
#include "gui/edit_fields.h"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace wrapwright {

template <class E>
[[nodiscard]] std::vector<std::string> words_to(E last) {
    std::vector<std::string> all;
    all.reserve(static_cast<std::size_t>(last) + 1);
    for (int i = 0; i <= static_cast<int>(last); ++i) {
        all.emplace_back(name(static_cast<E>(i)));
    }
    return all;
}

/// Collects the fields of one row; each call is a line of the form.
class Form {
  public:
    Form(const EditWork& work, std::string base) : work_(work), base_(std::move(base)) {}

    Field& words(std::string_view key, std::string_view label, const std::string& text,
                 std::string_view help) {
        Field& f = fields_.emplace_back();
        f.path = base_.empty() ? std::string(key) : base_ + "." + std::string(key);
        f.label = label;
        f.help = help;
        f.text = text;
        if (const Unread* unread = work_.draft().unread_at(f.path)) {
            f.text = unread->text;
            f.wrong = unread->why;
        }
        return f;
    }
    /// `number` is what the amount came to on this hook, where the fly could be run.
    void amount(std::string_view key, std::string_view label, const Amount& amount,
                const Number* number, std::string_view help) {
        Field& f = words(key, label, amount.text, help);
        if (!f.wrong.empty()) return;
        const Reading& r = amount.at(work_.size);
        f.said = understood(r);
        const bool table = !amount.by_size.empty();
        if (table && !f.said.empty()) f.said += " at #" + write_hook_size(work_.size);
        if (r.kind == AmountKind::relative && number != nullptr && number->given &&
            number->unit == Unit::length) {
            f.said += ": " + length_words(Length{number->value}, false) + " on this #" +
                      write_hook_size(work_.size);
        }
        const bool word = amount.reading.kind == AmountKind::word && !table;
        if (word || !amount.is.empty()) {
            words(std::string(key) + ".is", "  in numbers", amount.is,
                  "The number that you mean by these words, such as 8 fibres. It is printed beside "
                  "them and the run uses it.");
        }
    }
    void number(std::string_view key, std::string_view label, const std::string& text,
                std::string_view help) {
        words(key, label, text, help).kind = FieldKind::number;
    }
    void spot(std::string_view key, std::string_view label, const Spot& spot,
              std::string_view help) {
        Field& f = words(key, label, spot.text, help);
        f.kind = FieldKind::spot;
        if (f.wrong.empty()) f.said = understood(spot);
    }
    void flag(std::string_view key, std::string_view label, bool on, std::string_view help) {
        Field& f = words(key, label, on ? "yes" : "", help);
        f.kind = FieldKind::flag;
    }
    void pick(std::string_view key, std::string_view label, std::string_view now,
              std::vector<std::string> options, std::string_view help) {
        Field& f = words(key, label, std::string(now), help);
        f.kind = FieldKind::pick;
        f.options = std::move(options);
    }
    void text(std::string_view key, std::string_view label, const std::string& now,
              std::string_view help) {
        words(key, label, now, help).kind = FieldKind::text;
    }
    std::vector<Field> take() { return std::move(fields_); }

  private:
    const EditWork& work_;
    std::string base_;
    std::vector<Field> fields_{};
};

/// The ids of a list, after none.
template <class List>
[[nodiscard]] std::vector<std::string> ids_with_nothing(const List& list) {
    std::vector<std::string> ids{""};
    for (const auto& entry : list) ids.push_back(entry.id);
    return ids;
}

/// The fields of a hook, shank, tube or needle; of what joins two of them; of a target of the recipe's own.
[[nodiscard]] std::vector<Field> base_fields(const EditWork& work, std::size_t i);
[[nodiscard]] std::vector<Field> joint_fields(const EditWork& work, std::size_t i);
[[nodiscard]] std::vector<Field> target_fields(const EditWork& work, std::size_t i);

} // namespace wrapwright
