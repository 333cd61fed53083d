#include "platform/cli/library.h"

#include <cstdlib>
#include <ctime>

namespace wrapwright::cli {

std::filesystem::path data_folder(const std::string& said) {
    if (!said.empty()) return said;
    return usual_data_folder(std::getenv("XDG_DATA_HOME"), std::getenv("HOME"));
}

Store open_there(const std::filesystem::path& folder, bool may_make) {
    if (!may_make && !std::filesystem::exists(folder / "wrapwright.db")) {
        refuse_usage("there is no library in " + folder.string(), "name its folder with --data");
    }
    return or_give_up(Store::open(folder, now_seconds()));
}

std::int64_t now_seconds() { return static_cast<std::int64_t>(std::time(nullptr)); }

} // namespace wrapwright::cli
