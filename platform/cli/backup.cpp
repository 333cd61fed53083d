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

void add_backup(CLI::App& app, Job& job) {
    auto options = std::make_shared<BackupOptions>();
    CLI::App* command = app.add_subcommand("backup", "The whole library as one file");
    command->add_option("--data", options->data, "folder of the library; else the usual one");
    command->add_option("-o,--out", options->file, "FILE.db")->required();
    command->callback([options, &job] { job = [options] { return run_backup(*options); }; });
}

void add_restore(CLI::App& app, Job& job) {
    auto options = std::make_shared<BackupOptions>();
    CLI::App* command =
        app.add_subcommand("restore", "What a backup would bring, and with --yes it");
    command->add_option("FILE", options->file, "a file that backup made")->required();
    command->add_option("--data", options->data, "folder of the library; else the usual one");
    command->add_flag("--yes", options->yes, "do it; what is here is backed up beside it first");
    command->callback([options, &job] { job = [options] { return run_restore(*options); }; });
}

} // namespace wrapwright::cli
