// Works on the text form, so that no key of a recipe can be forgotten here.
#include "core/share/compare.h"

#include "core/recipe/amount_words.h"
#include "core/recipe/text.h"
#include "core/recipe/text_json.h"
#include "core/units/number_text.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace wrapwright {

namespace {

using json::Kind;
using json::Node;

constexpr std::array<std::string_view, 4> kind_names{"added", "removed", "changed", "moved"};
constexpr std::size_t most_pairs = 1'000'000;

/// A value in words: a text as it is, a list with commas, an amount with its table.
std::string words_of(const Node& node) {
    switch (node.kind) {
    case Kind::text: return node.text;
    case Kind::boolean: return node.text == "true" ? "yes" : "no";
    case Kind::null:
    case Kind::number: return node.text;
    case Kind::list:
    case Kind::object: break;
    }
    std::string words;
    for (const Node& item : node.items) {
        if (!words.empty()) words += node.kind == Kind::list ? ", " : "; ";
        if (node.kind == Kind::object && item.key != "text") {
            words.append(item.key).append(item.kind == Kind::text ? ": " : " ");
        }
        words += words_of(item);
    }
    return words;
}

std::string key_words(std::string_view key) {
    std::string words(key);
    std::replace(words.begin(), words.end(), '_', ' ');
    if (words == "do") words = "action";
    if (words == "linear") words = "thickness";
    return words;
}

std::string text_at(const Node& node, std::string_view key) {
    const Node* member = node.find(key);
    return member != nullptr && member->kind == Kind::text ? member->text : std::string();
}

/// What a part, a material, a base or a target is called.
std::string called(const Node& node) {
    for (const std::string_view key : {"role", "id", "part", "kind"}) {
        const std::string name = text_at(node, key);
        if (!name.empty()) return name;
    }
    return "one";
}

/// The number that a text holds as any measure.
std::optional<Reading> number_of(std::string_view text) {
    const Result<Reading> reading = read_amount(text, {});
    if (!reading.ok() || reading.value().kind == AmountKind::none ||
        reading.value().kind == AmountKind::word) {
        return std::nullopt;
    }
    return reading.value();
}

/// How far the number moved between two texts, where both hold one of the same sort.
std::string moved_by(const Node& a, const Node& b) {
    if (a.kind != Kind::text || b.kind != Kind::text) return {};
    const auto x = number_of(a.text), y = number_of(b.text);
    if (!x || !y || x->unit != y->unit || x->basis != y->basis || x->bare != y->bare) return {};
    const double by = y->value - x->value;
    if (by == 0.0) return {}; // exact: the same text gives the same double
    std::string words = by > 0 ? "+" : "-";
    if (x->basis != Basis::none) return words + write_rounded(std::abs(by), 3) + " of it";
    Reading size = *x;
    size.kind = AmountKind::exact;
    size.low = size.value = size.high = std::abs(by);
    return words + understood(size);
}

struct Comparing {
    std::vector<Change> changes{};

    void add(ChangeKind kind, std::string what, std::string before, std::string after,
             std::string by = {}) {
        changes.push_back(
            {kind, std::move(what), std::move(before), std::move(after), std::move(by)});
    }

    /// The members of two objects that stand for the same thing.
    void members(const std::string& of, const Node& a, const Node& b,
                 std::initializer_list<std::string_view> apart) {
        const auto label = [&](const Node& member) {
            return of.empty() ? key_words(member.key) : of + ", " + key_words(member.key);
        };
        const auto is_apart = [&](const Node& member) {
            return std::find(apart.begin(), apart.end(), member.key) != apart.end();
        };
        for (const Node& x : a.items) {
            if (is_apart(x)) continue;
            const Node* y = b.find(x.key);
            if (y == nullptr) {
                add(ChangeKind::removed, label(x), words_of(x), {});
            } else if (json::one_line(x) != json::one_line(*y)) {
                if (x.kind == Kind::object && y->kind == Kind::object &&
                    x.find("by_size") == nullptr && y->find("by_size") == nullptr &&
                    x.key != "measured") {
                    members(label(x), x, *y, {});
                } else {
                    add(ChangeKind::changed, label(x), words_of(x), words_of(*y), moved_by(x, *y));
                }
            }
        }
        for (const Node& y : b.items) {
            if (!is_apart(y) && a.find(y.key) == nullptr) {
                add(ChangeKind::added, label(y), {}, words_of(y));
            }
        }
    }

    /// Two lists whose items have a key that tells them apart.
    void by_key(std::string_view what, std::string_view key, const Node& a, const Node& b) {
        const auto same = [&](const Node& wanted, const Node& list) -> const Node* {
            for (const Node& item : list.items) {
                if (text_at(item, key) == text_at(wanted, key)) return &item;
            }
            return nullptr;
        };
        bool moved = false;
        const Node* last = nullptr;
        for (const Node& x : a.items) {
            const Node* y = same(x, b);
            if (y == nullptr) {
                add(ChangeKind::removed, called(x), words_of(x), {});
                continue;
            }
            moved = moved || (last != nullptr && y < last);
            last = y;
            members(called(x), x, *y, {});
        }
        for (const Node& y : b.items) {
            if (same(y, a) == nullptr) add(ChangeKind::added, called(y), {}, words_of(y));
        }
        if (moved) add(ChangeKind::moved, std::string("order of the ").append(what), {}, {});
    }

