#include "core/share/pack.h"

#include "core/units/scan.h"

#include <array>
#include <cstdint>
#include <vector>

namespace wrapwright {

namespace {

// What recipe files are full of. Part of the format: a change of it is a new version of the letter.
constexpr std::string_view primer =
    "{\n  \"format\": \"wrapwright recipe\",\n  \"version\": 1,\n  \"id\": \"the-fly\",\n  "
    "\"name\": "
    "\"The Fly\",\n  \"aliases\": [\"\"],\n  \"tags\": [\"nymph\", \"dry\", \"wet\"],\n  "
    "\"class\": "
    "\"jig nymph\",\n  \"sizes\": \"10-18\",\n  \"verbatim\": \"\",\n  \"fishing\": \"\",\n  "
    "\"imitates\": \"\",\n  \"history\": \"\",\n  \"notes\": \"\",\n  \"provenance\": {\"author\": "
    "\"\", "
    "\"date\": \"2026-\", \"source\": \"original\", \"permission\": \"free to copy and change\", "
    "\"language\": \"en\"},\n  \"bases\": [\n    {\"id\": \"hook\", \"kind\": \"hook\", \"text\": "
    "\"wet "
    "fly hook, or equivalent\", \"family\": \"wet\"}\n  ],\n  \"materials\": [\n    {\"id\": "
    "\"thread\", \"kind\": \"thread\", \"text\": \"thread, 70 den, black\", \"colour\": \"black\", "
    "\"tint\": \"#202020\", \"substance\": \"nylon\", \"linear\": \"70 den\"},\n    {\"id\": "
    "\"hackle\", "
    "\"kind\": \"soft hackle\", \"text\": \"\", \"colour\": \"brown\", \"substance\": \"keratin\", "
    "\"barb_length\": \"half the shank\", \"instead\": \"\"},\n    {\"id\": \"rib-wire\", "
    "\"kind\": "
    "\"wire\", \"text\": \"fine copper wire\", \"substance\": \"copper\", \"size\": {\"text\": "
    "\"fine\", "
    "\"by_size\": {\"10-12\": \"0.18 mm\", \"14-16\": \"0.13 mm\"}}}\n  ],\n  \"parts\": [\n    "
    "{\"id\": \"tail\", \"role\": \"tail\", \"text\": \"\", \"made_of\": [\"fibres\"], \"side\": "
    "\"top\", \"length\": \"half the shank\", \"count\": \"8 fibres\"},\n    {\"id\": \"body\", "
    "\"role\": \"body\", \"text\": \"\", \"made_of\": [\"dubbing\"], \"turns\": \"5 turns\", "
    "\"optional\": true}\n  ],\n  \"steps\": [\n    {\n      \"text\": \"Tie in the tail and wind "
    "the body forward to the thorax with touching turns over the top and away from you.\",\n      "
    "\"landmark\": \"the thread hangs level with the barb\",\n      \"tip\": \"\",\n      "
    "\"restore_point\": true,\n      \"batch\": \"all first\",\n      \"actions\": [\n        "
    "{\"do\": "
    "\"flatten barb\"},\n        {\"do\": \"slide on\", \"part\": \"bead\"},\n        {\"do\": "
    "\"clamp\"},\n        {\"do\": \"start thread\", \"part\": \"thread\", \"to\": \"front\", "
    "\"turns\": \"5 turns\"},\n        {\"do\": \"lay base\", \"from\": \"front\", \"to\": "
    "\"bend\"},\n"
    "        {\"do\": \"tie in\", \"part\": \"rib\", \"to\": \"barb\", \"turns\": \"3 turns\", "
    "\"hold\": \"near side\"},\n        {\"do\": \"dub\", \"part\": \"body\", \"from\": \"barb\", "
    "\"to\": \"0.4 shank\", \"diameter\": \"0.4 gape\", \"diameter_end\": \"0.6 bead\"},\n        "
    "{\"do\": \"counter rib\", \"part\": \"rib\", \"from\": \"barb\", \"to\": \"front of body\", "
    "\"sense\": \"against thread\", \"spacing\": \"open\"},\n        {\"do\": \"tie off\", "
    "\"part\": "
    "\"rib\", \"turns\": \"4 turns\"},\n        {\"do\": \"trim\", \"part\": \"rib\"},\n        "
    "{\"do\": \"half hitch\"},\n        {\"do\": \"whip finish\", \"turns\": \"5 turns\"},\n       "
    " "
    "{\"do\": \"cut thread\"},\n        {\"do\": \"coat\", \"part\": \"finish\"},\n        "
    "{\"do\": "
    "\"clear eye\"},\n        {\"do\": \"unclamp\"}\n      ]\n    }\n  ]\n}\n";

constexpr int orders = 5; ///< how many bytes before a byte its bits are foreseen from, at most
constexpr std::size_t table_bits = 18;

/// Foresees bits from the bytes before them: one table for each number of bytes looked back at.
class Model {
  public:
    Model() { tables_.fill(std::vector<Cell>(std::size_t{1} << table_bits)); }

