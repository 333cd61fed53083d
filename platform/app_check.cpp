// Photos of flies and what was measured of them: from files and the store, and back.

#include "core/units/hook_size.h"
#include "platform/app.h"
#include "platform/files.h"
#include "platform/gl/target.h"
#include "platform/photo.h"

#include <filesystem>

namespace wrapwright {

Result<bool> App::show_photo(std::string_view bytes, Model& next) {
    Result<Photo> read = read_photo(bytes);
    if (!read.ok()) return read.error();
    const auto photo = std::make_shared<Photo>(std::move(read).value());
    const Gl& gl = backend_->gl();
    gl.ActiveTexture(GL_TEXTURE0);
    photo_ = make_image(gl, {photo->shown_width, photo->shown_height}, photo->shown.data());
    photo->shown = {}; // the driver has it now
    next.check.photo = {};
    next.check.photo.picture = photo;
    next.check.view = CheckView::photo;
    next.screen = Screen::check;
    next.sheet = Sheet::closed;
    return true;
}

Result<bool> App::open_photo_file(const std::string& file, Model& next) {
    constexpr std::size_t most = std::size_t{200} << 20;
    const Result<std::string> bytes = read_file(file, most);
    if (!bytes.ok()) return in_file(file, bytes.error());
    if (const Result<bool> shown = show_photo(bytes.value(), next); !shown.ok()) {
        return in_file(file, shown.error());
    }
    next.check.photo.name = std::filesystem::path(file).filename().string();
    if (!next.read_only) {
        const std::string size = write_hook_size(next.fly->size);
        const std::int64_t sitting = next.events.empty() ? 0 : sitting_;
        const auto kept = store_.add_photo({next.fly->id, size, sitting, next.check.fly},
                                           next.check.photo.name, bytes.value(), today());
        if (!kept.ok()) return kept.error();
        next.check.photo.id = kept.value();
        if (const Result<bool> listed = recall_readings(next); !listed.ok()) return listed;
    }
    check_again(next);
    return true;
}

Result<bool> App::recall_photo(std::int64_t id, Model& next) {
    const Result<std::string> bytes = store_.photo_bytes(id);
    if (!bytes.ok()) return bytes.error();
    const auto rows = store_.photos(next.fly->id, write_hook_size(next.fly->size));
    if (!rows.ok()) return rows.error();
    if (const Result<bool> shown = show_photo(bytes.value(), next); !shown.ok()) return shown;
    for (const StoredPhoto& row : rows.value()) {
        if (row.id != id) continue;
        next.check.photo.id = id;
        next.check.photo.name = row.name;
        next.check.photo.marks = photo_marks_of(row.marks);
        next.check.fly = row.fly;
    }
    check_again(next);
    return true;
}

Result<bool> App::give_photo(Model& next) {
    const Result<std::string> bytes = store_.photo_bytes(next.check.photo.id);
    if (!bytes.ok()) return bytes.error();
    const std::filesystem::path name(next.check.photo.name);
    std::string file = file_stem(name.stem().string());
    file += name.extension().string();
    return hand_out(shared_folder(next) / file, bytes.value(), next);
}

Result<bool> App::keep_readings(int count, Model& next) {
    const std::string size = write_hook_size(next.fly->size);
    const std::int64_t sitting = next.events.empty() ? 0 : sitting_;
    auto& all = next.check.readings;
    for (std::size_t i = all.size() - static_cast<std::size_t>(count); i < all.size(); ++i) {
        const FlyReading& r = all[i];
        const auto kept = store_.add_reading(
            {next.fly->id, size, sitting, r.fly},
            {0, sitting, r.fly, r.part, r.value, r.low, r.high, r.by_photo}, today());
        if (!kept.ok()) return kept.error();
        all[i].id = kept.value();
    }
    return true;
}

Result<bool> App::recall_readings(Model& next) {
    const std::string size = write_hook_size(next.fly->size);
    const auto readings = store_.readings(next.fly->id, size);
    if (!readings.ok()) return readings.error();
    const auto photos = store_.photos(next.fly->id, size);
    if (!photos.ok()) return photos.error();
    next.check.readings.clear();
    next.check.photos.clear();
    for (const StoredReading& r : readings.value()) {
        next.check.readings.push_back({r.id, r.fly, r.part, r.value, r.low, r.high, r.by_photo});
    }
    for (const StoredPhoto& p : photos.value()) next.check.photos.push_back({p.id, p.name, p.fly});
    return true;
}

} // namespace wrapwright
