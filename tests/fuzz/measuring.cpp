// Fuzz target: any numbers as places on a photo, as its scale, and as the samples of a line. No NaN
// comes out, and nothing is read outside the picture.

#include "core/assert.h"
#include "core/check/rib_measure.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstring>

using namespace wrapwright;

namespace {

struct Numbers {
    const std::uint8_t* data;
    std::size_t left;

    double next() {
        double v = 0.0;
        if (left < sizeof v) return v;
        std::memcpy(&v, data, sizeof v);
        data += sizeof v;
        left -= sizeof v;
        return v;
    }
    glm::dvec2 place() {
        const double x = next();
        return {x, next()};
    }
};

void check(const Estimate<Length>& e) {
    WW_ASSERT(std::isfinite(e.low.si) && std::isfinite(e.high.si));
    WW_ASSERT(e.low <= e.value && e.value <= e.high);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    Numbers n{data, size};
    const bool is_card = size % 2 == 0;
    const Result<PhotoScale> scale =
        is_card ? PhotoScale::card({n.place(), n.place(), n.place(), n.place()})
                : PhotoScale::two_points(n.place(), n.place(), Length{n.next()});
    std::vector<double> samples;
    for (std::size_t i = 0; i < std::min<std::size_t>(size, 400); ++i) samples.push_back(data[i]);
    const Period period = period_of(samples);
    WW_ASSERT(std::isfinite(period.value) && std::isfinite(period.sd) && period.value >= 0.0);
    for (const double m : period.marks) WW_ASSERT(std::isfinite(m));
    if (!scale.ok()) {
        WW_ASSERT(!scale.error().remedy.empty());
        return 0;
    }
    constexpr int width = 64, height = 48;
    std::vector<float> grey(static_cast<std::size_t>(width) * height);
    for (std::size_t i = 0; i < grey.size() && size > 0; ++i) {
        grey[i] = static_cast<float>(data[i % size]) / 255.0F;
    }
    const Result<RibMeasure> ribs =
        measure_ribs({width, height, grey}, scale.value(), n.place(), n.place());
    if (ribs.ok()) {
        check(ribs.value().period);
        WW_ASSERT(std::isfinite(ribs.value().turns));
    }
    return 0;
}