    /// The chance that the next bit is 1, of 65536; 1 <= chance <= 65535.
    [[nodiscard]] std::uint32_t chance() {
        std::uint64_t sum = 0, weight = 0;
        for (std::size_t o = 0; o < orders; ++o) {
            const Cell& cell = at(o);
            // A cell that was seen more often, and of more bytes, knows better.
            const std::uint64_t seen = cell.seen;
            const std::uint64_t sure =
                seen == 0 ? 0 : (1 + seen * seen) << (2 * o + (cell.agreed ? 3 : 0));
            sum += sure * cell.chance;
            weight += sure;
        }
        const auto mean =
            static_cast<std::uint32_t>(weight == 0 ? 32768 : (sum + weight / 2) / weight);
        return mean < 24 ? 24 : mean > 65512 ? 65512 : mean;
    }
    void learn(bool bit) {
        for (std::size_t o = 0; o < orders; ++o) {
            Cell& cell = at(o);
            const std::int32_t target = bit ? 65535 : 0;
            const std::int32_t step = (target - static_cast<std::int32_t>(cell.chance)) /
                                      (static_cast<std::int32_t>(cell.seen) + 2);
            cell.agreed = cell.seen == 0 || (cell.agreed && cell.last == bit);
            cell.last = bit;
            cell.chance = static_cast<std::uint16_t>(static_cast<std::int32_t>(cell.chance) + step);
            if (cell.seen < 14) ++cell.seen;
        }
        bits_ = bits_ << 1U | (bit ? 1U : 0U);
        if (bits_ < 256) return;
        past_ = past_ << 8U | (bits_ & 255U);
        bits_ = 1;
        for (std::size_t o = 0; o < orders; ++o) {
            const std::uint64_t kept = o == 0 ? 0 : past_ << (64 - 8 * (o + (o == 4 ? 2 : 0)));
            hash_[o] = (kept + o + 1) * 0x9e3779b97f4a7c15ULL;
        }
    }

  private:
    struct Cell {
        std::uint16_t chance = 32768;
        std::uint8_t seen = 0;
        bool agreed = false, last = false; ///< every bit seen here was the same; the last one
    };
    Cell& at(std::size_t o) {
        const std::uint64_t h = (hash_[o] ^ bits_) * 0xd6e8feb86659fd93ULL;
        return tables_[o][h >> (64U - table_bits)];
    }
    std::array<std::vector<Cell>, orders> tables_{};
    std::array<std::uint64_t, orders> hash_{};
    std::uint64_t past_ = 0;
    std::uint32_t bits_ = 1; ///< of the byte at work, with a 1 before them
};

/// Halves of a 32-bit interval: a bit at a time is written into it, or read from it.
struct Interval {
    std::uint32_t low = 0, high = 0xffffffffU;

