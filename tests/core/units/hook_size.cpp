#include "core/units/hook_size.h"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace wrapwright;

namespace {

HookSize size_of(std::string_view text) {
    const Result<WrittenHookSize> size = parse_hook_size(text);
    CAPTURE(text);
    REQUIRE(size.ok());
    CHECK(size.value().text == text);
    return size.value().size;
}

std::vector<int> sizes_of(std::string_view text) {
    const Result<WrittenHookSizes> sizes = parse_hook_sizes(text);
    CAPTURE(text);
    REQUIRE(sizes.ok());
    CHECK(sizes.value().text == text);
    std::vector<int> numbers;
    for (const HookSize size : sizes.value().sizes) numbers.push_back(size.number);
    return numbers;
}

using Numbers = std::vector<int>;

} // namespace

TEST_CASE("a hook size is read with and without its marks") {
    for (const char* text : {"14", "#14", "# 14", " 14 ", "size 14", "Hook size 14", "hook #14"}) {
        CHECK(size_of(text) == HookSize{14});
    }
    CHECK(size_of("1") == HookSize{1});
    CHECK(size_of("1/0") == HookSize{0});
    CHECK(size_of("2/0") == HookSize{-1});
    CHECK(size_of("#3/0") == HookSize{-2});
    CHECK(size_of("32") == smallest_hook);
    CHECK(size_of("20/0") == largest_hook);
}

TEST_CASE("above size 1 the order of hooks turns") {
    // Source  common practice: public hook primers agree on it
    CHECK(larger(size_of("2/0"), size_of("1")));
    CHECK(larger(size_of("2/0"), size_of("1/0")));
    CHECK(larger(size_of("1/0"), size_of("1")));
    CHECK(larger(size_of("1"), size_of("2")));
    CHECK(larger(size_of("12"), size_of("14")));
    CHECK_FALSE(larger(size_of("14"), size_of("14")));
}

TEST_CASE("the even ladder goes through 1/0 and leaves out 1 and the odd numbers") {
    CHECK(next_smaller(HookSize{14}) == HookSize{16});
    CHECK(next_smaller(HookSize{13}) == HookSize{14});
    CHECK(next_smaller(size_of("1/0")) == HookSize{2});
    CHECK(next_smaller(size_of("2/0")) == size_of("1/0"));
    CHECK(next_larger(HookSize{14}) == HookSize{12});
    CHECK(next_larger(HookSize{13}) == HookSize{12});
    CHECK(next_larger(HookSize{2}) == size_of("1/0"));
    CHECK(next_larger(HookSize{1}) == size_of("1/0"));
    CHECK(next_smaller(smallest_hook) == std::nullopt);
    CHECK(next_larger(largest_hook) == std::nullopt);
    for (HookSize s = largest_hook; s < smallest_hook; ++s.number) {
        CAPTURE(s.number);
        REQUIRE(next_smaller(s).has_value());
        CHECK(larger(s, *next_smaller(s)));
        if (on_even_ladder(s)) CHECK(next_larger(*next_smaller(s)) == s);
    }
}

TEST_CASE("words of the X convention are kept as text and change no number") {
    const auto extra = [](std::string_view text) {
        const Result<WrittenHookSize> size = parse_hook_size(text);
        CAPTURE(text);
        REQUIRE(size.ok());
        CHECK(size.value().size == HookSize{14});
        return size.value().extra;
    };
    CHECK(extra("#14 1XL") == "1XL");
    CHECK(extra("14 2X long") == "2X long");
    CHECK(extra("14 2x-Long") == "2x-Long");
    CHECK(extra("14 1X heavy 2XL ") == "1X heavy 2XL");
    CHECK(extra("14 3X") == "3X");
    CHECK(extra("14") == "");
    CHECK(parse_hook_sizes("12-16 2XL").value().extra == "2XL");
    CHECK(parse_hook_sizes("12 1XL, 14 2XL").value().extra == "1XL, 2XL");
}

