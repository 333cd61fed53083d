// The recipe as an outline: one row for each entry, and one to add the next.

#include "gui/edit_fields.h"

#include "core/units/hook_size.h"

#include <algorithm>

namespace wrapwright {

namespace {

class Outline {
  public:
    explicit Outline(const EditWork& work) : work_(work), r_(work.draft().recipe) {}

    std::vector<EditRow> take() {
        EditRow& head = row({}, r_.name.empty() ? "Without a name yet" : r_.name, sizes(), 0);
        head.trouble = unread_under("");
        heading("Parts");
        for (std::size_t i = 0; i < r_.parts.size(); ++i) {
            const Part& p = r_.parts[i];
            row(row_of("parts", static_cast<int>(i)), p.role.empty() ? p.id : p.role,
                p.text.empty() ? made_of(p) : p.text, 0);
        }
        adds("parts", "add a part, as tail: cock fibres", 0);
        heading("Steps");
        for (std::size_t i = 0; i < r_.steps.size(); ++i) step(i);
        adds("steps", "add a step in your words", 0);
        heading("Materials");
        for (std::size_t i = 0; i < r_.materials.size(); ++i) {
            const RecipeMaterial& m = r_.materials[i];
            row(row_of("materials", static_cast<int>(i)), m.text.empty() ? m.id : m.text,
                std::string(name(m.kind)), 0);
        }
        adds("materials", "add a material, as fine copper wire", 0);
        heading("Tied on");
        for (std::size_t i = 0; i < r_.bases.size(); ++i) {
            const Base& b = r_.bases[i];
            row(row_of("bases", static_cast<int>(i)), b.text.empty() ? b.kind : b.text,
                b.measured ? b.kind + ", measured" : b.kind, 0);
        }
        for (std::size_t i = 0; i < r_.joints.size(); ++i) {
            const Joint& j = r_.joints[i];
            row(row_of("joints", static_cast<int>(i)), j.from + " to " + j.to,
                j.length.text.empty() ? "joint" : "joint, " + j.length.text, 0);
        }
        adds("bases", "add a hook, shank, tube or needle", 0);
        if (r_.bases.size() > 1) adds("joints", "add a joint, as braided wire, 12 mm", 0);
        heading("Targets of its own");
        for (std::size_t i = 0; i < r_.targets.size(); ++i) {
            const OwnTarget& t = r_.targets[i];
            row(row_of("targets", static_cast<int>(i)), t.part, t.length.text, 0);
        }
        adds("targets", "add a target, as tail: half the shank", 0);
        return std::move(rows_);
    }

  private:
    EditRow& row(std::string path, std::string label, std::string aside, int depth) {
        EditRow& one = rows_.emplace_back();
        one.row = std::move(path);
        one.label = std::move(label);
        one.aside = std::move(aside);
        one.depth = depth;
        if (!one.row.empty()) one.trouble = unread_under(one.row + ".");
        return one;
    }
    void heading(std::string words) {
        EditRow& one = rows_.emplace_back();
        one.label = std::move(words);
        one.heading = true;
    }
    void adds(std::string list, std::string hint, int depth) {
        EditRow& one = rows_.emplace_back();
        one.adds = std::move(list);
        one.label = std::move(hint);
        one.depth = depth;
    }

    void step(std::size_t i) {
        const Step& s = r_.steps[i];
        const std::string path = row_of("steps", static_cast<int>(i));
        std::string label = std::to_string(i + 1) + ". ";
        label += s.text.empty() ? "in the actions' own words" : s.text;
        EditRow& head = row(path, std::move(label), {}, 0);
        head.trouble = head.trouble || found_in(static_cast<int>(i));
        for (std::size_t a = 0; a < s.actions.size(); ++a) {
            const Action& action = s.actions[a];
            std::string words(name(action.op));
            if (!action.part.empty()) words += ": " + action.part;
            row(row_of(path + ".actions", static_cast<int>(a)), std::move(words), details(action),
                1);
        }
        if (step_of(work_.row).step != i) return; // one such row is enough
        EditRow& one = rows_.emplace_back();
        one.adds = path + ".actions";
        one.label = "do something in step " + std::to_string(i + 1);
        one.depth = 1;
        one.pick = true;
    }

    static std::string details(const Action& a) {
        std::string words;
        const auto add = [&](const std::string& more) {
            if (!more.empty()) words.append(words.empty() ? "" : ", ").append(more);
        };
        add(a.turns.text);
        add(a.count.text);
        if (a.from.given() && a.to.given()) {
            add(a.from.text + " to " + a.to.text);
        } else {
            add(a.from.given() ? "from " + a.from.text : a.to.text);
        }
        return words;
    }

    std::string made_of(const Part& p) const {
        std::string words;
        for (const Ingredient& in : p.made_of) {
            words.append(words.empty() ? "" : ", ").append(in.material);
        }
        return words;
    }

    std::string sizes() const {
        std::string text = r_.fly_class;
        if (!r_.sizes.empty()) text.append(text.empty() ? "#" : "  #").append(r_.sizes);
        return text;
    }

    bool unread_under(const std::string& path) const {
        const auto& all = work_.draft().unread;
        return std::any_of(all.begin(), all.end(), [&](const Unread& u) {
            // The head has the keys that are in no list.
            return path.empty()
                       ? u.path.find('[') == std::string::npos || u.path.starts_with("bases[")
                       : u.path.starts_with(path);
        });
    }

    bool found_in(int step) const {
        if (!work_.fly || !work_.halted.empty()) return false;
        const auto& all = work_.fly->tied.findings;
        return std::any_of(all.begin(), all.end(), [&](const Finding& f) {
            return f.step == step && f.level != Level::note;
        });
    }

    const EditWork& work_;
    const Recipe& r_;
    std::vector<EditRow> rows_{};
};

} // namespace

std::vector<EditRow> rows_of(const EditWork& work) { return Outline(work).take(); }

} // namespace wrapwright
