// Kills, full disks and broken files take nothing that was shown.

#include "tests/platform/store/scratch.h"
#include "tests/support/dice.h"

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <fstream>
#include <thread>

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// Appends events for ever, and tells through the pipe after each that it is kept.
[[noreturn]] void append_for_ever(const std::filesystem::path& folder, int pipe) {
    Result<Store> store = Store::open(folder, some_day);
    if (!store.ok()) _exit(1);
    const auto last = store.value().last_sitting();
    if (!last.ok() || !last.value()) _exit(1);
    auto number = static_cast<std::int32_t>(last.value()->events.size());
    for (;;) {
        const Event event{EventKind::turn, seconds(number), number, "turn"};
        if (!store.value().append(last.value()->id, event).ok()) _exit(2);
        ++number;
        if (write(pipe, &number, sizeof number) != sizeof number) _exit(3);
    }
}

int kills_wanted() {
    const char* said = std::getenv("WW_KILLS");
    return said != nullptr ? std::atoi(said) : 25;
}

void overwrite(const std::filesystem::path& file, std::streamoff at, const std::string& bytes) {
    std::fstream out(file, std::ios::in | std::ios::out | std::ios::binary);
    out.seekp(at);
    out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
}

/// A store with a recipe and a sitting, all of it in the main file.
void fill(const std::filesystem::path& folder) {
    Store store = opened(folder);
    for (const char* name : {"weirfoot-jig", "sill-dun", "lockgate-sedge"}) {
        add(store, demo(name).recipe);
    }
    const auto sitting = got(store.begin_sitting("sill-dun", "14", {}, some_day));
    for (int i = 0; i < 50; ++i) CHECK(store.append(sitting, {EventKind::next, {}, i, {}}).ok());
    Result<Database> db = Database::open(store.file(), false);
    CHECK(got(db.value().execute("PRAGMA wal_checkpoint(TRUNCATE)")));
}

std::vector<std::filesystem::path> set_aside(const std::filesystem::path& folder) {
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        const std::string name = entry.path().filename();
        if (name.starts_with("wrapwright.damaged-") && name.ends_with(".db")) {
            files.push_back(entry.path());
        }
    }
    return files;
}

} // namespace

TEST_CASE("no kill at any moment takes an event that was shown") {
    const Folder folder;
    {
        Store store = opened(folder.path());
        add(store, small_recipe("small", "Small"));
        CHECK(store.begin_sitting("small", "14", {}, some_day).ok());
    }
    Dice dice{20261125};
    std::int32_t shown = 1;
    for (int kill_number = 0; kill_number < kills_wanted(); ++kill_number) {
        int ends[2];
        REQUIRE(pipe(ends) == 0);
        const pid_t child = fork();
        REQUIRE(child >= 0);
        if (child == 0) {
            close(ends[0]);
            append_for_ever(folder.path(), ends[1]);
        }
        close(ends[1]);
        std::int32_t number = 0;
        // Every other kill waits for an event first: opening alone can outlast the sleep.
        if (kill_number % 2 == 1 && read(ends[0], &number, sizeof number) == sizeof number) {
            shown = number;
        }
        std::this_thread::sleep_for(std::chrono::microseconds(500 + 10 * dice.roll(4000)));
        kill(child, SIGKILL);
        int status = 0;
        REQUIRE(waitpid(child, &status, 0) == child);
        CHECK(WIFSIGNALED(status)); // and did not end by itself, with a refusal
        while (read(ends[0], &number, sizeof number) == sizeof number) shown = number;
        close(ends[0]);
        Store store = opened(folder.path());
        CHECK_FALSE(store.read_only()); // the lock went with the process
        const auto events = got(store.last_sitting())->events;
        CHECK(static_cast<std::int32_t>(events.size()) >= shown);
        for (std::size_t i = 1; i < events.size(); ++i) {
            if (events[i].number != static_cast<int>(i)) FAIL("event " << i << " is another");
        }
    }
    CHECK(shown > 1);
}

