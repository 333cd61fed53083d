// `compare`, `share`, `bundle` and `unbundle`: recipes told apart and handed on as files.

#include "core/recipe/text.h"
#include "core/share/letter.h"
#include "platform/cli/files.h"
#include "platform/cli/json.h"
#include "platform/cli/shared.h"
#include "platform/cli/terminal.h"
#include "platform/cli/writing.h"
#include "platform/files.h"

#include <fmt/core.h>

#include <cstdio>
#include <memory>

namespace wrapwright::cli {

namespace {

namespace fs = std::filesystem;

struct CompareOptions {
    std::string a, b;
    bool json = false;
};

ExitCode run_compare(const CompareOptions& options) {
    const std::vector<Change> changes =
        compare(one_recipe(options.a).recipe, one_recipe(options.b).recipe);
    if (options.json) {
        Json list = Json::array();
        for (const Change& c : changes) {
            Json one{{"kind", name(c.kind)}, {"what", c.what}};
            if (!c.before.empty()) one["before"] = c.before;
            if (!c.after.empty()) one["after"] = c.after;
            if (!c.by.empty()) one["by"] = c.by;
            list.push_back(std::move(one));
        }
        print(Json{{"changes", std::move(list)}});
        return ExitCode::fine;
    }
    const Terminal to = terminal();
    for (const Change& c : changes) {
        fmt::print("{}\n", wrapped(printable(change_words(c)), to.width, 2));
    }
    if (changes.empty()) fmt::print("no difference\n");
    return ExitCode::fine;
}

struct ShareOptions {
    std::string recipe, out;
};

ExitCode run_share(const ShareOptions& options) {
    const SharedRecipe shared = one_recipe(options.recipe);
    if (!shared.newer.empty()) refuse_usage("the recipe was " + shared.newer, "pass its file on");
    const Result<std::string> letter = write_letter(shared.recipe);
    if (!letter.ok()) refuse(options.recipe, letter.error());
    if (options.out.empty()) {
        std::fwrite(letter.value().data(), 1, letter.value().size(), stdout);
    } else {
        write_file(options.out, letter.value());
    }
    return ExitCode::fine;
}

struct BundleOptions {
    std::vector<std::string> recipes, photos;
    std::string note, out;
};

/// "ID/SIZE=FILE" as a photo of the bundle.
BundleFile photo_of(const std::string& said) {
    const std::size_t equals = said.find('=');
    if (equals == std::string::npos) {
        refuse_usage("--photo " + said + " names no file",
                     "write ID/SIZE=FILE, as sill-dun/14=side.jpg");
    }
    const fs::path file = said.substr(equals + 1);
    Result<std::string> bytes = wrapwright::read_file(file, most_bundle_bytes);
    if (!bytes.ok()) refuse(file, bytes.error());
    return {"photos/" + said.substr(0, equals) + "/" + file.filename().string(),
            std::move(bytes).value()};
}

ExitCode run_bundle(const BundleOptions& options) {
    Bundle bundle;
    bundle.note = options.note;
    for (const std::string& said : options.recipes) {
        for (SharedRecipe& one : open_file(said).recipes) {
            bundle.files.push_back({"recipes/" + one.recipe.id + ".json", std::move(one.text)});
        }
    }
    for (const std::string& said : options.photos) bundle.files.push_back(photo_of(said));
    const Result<std::string> text = write_bundle(bundle);
    if (!text.ok()) refuse_usage(text.error().message, text.error().remedy);
    write_file(options.out, text.value());
    fmt::print("{}: {} files, {} bytes\n", options.out, bundle.files.size(), text.value().size());
    return ExitCode::fine;
}

struct UnbundleOptions {
    std::string file, folder;
};

ExitCode run_unbundle(const UnbundleOptions& options) {
    const Result<std::string> text = wrapwright::read_file(options.file, most_bundle_bytes);
    if (!text.ok()) refuse(options.file, text.error());
    const Result<Bundle> bundle = read_bundle(text.value());
    if (!bundle.ok()) refuse(options.file, bundle.error());
    std::error_code error;
    for (const BundleFile& file : bundle.value().files) {
        if (fs::exists(fs::path(options.folder) / file.path, error)) {
            refuse_usage(file.path + " is there already",
                         "name an empty folder: nothing is overwritten");
        }
    }
    for (const BundleFile& file : bundle.value().files) {
        const fs::path to = fs::path(options.folder) / file.path;
        fs::create_directories(to.parent_path(), error);
        write_file(to, file.bytes);
        fmt::print("{}\n", printable(to.string()));
    }
    return ExitCode::fine;
}

} // namespace

Shared open_file(const std::string& said) {
    const fs::path file = find_recipe(said);
    const Result<std::string> text = wrapwright::read_file(file, most_bundle_bytes);
    if (!text.ok()) refuse(file, text.error());
    Result<Shared> shared = open_shared(text.value());
    if (!shared.ok()) refuse(file, shared.error());
    for (const std::string& why : shared.value().refused) {
        fmt::print(stderr, "left out: {}\n", printable(why));
    }
    return std::move(shared).value();
}

SharedRecipe one_recipe(const std::string& said) {
    Shared shared = open_file(said);
    if (shared.recipes.size() != 1) {
        refuse_usage(said + " holds " + std::to_string(shared.recipes.size()) + " recipes",
                     "name a file with one");
    }
    return std::move(shared.recipes.front());
}

void add_compare(const Command& program, Job& job) {
    auto options = std::make_shared<CompareOptions>();
    const Command command =
        program.command("compare", "What differs between two recipes, in words");
    command.option("A", options->a, "recipe file, letter or name").required();
    command.option("B", options->b, "the other").required();
    command.flag("--json", options->json, "print JSON");
    command.runs(job, options, run_compare);
}

void add_share(const Command& program, Job& job) {
    auto options = std::make_shared<ShareOptions>();
    const Command command = program.command(
        "share", "A recipe as text for a letter or a post; `read` makes the recipe of it again");
    command.option("RECIPE", options->recipe, "recipe file or name").required();
    command.option("-o,--out", options->out, "FILE.txt; else standard output");
    command.runs(job, options, run_share);
}

void add_bundle(const Command& program, Job& job) {
    auto options = std::make_shared<BundleOptions>();
    const Command command = program.command("bundle", "Several recipes with photos in one file");
    command.option("RECIPE", options->recipes, "recipe files, letters, bundles or names")
        .required();
    command.option("--photo", options->photos, "ID/SIZE=FILE, such as sill-dun/14=side.jpg");
    command.option("--note", options->note, "a line for whoever opens it");
    command.option("-o,--out", options->out, "FILE.json").required();
    command.runs(job, options, run_bundle);
}

void add_unbundle(const Command& program, Job& job) {
    auto options = std::make_shared<UnbundleOptions>();
    const Command command = program.command("unbundle", "The files of a bundle, into a folder");
    command.option("BUNDLE", options->file, "as bundle wrote it").required();
    command.option("FOLDER", options->folder, "where to; nothing there is overwritten").required();
    command.runs(job, options, run_unbundle);
}

} // namespace wrapwright::cli
