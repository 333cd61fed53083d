// Fuzz target: any bytes as a photo. What opens has the pixels that it says, each of them a share.

#include "core/assert.h"
#include "platform/photo.h"

#include <cstddef>
#include <cstdint>

using namespace wrapwright;

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const std::string_view bytes(reinterpret_cast<const char*>(data), size);
    const int orientation = exif_orientation(bytes);
    WW_ASSERT(orientation >= 1 && orientation <= 8);
    const Result<Photo> photo = read_photo(bytes);
    if (!photo.ok()) {
        WW_ASSERT(!photo.error().message.empty() && !photo.error().remedy.empty());
        return 0;
    }
    const Photo& p = photo.value();
    WW_ASSERT(p.grey.size() ==
              static_cast<std::size_t>(p.width) * static_cast<std::size_t>(p.height));
    WW_ASSERT(p.shown.size() == 4 * static_cast<std::size_t>(p.shown_width) *
                                    static_cast<std::size_t>(p.shown_height));
    for (const float g : p.grey) WW_ASSERT(g >= 0.0F && g <= 1.0F);
    return 0;
}