TEST_CASE("a full disk refuses the event in plain words and takes none that was kept") {
    const Folder folder;
    {
        Store store = opened(folder.path());
        add(store, small_recipe("small", "Small"));
        CHECK(store.begin_sitting("small", "14", {}, some_day).ok());
    }
    int ends[2];
    REQUIRE(pipe(ends) == 0);
    const pid_t child = fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        // The system refuses to write beyond this, as a full disk does.
        std::signal(SIGXFSZ, SIG_IGN);
        const rlimit limit{300'000, 300'000};
        setrlimit(RLIMIT_FSIZE, &limit);
        append_for_ever(folder.path(), ends[1]);
    }
    close(ends[1]);
    std::int32_t shown = 0;
    std::int32_t number = 0;
    while (read(ends[0], &number, sizeof number) == sizeof number) shown = number;
    close(ends[0]);
    int status = 0;
    REQUIRE(waitpid(child, &status, 0) == child);
    REQUIRE(WIFEXITED(status));
    CHECK(WEXITSTATUS(status) == 2); // refused, not crashed
    CHECK(shown > 10);
    Store store = opened(folder.path());
    CHECK(static_cast<std::int32_t>(got(store.last_sitting())->events.size()) == shown);
    CHECK(got(store.check()) == "ok");
}

TEST_CASE("a damaged file is set aside, named and kept, and a new library is begun") {
    struct Damage {
        const char* what;
        std::streamoff at;
        std::size_t bytes;
    };
    for (const Damage& damage : {Damage{"the header", 0, 100}, Damage{"the first page", 100, 3000},
                                 Damage{"inner pages", 4096, 40'000}}) {
        CAPTURE(damage.what);
        const Folder folder;
        fill(folder.path());
        overwrite(folder.path() / "wrapwright.db", damage.at, std::string(damage.bytes, '\x5a'));
        std::filesystem::remove(folder.path() / "wrapwright.db-wal");
        Store store = opened(folder.path());
        const auto aside = set_aside(folder.path());
        REQUIRE(aside.size() == 1);
        CHECK(store.note().find(aside[0].filename().string()) != std::string::npos);
        CHECK(std::filesystem::file_size(aside[0]) > 40'000);
        CHECK(got(store.count()) == StoreCount{});
        add(store, small_recipe("small", "Small"));
    }
}

TEST_CASE("damage among the long texts is found once the window stands, and set aside at the next "
          "start") {
    const Folder folder;
    fill(folder.path());
    const auto file = folder.path() / "wrapwright.db";
    std::ifstream in(file, std::ios::binary);
    const std::string bytes{std::istreambuf_iterator<char>(in), {}};
    const std::size_t text = bytes.find("Weirfoot Jig", 8192);
    REQUIRE(text != std::string::npos);
    // The whole page that holds it: its cells are then no cells.
    overwrite(file, static_cast<std::streamoff>(text / 4096 * 4096), std::string(4096, '\x5a'));
    std::filesystem::remove(folder.path() / "wrapwright.db-wal");
    {
        Store store = opened(folder.path());
        if (set_aside(folder.path()).empty()) {
            const Result<bool> sound = store.check_texts();
            REQUIRE_FALSE(sound.ok());
            CHECK(sound.error().code == ErrorCode::malformed);
        }
    }
    Store store = opened(folder.path());
    CHECK(set_aside(folder.path()).size() == 1);
    CHECK(got(store.count()) == StoreCount{});
    CHECK(got(store.check_texts()));
}

TEST_CASE("a file that is cut short or empty is no reason to fail") {
    for (const std::uintmax_t size : {0U, 1U, 2000U, 5000U, 20000U}) {
        CAPTURE(size);
        const Folder folder;
        fill(folder.path());
        std::filesystem::resize_file(folder.path() / "wrapwright.db", size);
        std::filesystem::remove(folder.path() / "wrapwright.db-wal");
        Store store = opened(folder.path());
        CHECK_FALSE(store.read_only());
        CHECK(got(store.check()) == "ok");
        // A file of a byte or none holds nothing; anything else is kept.
        CHECK(set_aside(folder.path()).size() == (size <= 1 ? 0 : 1));
    }
}

TEST_CASE("a folder that cannot be made or used is refused with a remedy") {
    for (const char* folder : {"/proc/nothing", "/dev/null/data"}) {
        const Result<Store> refused = Store::open(folder, some_day);
        REQUIRE_FALSE(refused.ok());
        CHECK(refused.error().message.find(folder) != std::string::npos);
        CHECK_FALSE(refused.error().remedy.empty());
    }
}
