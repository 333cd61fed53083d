// The command line: reads what was asked for, runs it, and turns failures into one line and a code.

#include "platform/cli/writing.h"

#include <CLI/CLI.hpp>
#include <fmt/core.h>

#include <cstdio>
#include <exception>

namespace {

using namespace wrapwright::cli;

constexpr const char* footer =
    "RECIPE is a file, or the bare name of one that came along, such as weirfoot-jig.\n"
    "Exit codes: 0 fine; 1 something stops the fly or is beyond a limit; 2 a file or an option "
    "cannot be used;\n"
    "3 the outside world refused, such as a folder that cannot be written.\n"
    "NO_COLOR=1 switches colour off.";

int complain(const Failure& failure) {
    fmt::print(stderr, "{}\n", failure.line);
    return static_cast<int>(failure.code);
}

int run(int argc, char** argv) {
    CLI::App app{"wrapwright: what a recipe comes to on a hook", "wrapwright"};
    app.footer(footer);
    app.require_subcommand(1);
    app.set_version_flag("--version", "wrapwright " WW_VERSION);
    const Command program(app);
    Job job;
    add_plan(program, job);
    add_card(program, job);
    add_check(program, job);
    add_cost(program, job);
    add_tally(program, job);
    add_picture(program, job);
    add_model(program, job);
    add_water(program, job);
    add_reach(program, job);
    add_rules(program, job);
    add_proportions(program, job);
    add_gauge(program, job);
    add_measure(program, job);
    add_read(program, job);
    add_compare(program, job);
    add_share(program, job);
    add_bundle(program, job);
    add_unbundle(program, job);
    add_merge(program, job);
    add_size(program, job);
    add_stock(program, job);
    add_orders(program, job);
    add_need(program, job);
    add_backup(program, job);
    add_restore(program, job);
    try {
        app.parse(argc, argv);
    } catch (const CLI::Success& done) { // --help and --version
        return app.exit(done);
    } catch (const CLI::ParseError& error) {
        return complain({ExitCode::bad_input, printable(std::string("wrapwright: ") + error.what() +
                                                        "; see wrapwright --help")});
    }
    try {
        const ExitCode code = job();
        if (std::fflush(stdout) != 0) {
            give_up("standard output", "cannot be written", "check where the output goes");
        }
        return static_cast<int>(code);
    } catch (const Failure& failure) {
        return complain(failure);
    }
}

} // namespace

int main(int argc, char** argv) {
    try {
        return run(argc, argv);
    } catch (const std::exception& error) { // out of memory and the like
        std::fputs("wrapwright: ", stderr);
        std::fputs(error.what(), stderr);
        std::fputs("; please report this with the file that caused it\n", stderr);
        return static_cast<int>(ExitCode::outside);
    }
}
