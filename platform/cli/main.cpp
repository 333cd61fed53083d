// The command line: reads what was asked for, runs it, and turns failures into one line and a code.

#include "platform/cli/writing.h"

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
    Job job;
    add_plan(app, job);
    add_card(app, job);
    add_check(app, job);
    add_cost(app, job);
    add_tally(app, job);
    add_picture(app, job);
    add_model(app, job);
    add_water(app, job);
    add_reach(app, job);
    add_rules(app, job);
    add_proportions(app, job);
    add_gauge(app, job);
    add_measure(app, job);
    add_read(app, job);
    add_compare(app, job);
    add_share(app, job);
    add_bundle(app, job);
    add_unbundle(app, job);
    add_merge(app, job);
    add_size(app, job);
    add_stock(app, job);
    add_orders(app, job);
    add_need(app, job);
    add_backup(app, job);
    add_restore(app, job);
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
