#pragma once
// The state machine of one run, shared by the files that give each operation its effect. Internal
// to core/tying: everything outside reads the record.

#include "core/tying/limits.h"
#include "core/tying/record.h"
#include "core/tying/wrap.h"

#include <array>
#include <initializer_list>
#include <limits>
#include <string_view>

namespace wrapwright {

/// One base while it is being dressed.
struct BaseWork {
    BaseState state;
    Profile now;
    bool profile_changed = false;
    int thread_part = none;
    Length foremost{std::numeric_limits<double>::infinity()}; ///< dressing nearest to the eye
    double hitches = 0.0;      ///< half hitches since the last plain turn
    double finish_turns = 0.0; ///< of the last whip finish, until the next plain turn
    bool ballast = false, ballast_locked = false;
    int ballast_act = none;
    Length ballast_front{}, ballast_rear{};
    double ballast_turns = 0.0;
    Length wet_from{}, wet_to{};
    Duration wet_for{};
};

/// The run: the inputs, the record that is being written, and the working state of each base.
struct Run {
    const Pattern& pattern;
    const Rig& rig;
    const Resolved& numbers;
    const Limits& limits;
    Tied& out;
    std::array<BaseWork, 4> bases{};
    int act_index = 0;
    double thread_length = 0.0;

    // --- looking things up
    [[nodiscard]] const Act& act() const {
        return numbers.acts[static_cast<std::size_t>(act_index)];
    }
    [[nodiscard]] BaseWork& work(int base) { return bases[static_cast<std::size_t>(base)]; }
    [[nodiscard]] BaseRun& base_run(int base) { return out.bases[static_cast<std::size_t>(base)]; }
    [[nodiscard]] const Stuff& stuff(int material) const {
        return numbers.materials[static_cast<std::size_t>(material)];
    }
    [[nodiscard]] std::string_view role(int part) const;
    [[nodiscard]] std::string_view side(int part) const;
    /// The newest strand of that part that is not trimmed; nullptr where there is none.
    [[nodiscard]] Strand* strand_of(int part);
    /// Whether a later act (from `after` on) winds that part.
    [[nodiscard]] bool wound_later(int part, int after) const;

    // --- places
    [[nodiscard]] Length place(const Anchor& anchor, Length otherwise);
    void extend(int part, Length a, Length b);

    // --- writing the record (run.cpp)
    Finding& find(Level level, Rule rule, Length at, std::initializer_list<Evidence> evidence = {});
    void take(int part, int material, double count, double turns, Length length,
              const Estimate<Mass>& mass);
    Placed& put(PlacedKind kind, Length at, Length to);

    // --- thread (thread.cpp)
    /// Whether thread is on the base; a finding where it is not.
    bool thread_ready();
    void thread_to(Length at);
    /// Turns of thread at one place, centred on it; a heap of them settles, unless it is `spread` by
    /// the caller.
    void thread_turns(Length at, double turns, bool spread = false);
    /// Thread wound over a stretch; part none means the thread's own part. Where it does not `stay`
    /// as it was wound, the caller says what becomes of the profile.
    Wrap thread_wrap(const WrapAsk& ask, int part, bool stays = true);
    void check_pull(Force pull, Length at);

    // --- strands (strand.cpp)
    /// Winds a strand of a part: the record of the winding, the profile, the tally.
    Wrap wind_strand(const WrapAsk& ask, int part, int material, Sense sense, Spacing spacing);
    void check_wet(Length a, Length b);
    void check_head(Length at, bool is_thread);

    /// A number, or a usual one where the recipe has only a word or nothing.
    double number_or(const Number& n, double usual, Kind kind, Length at);
};

/// The stretch that turns of thread at one place cover.
[[nodiscard]] Length holding_span(const Stuff& thread, double turns);

[[nodiscard]] inline Evidence length_of(Length x) { return {Kind::length, x.si}; }
[[nodiscard]] inline Evidence turns_of(double x) { return {Kind::turns, x}; }
[[nodiscard]] inline Evidence count_of(double x) { return {Kind::count, x}; }
[[nodiscard]] inline Evidence ratio_of(double x) { return {Kind::ratio, x}; }
[[nodiscard]] inline Evidence force_of(Force x) { return {Kind::force, x.si}; }
[[nodiscard]] inline Evidence time_of(Duration x) { return {Kind::time, x.si}; }

// Effects, one for each operation; the table in op_table.cpp names them.
void do_flatten_barb(Run&, const Act&);
void do_slide_on(Run&, const Act&);
void do_clamp(Run&, const Act&);
void do_unclamp(Run&, const Act&);
void do_turn_hook(Run&, const Act&);
void do_join(Run&, const Act&);
void do_wind_ballast(Run&, const Act&);
void do_lock_ballast(Run&, const Act&);
void do_start_thread(Run&, const Act&);
void do_lay_base(Run&, const Act&);
void do_travel(Run&, const Act&);
void do_build_up(Run&, const Act&);
void do_tie_in(Run&, const Act&);
void do_bind_down(Run&, const Act&);
void do_wind(Run&, const Act&);
void do_rib(Run&, const Act&);
void do_tie_off(Run&, const Act&);
void do_trim(Run&, const Act&);
void do_palmer(Run&, const Act&);
void do_collar(Run&, const Act&);
void do_set_wing(Run&, const Act&);
void do_wind_post(Run&, const Act&);
void do_pull_over(Run&, const Act&);
void do_stack_hair(Run&, const Act&);
void do_spin_hair(Run&, const Act&);
void do_shape(Run&, const Act&);
void do_dub(Run&, const Act&);
void do_half_hitch(Run&, const Act&);
void do_whip_finish(Run&, const Act&);
void do_cut_thread(Run&, const Act&);
void do_coat(Run&, const Act&);
void do_cure(Run&, const Act&);
void do_clear_eye(Run&, const Act&);
void do_mark(Run&, const Act&);

/// What can only be seen when everything has been done.
void check_end(Run&);

} // namespace wrapwright
