// Every number of every demo recipe's record, for the web's program and the desktop's to be compared:
// record FOLDER prints a line for each, exact in hexadecimal. record FOLDER REPEATS prints the least
// seconds that tying all of them at all sizes took, for tests/bench/web.mjs.

#include "core/recipe/text.h"
#include "core/tying/tie.h"
#include "core/units/hook_size.h"
#include "core/water/in_water.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

namespace {

using namespace wrapwright;

std::string stem;

void say(const char* what, std::size_t i, double value) {
    std::printf("%s %s %zu %a\n", stem.c_str(), what, i, value);
}

template <class Q>
void say(const char* what, std::size_t i, const Estimate<Q>& e) {
    say(what, i, e.value.si);
    say(what, i, e.low.si);
    say(what, i, e.high.si);
}

void say_winding(std::size_t i, const Winding& w) {
    for (const double v :
         {w.from.si, w.to.si, w.turns, w.pitch.si, w.growth, w.width.si, w.height.si, w.core.si,
          w.length.si, w.mass.si, w.pieces, w.start_turn, w.slope, w.grip}) {
        say("winding", i, v);
    }
}

void say_placed(std::size_t i, const Placed& p) {
    for (const double v : {p.at.si, p.to.si, p.reach.si, p.count, p.root.si, p.thick.si, p.lean.si,
                           p.spread.si, p.around.si, p.mass.si}) {
        say("placed", i, v);
    }
}

void say_record(const Tied& t) {
    for (std::size_t i = 0; i < t.bases.size(); ++i) {
        say("no go", i, t.bases[i].no_go.si);
        say("bead rear", i, t.bases[i].bead_rear.si);
        say("wire", i, t.bases[i].line.stations().tip.si);
    }
    for (std::size_t i = 0; i < t.profiles.size(); ++i) {
        for (const double d : t.profiles[i].diameter) say("diameter", i, d);
    }
    for (std::size_t i = 0; i < t.moments.size(); ++i) {
        say("thread", i, t.moments[i].thread_length);
        say("thread at", i, t.moments[i].state.thread.at.si);
        say("thread turns", i, t.moments[i].state.thread.turns);
        say("head room", i, t.moments[i].state.head_room.si);
    }
    for (std::size_t i = 0; i < t.windings.size(); ++i) say_winding(i, t.windings[i]);
    for (std::size_t i = 0; i < t.placed.size(); ++i) say_placed(i, t.placed[i]);
    for (std::size_t i = 0; i < t.strands.size(); ++i) {
        const Strand& s = t.strands[i];
        for (const double v :
             {s.at.si, s.tie_turns, s.off_turns, s.wound_turns, s.count, s.free.si, s.used.si}) {
            say("strand", i, v);
        }
    }
    for (std::size_t i = 0; i < t.takes.size(); ++i) {
        const PartTake& take = t.takes[i];
        for (const double v : {take.count, take.turns, take.length.si, take.volume.si}) {
            say("take", i, v);
        }
        say("take mass", i, take.mass);
    }
    for (std::size_t i = 0; i < t.extents.size(); ++i) {
        say("extent", i, t.extents[i].front.si);
        say("extent", i, t.extents[i].rear.si);
    }
    for (std::size_t i = 0; i < t.findings.size(); ++i) {
        say("finding", i, static_cast<double>(t.findings[i].rule));
        say("finding at", i, t.findings[i].at.si);
        for (const Evidence& e : t.findings[i].evidence) say("finding number", i, e.si);
    }
    say("mass", 0, t.mass);
}

bool say_water(const Pattern& pattern, const Resolved& numbers, const Tied& tied) {
    const Result<InWater> water = in_water(pattern, numbers, tied, {});
    if (!water.ok()) return false;
    const InWater& w = water.value();
    say("in water: mass", 0, w.mass);
    say("in water: volume", 0, w.volume);
    say("in water: weight", 0, w.weight);
    say("in water: sinks", 0, w.sink);
    say("in water: sinks freely", 0, w.sink_free);
    say("in water: to the bed", 0, w.to_bed);
    for (const double v :
         {w.centres.of_mass.x, w.centres.of_mass.y, w.centres.of_volume.x, w.centres.of_volume.y,
          w.drag_at.x, w.drag_at.y, w.hang.si, w.attitude.si, w.ride.delta.si, w.ride.doubt.si,
          w.film.margin, w.start.time.si}) {
        say("in water", 0, v);
    }
    for (std::size_t i = 0; i < w.drift.size(); ++i) say("in water: deep", i, w.drift[i].depth);
    return true;
}

/// What one recipe is tied from, at each of its sizes.
struct Job {
    Pattern pattern{};
    std::vector<Rig> rigs{};
};

bool add_jobs(const std::filesystem::path& file, std::vector<Job>& jobs) {
    std::ifstream in(file, std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    Result<Recipe> recipe = read_recipe(text);
    if (!recipe.ok()) return false;
    Result<Pattern> pattern = link(std::move(recipe).value());
    if (!pattern.ok()) return false;
    if (pattern.value().actions.empty()) return true; // words alone have no numbers
    Job& job = jobs.emplace_back();
    job.pattern = std::move(pattern).value();
    for (const HookSize& size : job.pattern.recipe.size_list) {
        Result<Rig> rig = make_rig(job.pattern, size);
        if (!rig.ok()) return false;
        job.rigs.push_back(std::move(rig).value());
    }
    return true;
}

double time_of(const std::vector<Job>& jobs, int repeats) {
    Resolved resolved;
    Tied tied;
    double least = 1e9;
    for (int i = 0; i < repeats; ++i) {
        const auto began = std::chrono::steady_clock::now();
        for (const Job& job : jobs) {
            for (const Rig& rig : job.rigs) {
                if (!resolve(job.pattern, rig, resolved).ok()) return 0.0;
                tie(job.pattern, rig, resolved, Limits{}, tied);
            }
        }
        const std::chrono::duration<double> took = std::chrono::steady_clock::now() - began;
        least = std::min(least, took.count());
    }
    return least;
}

bool say_job(const Job& job) {
    for (const Rig& rig : job.rigs) {
        Resolved resolved;
        if (!resolve(job.pattern, rig, resolved).ok()) return false;
        Tied tied;
        tie(job.pattern, rig, resolved, Limits{}, tied);
        stem = job.pattern.recipe.id + " " + write_hook_size(tied.size);
        say_record(tied);
        if (!say_water(job.pattern, resolved, tied)) return false;
    }
    return true;
}

} // namespace

int main(int argc, char** argv) {
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(argc > 1 ? argv[1] : ".")) {
        if (entry.path().extension() == ".json") files.push_back(entry.path());
    }
    std::sort(files.begin(), files.end());
    std::vector<Job> jobs;
    for (const auto& file : files) {
        if (!add_jobs(file, jobs)) {
            std::fprintf(stderr, "record: %s cannot be read\n", file.string().c_str());
            return 1;
        }
    }
    if (argc > 2) {
        std::printf("%.9f\n", time_of(jobs, std::atoi(argv[2])));
        return 0;
    }
    const bool said = std::all_of(jobs.begin(), jobs.end(), say_job);
    return said && !jobs.empty() ? 0 : 1;
}
