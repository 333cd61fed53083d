#include "platform/cli/commands.h"
#include "platform/cli/library.h"

#include <fmt/core.h>

#include <ctime>
#include <memory>

namespace wrapwright::cli {

namespace {

struct BackupOptions {
    std::string data, file;
    bool yes = false;
};

ExitCode run_backup(const BackupOptions& options) {
    Store store = open_there(data_folder(options.data), false);
    or_give_up(store.back_up(options.file));
    const StoreCount count = or_give_up(store.count());
    fmt::print("{}: {} recipes, {} sittings\n", options.file, count.recipes, count.sittings);
    return ExitCode::fine;
}

void print_names(const char* what, const std::vector<std::string>& names) {
    if (names.empty()) return;
    fmt::print("{}\n", what);
    for (const std::string& name : names) fmt::print("  {}\n", printable(name));
}

ExitCode run_restore(const BackupOptions& options) {
    Store store = open_there(data_folder(options.data), true);
    const RestorePreview preview = or_give_up(store.look_into(options.file));
    const auto line = [](const char* where, const StoreCount& c) {
        fmt::print("{}: {} recipes in {} revisions, {} hooks, {} sittings, {} events\n", where,
                   c.recipes, c.revisions, c.hooks, c.sittings, c.events);
    };
    line("here ", preview.here);
    line("there", preview.there);
    print_names("only there, and new here:", preview.only_there);
    print_names("only here, and gone:", preview.only_here);
    if (!options.yes) {
        fmt::print("nothing was changed; --yes restores it\n");
        return ExitCode::fine;
    }
    const auto before = or_give_up(store.restore(options.file, std::time(nullptr)));
    fmt::print("restored; what was here is in {}\n", before.string());
    return ExitCode::fine;
}

} // namespace

void add_backup(const Command& program, Job& job) {
    auto options = std::make_shared<BackupOptions>();
    const Command command = program.command("backup", "The whole library as one file");
    command.option("--data", options->data, "folder of the library; else the usual one");
    command.option("-o,--out", options->file, "FILE.db").required();
    command.runs(job, options, run_backup);
}

void add_restore(const Command& program, Job& job) {
    auto options = std::make_shared<BackupOptions>();
    const Command command =
        program.command("restore", "What a backup would bring, and with --yes it");
    command.option("FILE", options->file, "a file that backup made").required();
    command.option("--data", options->data, "folder of the library; else the usual one");
    command.flag("--yes", options->yes, "do it; what is here is backed up beside it first");
    command.runs(job, options, run_restore);
}

} // namespace wrapwright::cli