TEST_CASE("lists keep their order and name each size once") {
    CHECK(sizes_of("10,12,14") == Numbers{10, 12, 14});
    CHECK(sizes_of("#14, #12, #10") == Numbers{14, 12, 10});
    CHECK(sizes_of("10, 12 and 14") == Numbers{10, 12, 14});
    CHECK(sizes_of("12 or 14") == Numbers{12, 14});
    CHECK(sizes_of("sizes 12; 14 & 16") == Numbers{12, 14, 16});
    CHECK(sizes_of("12, 12, 14") == Numbers{12, 14});
    CHECK(sizes_of("2/0, 2") == Numbers{-1, 2});
    CHECK(sizes_of("14") == Numbers{14});
}

TEST_CASE("ranges run in either direction, by the even ladder when both ends are on it") {
    CHECK(sizes_of("16 to 12") == Numbers{12, 14, 16});
    CHECK(sizes_of("12-18") == Numbers{12, 14, 16, 18});
    CHECK(sizes_of("12\u201318") == Numbers{12, 14, 16, 18});
    CHECK(sizes_of("#12 - #18") == Numbers{12, 14, 16, 18});
    CHECK(sizes_of("12 through 14") == Numbers{12, 14});
    CHECK(sizes_of("14-14") == Numbers{14});
    CHECK(sizes_of("4 to 2/0") == Numbers{-1, 0, 2, 4});
    CHECK(sizes_of("8-10, 14") == Numbers{8, 10, 14});
    CHECK(parse_hook_sizes("12-18").value().step == RangeStep::even);
    CHECK(parse_hook_sizes("12, 18").value().step == RangeStep::no_range);

    CHECK(sizes_of("12-15") == Numbers{12, 13, 14, 15});
    CHECK(sizes_of("9 to 7") == Numbers{7, 8, 9});
    CHECK(sizes_of("1 to 2/0") == Numbers{-1, 0, 1});
    CHECK(parse_hook_sizes("12-15").value().step == RangeStep::every);
}

TEST_CASE("the old 0, 00 and 000 ask which hook is meant and never stand for 2/0") {
    for (const char* text : {"0", "00", "000", "#00", "hook 00", "12, 00", "0-2", "00 1XL"}) {
        const Result<WrittenHookSizes> sizes = parse_hook_sizes(text);
        CAPTURE(text);
        REQUIRE_FALSE(sizes.ok());
        CHECK(sizes.error().code == ErrorCode::ambiguous);
        CHECK(sizes.error().remedy.find("era") != std::string::npos);
        CHECK(sizes.error().remedy.find("thread") != std::string::npos);
    }
    CHECK(parse_hook_size("00").error().code == ErrorCode::ambiguous);
}

TEST_CASE("what is no hook size is refused with its own words") {
    const Result<WrittenHookSizes> typo = parse_hook_sizes("#12=18");
    REQUIRE_FALSE(typo.ok());
    CHECK(typo.error().code == ErrorCode::malformed);
    CHECK(typo.error().message == "\"#12=18\" is no hook size: not understood at \"=18\"");
    for (const char* text :
         {"",    "#",   "x",   "14x",   "14 fox", "012",  "00/0", "0/0",   "12/14",  "14.5",
          "12,", "12-", "-12", "10 12", "1/00",   "14 2", "2XL",  "14 mm", "12--14", "8-10-12"}) {
        CAPTURE(text);
        REQUIRE_FALSE(parse_hook_sizes(text).ok());
        CHECK(parse_hook_sizes(text).error().code == ErrorCode::malformed);
        CHECK_FALSE(parse_hook_sizes(text).error().remedy.empty());
    }
    for (const char* text : {"33", "100", "21/0", "99/0", "99999999999999999999"}) {
        CAPTURE(text);
        REQUIRE_FALSE(parse_hook_size(text).ok());
        CHECK(parse_hook_size(text).error().code == ErrorCode::out_of_range);
    }
    CHECK_FALSE(parse_hook_size("12, 14").ok()); // one size is asked for
}

TEST_CASE("every hook size comes back from its written form") {
    for (HookSize s = largest_hook; s <= smallest_hook; ++s.number) {
        CHECK(size_of(write_hook_size(s)) == s);
    }
    CHECK(write_hook_size(HookSize{-1}) == "2/0");
    CHECK(write_hook_size(HookSize{14}) == "14");
}
