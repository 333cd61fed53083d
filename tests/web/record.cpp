// Every number of every demo recipe's record, for the web's program and the desktop's to be compared:
// record FOLDER prints a line for each, exact in hexadecimal. record FOLDER REPEATS prints the least
// seconds that tying all of them at all sizes took, for tests/bench/web.mjs.

#include "core/recipe/text.h"
#include "core/tying/tie.h"
#include "core/units/hook_size.h"

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

void say_record(const Tied& t) {
    for (std::size_t i = 0; i < t.moments.size(); ++i) {
        say("thread", i, t.moments[i].thread_length);
        say("head room", i, t.moments[i].state.head_room.si);
    }
    for (std::size_t i = 0; i < t.windings.size(); ++i) {
        const Winding& w = t.windings[i];
        say("winding from", i, w.from.si);
        say("winding to", i, w.to.si);
        say("winding turns", i, w.turns);
        say("winding pitch", i, w.pitch.si);
        say("winding length", i, w.length.si);
        say("winding mass", i, w.mass.si);
        say("winding slope", i, w.slope);
    }
    for (std::size_t i = 0; i < t.placed.size(); ++i) {
        say("placed at", i, t.placed[i].at.si);
        say("placed reach", i, t.placed[i].reach.si);
        say("placed mass", i, t.placed[i].mass.si);
    }
    for (std::size_t i = 0; i < t.takes.size(); ++i) {
        say("take length", i, t.takes[i].length.si);
        say("take mass", i, t.takes[i].mass.value.si);
    }
    for (std::size_t i = 0; i < t.findings.size(); ++i) {
        say("finding", i, static_cast<double>(t.findings[i].rule));
    }
    say("mass", 0, t.mass.value.si);
    say("mass low", 0, t.mass.low.si);
    say("mass high", 0, t.mass.high.si);
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