    void steps(const Node& a, const Node& b);
    void one_step(const std::string& of, const Node& a, const Node& b);
};

/// Pairs of steps that say the same, in order, as many as there can be.
std::vector<std::pair<std::size_t, std::size_t>> same_steps(const Node& a, const Node& b) {
    const std::size_t n = a.items.size(), m = b.items.size();
    std::vector<std::pair<std::size_t, std::size_t>> pairs;
    std::vector<std::string> x, y;
    for (const Node& s : a.items) x.push_back(json::one_line(s));
    for (const Node& s : b.items) y.push_back(json::one_line(s));
    if (n * m > most_pairs) {
        for (std::size_t i = 0; i < std::min(n, m); ++i) {
            if (x[i] == y[i]) pairs.emplace_back(i, i);
        }
        return pairs;
    }
    std::vector<std::vector<int>> best(n + 1, std::vector<int>(m + 1, 0));
    for (std::size_t i = n; i-- > 0;) {
        for (std::size_t j = m; j-- > 0;) {
            best[i][j] =
                x[i] == y[j] ? best[i + 1][j + 1] + 1 : std::max(best[i + 1][j], best[i][j + 1]);
        }
    }
    for (std::size_t i = 0, j = 0; i < n && j < m;) {
        if (x[i] == y[j]) {
            pairs.emplace_back(i++, j++);
        } else if (best[i + 1][j] >= best[i][j + 1]) {
            ++i;
        } else {
            ++j;
        }
    }
    return pairs;
}

std::string step_label(std::size_t i) { return "step " + std::to_string(i + 1); }

std::string step_words(const Node& step) {
    const std::string text = text_at(step, "text");
    return text.empty() ? words_of(step) : text;
}

void Comparing::one_step(const std::string& of, const Node& a, const Node& b) {
    members(of, a, b, {"actions"});
    const Node none;
    const Node* x = a.find("actions");
    const Node* y = b.find("actions");
    const std::vector<Node>& before = x != nullptr ? x->items : none.items;
    const std::vector<Node>& after = y != nullptr ? y->items : none.items;
    for (std::size_t i = 0; i < std::max(before.size(), after.size()); ++i) {
        const std::string what = of + ", action " + std::to_string(i + 1);
        if (i >= before.size()) {
            add(ChangeKind::added, what, {}, words_of(after[i]));
        } else if (i >= after.size()) {
            add(ChangeKind::removed, what, words_of(before[i]), {});
        } else if (text_at(before[i], "do") != text_at(after[i], "do")) {
            add(ChangeKind::changed, what, words_of(before[i]), words_of(after[i]));
        } else {
            members(of + ", " + text_at(after[i], "do"), before[i], after[i], {});
        }
    }
}

void Comparing::steps(const Node& a, const Node& b) {
    auto pairs = same_steps(a, b);
    pairs.emplace_back(a.items.size(), b.items.size());
    std::size_t i = 0, j = 0;
    for (const auto& [to_i, to_j] : pairs) {
        for (; i < to_i && j < to_j; ++i, ++j) one_step(step_label(j), a.items[i], b.items[j]);
        for (; i < to_i; ++i) {
            add(ChangeKind::removed, step_label(i), step_words(a.items[i]), {});
        }
        for (; j < to_j; ++j) add(ChangeKind::added, step_label(j), {}, step_words(b.items[j]));
        ++i;
        ++j;
    }
}

} // namespace

std::string_view name(ChangeKind kind) { return kind_names[static_cast<std::size_t>(kind)]; }

std::vector<Change> compare(const Recipe& a, const Recipe& b) {
    const std::string text_a = write_recipe(a), text_b = write_recipe(b);
    Comparing c;
    if (text_a == text_b) return c.changes;
    const Result<Node> x = json::read(text_a), y = json::read(text_b);
    if (!x.ok() || !y.ok()) { // over the limits of the text form
        c.add(ChangeKind::changed, "recipe", a.name, b.name);
        return c.changes;
    }
    const Node none{Kind::list, 0, {}, {}, {}};
    const auto list = [&](const Node& root, std::string_view key) -> const Node& {
        const Node* found = root.find(key);
        return found != nullptr && found->kind == Kind::list ? *found : none;
    };
    c.members({}, x.value(), y.value(),
              {"bases", "joints", "materials", "parts", "steps", "targets"});
    for (const std::string_view key : {"bases", "joints", "materials", "parts"}) {
        c.by_key(key, "id", list(x.value(), key), list(y.value(), key));
    }
    c.by_key("targets", "part", list(x.value(), "targets"), list(y.value(), "targets"));
    c.steps(list(x.value(), "steps"), list(y.value(), "steps"));
    // What only the order of keys or a doubled id tells apart.
    if (c.changes.empty()) c.add(ChangeKind::changed, "order", {}, {});
    return c.changes;
}

std::string change_words(const Change& change) {
    std::string words = change.what + ": ";
    switch (change.kind) {
    case ChangeKind::moved: return change.what + " changed";
    case ChangeKind::added: return words + "new: " + change.after;
    case ChangeKind::removed: return words + "gone: " + change.before;
    case ChangeKind::changed: break;
    }
    words.append(change.before).append(" -> ").append(change.after);
    if (!change.by.empty()) words.append(" (").append(change.by).append(")");
    return words;
}

} // namespace wrapwright