    [[nodiscard]] std::uint32_t split(std::uint32_t chance) const {
        return low + static_cast<std::uint32_t>((std::uint64_t{high - low} * chance) >> 16U);
    }
    void take(bool bit, std::uint32_t middle) {
        if (bit) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    [[nodiscard]] bool settled() const { return ((low ^ high) >> 24U) == 0; }
    void shift() {
        low <<= 8U;
        high = high << 8U | 255U;
    }
};

Model primed() {
    Model model;
    for (const char c : primer) {
        for (unsigned i = 8; i-- > 0;) {
            model.learn((static_cast<unsigned char>(c) >> i & 1U) != 0);
        }
    }
    return model;
}

void put_number(std::string& out, unsigned number) {
    for (unsigned i = 0; i < 4; ++i) out += static_cast<char>(number >> (8U * i) & 255U);
}

unsigned number_at(std::string_view bytes, std::size_t at) {
    unsigned number = 0;
    for (unsigned i = 0; i < 4; ++i) {
        number |= unsigned{static_cast<unsigned char>(bytes[at + i])} << (8U * i);
    }
    return number;
}

Error torn() {
    return {ErrorCode::malformed,
            "letters of the exact lines were lost or changed on the way",
            "copy them again, from '[wrapwright recipe' to ']', or ask for the file",
            {}};
}

constexpr std::string_view letters =
    "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

} // namespace

std::string pack(std::string_view text) {
    WW_ASSERT(text.size() <= most_packed_text);
    std::string out;
    put_number(out, static_cast<unsigned>(text.size()));
    put_number(out, crc32(text));
    Model model = primed();
    Interval interval;
    for (const char c : text) {
        for (unsigned i = 8; i-- > 0;) {
            const bool bit = (static_cast<unsigned char>(c) >> i & 1U) != 0;
            interval.take(bit, interval.split(model.chance()));
            model.learn(bit);
            while (interval.settled()) {
                out += static_cast<char>(interval.high >> 24U);
                interval.shift();
            }
        }
    }
    // Enough of the interval's upper end that whatever follows stays inside.
    for (unsigned i = 0; i < 4; ++i)
        out += static_cast<char>(interval.high >> (24U - 8U * i) & 255U);
    return out;
}

Result<std::string> unpack(std::string_view packed) {
    if (packed.size() < 12) return torn();
    const std::size_t size = number_at(packed, 0);
    if (size > most_packed_text) {
        return Error{ErrorCode::too_large,
                     "a letter that says it holds more than 4 MiB",
                     "ask for the file itself",
                     {}};
    }
    std::size_t at = 8;
    const auto next = [&] {
        const unsigned byte = at < packed.size() ? static_cast<unsigned char>(packed[at]) : 0U;
        ++at;
        return byte;
    };
    std::uint32_t code = 0;
    for (unsigned i = 0; i < 4; ++i) code = code << 8U | next();
    Model model = primed();
    Interval interval;
    std::string text;
    while (text.size() < size) {
        unsigned byte = 1;
        while (byte < 256) {
            const std::uint32_t middle = interval.split(model.chance());
            const bool bit = code <= middle;
            interval.take(bit, middle);
            model.learn(bit);
            while (interval.settled()) {
                interval.shift();
                code = code << 8U | next();
            }
            byte = byte << 1U | (bit ? 1U : 0U);
        }
        text += static_cast<char>(byte & 255U);
        if (at > packed.size() + 4) return torn(); // past the end: no letter goes on so long
    }
    if (crc32(text) != number_at(packed, 4)) return torn();
    return text;
}

std::string base64(std::string_view bytes) {
    std::string out;
    out.reserve(bytes.size() * 4 / 3 + 4);
    for (std::size_t i = 0; i < bytes.size(); i += 3) {
        const auto byte = [&](std::size_t k) {
            return i + k < bytes.size() ? unsigned{static_cast<unsigned char>(bytes[i + k])} : 0U;
        };
        const unsigned group = byte(0) << 16U | byte(1) << 8U | byte(2);
        const std::size_t count = bytes.size() - i < 3 ? bytes.size() - i + 1 : 4;
        for (std::size_t k = 0; k < count; ++k) out += letters[group >> (18U - 6U * k) & 63U];
    }
    return out;
}

Result<std::string> from_base64(std::string_view text) {
    std::string out;
    out.reserve(text.size() * 3 / 4);
    unsigned group = 0, bits = 0;
    for (const char c : text) {
        if (c == '=' || c == ' ' || (c >= '\t' && c <= '\r')) continue;
        const std::size_t value = letters.find(c);
        if (value == std::string_view::npos) {
            return Error{ErrorCode::malformed,
                         "a character that is no base64",
                         "take an undamaged copy",
                         {}};
        }
        group = (group << 6U | static_cast<unsigned>(value)) & 0xffffffU;
        bits += 6;
        if (bits < 8) continue;
        bits -= 8;
        out += static_cast<char>(group >> bits & 255U);
    }
    return out;
}

unsigned crc32(std::string_view bytes) {
    unsigned crc = 0xffffffffU;
    for (const char c : bytes) {
        crc ^= static_cast<unsigned char>(c);
        for (int i = 0; i < 8; ++i) crc = (crc & 1U) != 0 ? crc >> 1U ^ 0xedb88320U : crc >> 1U;
    }
    return ~crc;
}

} // namespace wrapwright
