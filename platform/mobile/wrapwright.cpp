#include "platform/mobile/wrapwright.h"

#include "core/bench/sitting.h"
#include "core/recipe/text.h"
#include "core/tying/finding_text.h"
#include "core/tying/step_text.h"
#include "core/tying/tie.h"
#include "core/units/hook_size.h"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <memory>
#include <string>
#include <string_view>

struct ww_bench {
    wrapwright::HookSize size{};
    wrapwright::Pattern pattern{};
    wrapwright::Rig rig{};
    wrapwright::Resolved resolved{};
    wrapwright::Tied tied{};
    std::vector<wrapwright::Event> events{};
    std::vector<wrapwright::Stop> course{};
    wrapwright::SittingState state{};
};

namespace {

using namespace wrapwright;

constexpr int most_flies = 1000;

static_assert(WW_AMBIGUOUS == static_cast<int>(ErrorCode::ambiguous) + 1);
static_assert(WW_UNDO == static_cast<int>(EventKind::undo));
static_assert(WW_NOTE == static_cast<int>(Level::note));

ww_code code_of(ErrorCode code) { return static_cast<ww_code>(static_cast<int>(code) + 1); }

/// Whole letters of a text into so many bytes with a closing 0.
std::size_t copy(std::string_view text, char* to, std::size_t room) {
    if (room == 0) return text.size();
    std::size_t n = std::min(text.size(), room - 1);
    if (n < text.size()) {
        while (n > 0 && (static_cast<unsigned char>(text[n]) & 0xC0U) == 0x80U) --n;
    }
    std::memcpy(to, text.data(), n);
    to[n] = '\0';
    return text.size();
}

ww_code refuse(const Error& from, ww_error* to) {
    const ww_code code = code_of(from.code);
    if (to == nullptr) return code;
    to->code = code;
    to->line = from.place.line;
    std::string message = from.message;
    if (!from.place.key.empty()) message.insert(0, from.place.key + ": ");
    copy(message, to->message, sizeof to->message);
    copy(from.remedy, to->remedy, sizeof to->remedy);
    return code;
}

/// The element of a list; null where the index leads nowhere.
template <class T>
const T* at(const std::vector<T>& list, int index) {
    const bool there = index >= 0 && static_cast<std::size_t>(index) < list.size();
    return there ? &list[static_cast<std::size_t>(index)] : nullptr;
}

Result<bool> fill(ww_bench& bench, std::string_view text, const char* size) {
    Result<Recipe> recipe = read_recipe(text);
    if (!recipe.ok()) return recipe.error();
    Result<Pattern> pattern = link(std::move(recipe).value());
    if (!pattern.ok()) return pattern.error();
    bench.pattern = std::move(pattern).value();
    if (size != nullptr) {
        const Result<WrittenHookSize> read = parse_hook_size(size);
        if (!read.ok()) return read.error();
        bench.size = read.value().size;
    } else {
        std::vector<HookSize> sizes = bench.pattern.recipe.size_list;
        std::sort(sizes.begin(), sizes.end());
        if (!sizes.empty()) bench.size = sizes[sizes.size() / 2];
    }
    if (bench.pattern.actions.empty()) return true; // words alone: a record without moments
    Result<Rig> rig = make_rig(bench.pattern, bench.size);
    if (!rig.ok()) return rig.error();
    bench.rig = std::move(rig).value();
    Result<bool> resolved = resolve(bench.pattern, bench.rig, bench.resolved);
    if (resolved.ok()) tie(bench.pattern, bench.rig, bench.resolved, Limits{}, bench.tied);
    return resolved;
}

std::string finding_words(const ww_bench& bench, const Finding& finding) {
    const FindingText text = describe(bench.pattern, finding);
    std::string words = text.message;
    if (!text.remedy.empty()) words.append("; ").append(text.remedy);
    return words;
}

std::string caution_words(const ww_bench& bench, int step) {
    std::string words;
    for (const Caution one : each_of(step_cautions(bench.pattern, bench.resolved, step))) {
        if (!words.empty()) words += '\n';
        words += caution_text(one);
    }
    return words;
}

std::string text_of(const ww_bench& bench, int which, int index) {
    const Recipe& recipe = bench.pattern.recipe;
    switch (which) {
    case WW_TEXT_NAME: return recipe.name.empty() ? recipe.id : recipe.name;
    case WW_TEXT_SIZE: return write_hook_size(bench.size);
    case WW_TEXT_STEP:
        if (const auto* step = at(recipe.steps, index)) return step->text;
        break;
    case WW_TEXT_CAUTION:
        if (at(recipe.steps, index) != nullptr) return caution_words(bench, index);
        break;
    case WW_TEXT_ACTION:
        if (at(bench.tied.moments, index) != nullptr) {
            return action_text(bench.pattern, bench.resolved, bench.tied, index);
        }
        break;
    case WW_TEXT_FINDING:
        if (const auto* finding = at(bench.tied.findings, index)) {
            return finding_words(bench, *finding);
        }
        break;
    case WW_TEXT_PART:
        if (const auto* part = at(recipe.parts, index)) return part->id;
        break;
    case WW_TEXT_MATERIAL:
        if (const auto* material = at(recipe.materials, index)) {
            return material->text.empty() ? material->id : material->text;
        }
        break;
    }
    return {};
}

} // namespace

