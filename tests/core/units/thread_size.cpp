#include "core/units/thread_size.h"

#include <doctest/doctest.h>

using namespace wrapwright;

namespace {

ThreadSize thread(std::string_view text) {
    const Result<ThreadSize> size = parse_thread_size(text);
    CAPTURE(text);
    REQUIRE(size.ok());
    CHECK(size.value().text == text);
    return size.value();
}

} // namespace

TEST_CASE("an aught label is a count of zeros") {
    CHECK(thread("8/0").aughts == 8);
    CHECK(thread("12/0").aughts == 12);
    CHECK(thread("00").aughts == 2);
    CHECK(thread("000").aughts == 3);
    CHECK(thread("thread 3/0").aughts == 3);
    CHECK(thread(" size 8/0 ").aughts == 8);
    CHECK(thread("size A").aughts == std::nullopt);
    CHECK(thread("A").aughts == std::nullopt);
}

TEST_CASE("the label with more zeros is the finer thread of one maker's line") {
    // Source  common practice, no source: 3/0 is thicker than 8/0 in every line
    CHECK(compare(thread("3/0"), thread("8/0")) == ThreadOrder::thicker);
    CHECK(compare(thread("8/0"), thread("3/0")) == ThreadOrder::finer);
    CHECK(compare(thread("000"), thread("00")) == ThreadOrder::finer);
    CHECK(compare(thread("2/0"), thread("00")) == ThreadOrder::same_label);
    CHECK(compare(thread("A"), thread("8/0")) == ThreadOrder::unknown);
}

TEST_CASE("what is no thread label is refused with a remedy") {
    for (const char* text :
         {"", "8", "0/0", "08/0", "8/1", "/0", "8/0/0", "70 den", "H", "thread", "8 /0", "-8/0"}) {
        CAPTURE(text);
        REQUIRE_FALSE(parse_thread_size(text).ok());
        CHECK(parse_thread_size(text).error().code == ErrorCode::malformed);
        CHECK_FALSE(parse_thread_size(text).error().remedy.empty());
    }
    for (const char* text : {"21/0", "999/0", "000000000000000000000"}) {
        CAPTURE(text);
        REQUIRE_FALSE(parse_thread_size(text).ok());
        CHECK(parse_thread_size(text).error().code == ErrorCode::out_of_range);
    }
}