extern "C" {

int ww_interface(void) { return WW_INTERFACE; }

ww_code ww_open(const char* recipe, size_t recipe_bytes, const char* size, ww_bench** bench,
                ww_error* error) {
    *bench = nullptr;
    auto opened = std::make_unique<ww_bench>();
    const Result<bool> filled = fill(*opened, {recipe, recipe_bytes}, size);
    if (!filled.ok()) return refuse(filled.error(), error);
    *bench = opened.release();
    return WW_OK;
}

void ww_close(ww_bench* bench) { delete bench; }

ww_code ww_get_record(const ww_bench* bench, ww_record* record) {
    const Tied& t = bench->tied;
    const auto count = [](const auto& list) { return static_cast<int>(list.size()); };
    *record = {count(bench->pattern.recipe.steps),
               count(t.moments),
               count(t.windings),
               count(t.takes),
               count(t.findings),
               t.mass.value.si,
               t.mass.low.si,
               t.mass.high.si};
    return WW_OK;
}

ww_code ww_get_moment(const ww_bench* bench, int index, ww_moment* moment) {
    const Moment* m = at(bench->tied.moments, index);
    if (m == nullptr) return WW_OUT_OF_RANGE;
    *moment = {m->step,         m->base, m->windings, m->findings, m->restore_point ? 1 : 0,
               m->thread_length};
    return WW_OK;
}

ww_code ww_get_winding(const ww_bench* bench, int index, ww_winding* winding) {
    const Winding* w = at(bench->tied.windings, index);
    if (w == nullptr) return WW_OUT_OF_RANGE;
    *winding = {w->step,      w->base,      w->part,   w->layer,    w->against_thread ? 1 : 0,
                w->from.si,   w->to.si,     w->turns,  w->pitch.si, w->width.si,
                w->height.si, w->length.si, w->mass.si};
    return WW_OK;
}

ww_code ww_get_take(const ww_bench* bench, int index, ww_take* take) {
    const PartTake* t = at(bench->tied.takes, index);
    if (t == nullptr) return WW_OUT_OF_RANGE;
    *take = {t->step, t->part, t->material, t->count, t->turns, t->length.si, t->mass.value.si};
    return WW_OK;
}

ww_code ww_get_finding(const ww_bench* bench, int index, ww_finding* finding) {
    const Finding* f = at(bench->tied.findings, index);
    if (f == nullptr) return WW_OUT_OF_RANGE;
    *finding = {f->step, static_cast<ww_level>(f->level)};
    return WW_OK;
}

size_t ww_get_text(const ww_bench* bench, int which, int index, char* to, size_t room) {
    return copy(text_of(*bench, which, index), to, room);
}

ww_code ww_happen(ww_bench* bench, const ww_event* event) {
    const int kind = event->kind;
    if (kind < WW_BEGIN || kind > WW_UNDO || !std::isfinite(event->at)) return WW_OUT_OF_RANGE;
    const bool begins = kind == WW_BEGIN;
    if (begins != bench->events.empty()) return WW_MALFORMED;
    if (begins && (event->number < 1 || event->number > most_flies)) return WW_OUT_OF_RANGE;
    if (!begins && event->at < bench->events.back().at.si) return WW_OUT_OF_RANGE;
    if (begins) bench->course = course_of(bench->pattern, bench->tied, event->number);
    bench->events.push_back({static_cast<EventKind>(kind), seconds(event->at), event->number,
                             event->text == nullptr ? "" : event->text});
    bench->state = fold(bench->pattern, bench->tied, bench->events);
    return WW_OK;
}

ww_code ww_where(const ww_bench* bench, ww_place* place) {
    if (bench->events.empty()) return WW_NOT_FOUND;
    const SittingState& s = bench->state;
    const Stop* stop = at(bench->course, s.at);
    *place = {s.at,
              static_cast<int>(bench->course.size()),
              stop == nullptr ? -1 : stop->fly,
              stop == nullptr ? -1 : stop->moment,
              s.turns,
              s.breaks,
              static_cast<int>(bench->events.size())};
    return WW_OK;
}
}
