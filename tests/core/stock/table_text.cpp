#include "core/stock/table_text.h"

#include "core/stock/order.h"
#include "core/stock/stock_item.h"
#include "tests/support/dice.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <span>

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

using Rows = std::vector<std::vector<std::string>>;

TablePreview<StockItem> preview(std::string_view text, const std::vector<StockItem>& there) {
    const Result<TableText> table = read_table(text);
    REQUIRE(table.ok());
    const auto out =
        preview_table<StockItem>(table.value(), stock_fields(), "what", StockItem{},
                                 [&](const StockItem& row) -> const StockItem* {
                                     for (const StockItem& item : there) {
                                         if (plain_name(item.what) == plain_name(row.what))
                                             return &item;
                                     }
                                     return nullptr;
                                 });
    REQUIRE(out.ok());
    return out.value();
}

} // namespace

TEST_CASE(
    "tables are read as RFC 4180 writes them, and with the other separators of spreadsheets") {
    // Source  RFC 4180 section 2, its own examples by rule number
    CHECK(read_table("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n").value().rows ==
          Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}});                // 1
    CHECK(read_table("aaa,bbb,ccc\r\nzzz,yyy,xxx").value().rows.size() == 2); // 2
    CHECK(read_table("\"aaa\",\"b \r\nbb\",\"ccc\"\r\nzzz,yyy,xxx").value().rows ==
          Rows{{"aaa", "b \r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}}); // 6
    CHECK(read_table("\"aaa\",\"b\"\"bb\",\"ccc\"").value().rows ==
          Rows{{"aaa", "b\"bb", "ccc"}}); // 7
    CHECK(read_table("\xEF\xBB\xBF"
                     "what;pack\n\"a;b\";25\n\n")
              .value()
              .rows == Rows{{"what", "pack"}, {"a;b", "25"}});
    CHECK(read_table("what\tpack\ra\t25\r").value().rows == Rows{{"what", "pack"}, {"a", "25"}});
    CHECK(read_table("a,\"\"\n").value().rows == Rows{{"a", ""}});
    const auto open = read_table("a,b\nc,\"d\ne,f\n");
    REQUIRE_FALSE(open.ok());
    CHECK(open.error().place.line == 2);
}

TEST_CASE("any table comes back as it was written") {
    Dice dice{41};
    const char* bits[] = {"a", "\"", ",", ";", "\t", "\r\n", "\n", " ", "\xC3\xA9", "7"};
    for (int run = 0; run < 400; ++run) {
        Rows rows;
        const int columns = 2 + dice.roll(4);
        for (int r = 0; r <= dice.roll(5); ++r) {
            std::vector<std::string> row;
            for (int c = 0; c < columns; ++c) {
                std::string cell("x");
                for (int i = dice.roll(6); i > 0; --i) cell += bits[dice.roll(10)];
                row.push_back(cell);
            }
            rows.push_back(row);
        }
        rows.front().front() = "a, quoted; head"; // its separators count for nothing
        const auto read = read_table(write_table(rows));
        REQUIRE(read.ok());
        CHECK(read.value().rows == rows);
    }
}

TEST_CASE("a file shows what it would change before it does, row by row") {
    StockItem bead;
    bead.id = 3;
    bead.what = "bead 2.8 mm";
    bead.pack = 20;
    bead.place = "drawer 1";
    const auto out = preview("What,pack,place,shoe size\n"
                             "Bead 2.8  mm,20,drawer 2,43\n"
                             "hook #14,25,,\n"
                             "hook #16,none,,\n"
                             "bead 2.8 mm,20,drawer 1,\n",
                             {bead});
    REQUIRE(out.rows.size() == 4);
    CHECK(out.added == 1);
    CHECK(out.changed == 1);
    CHECK(out.refused == 1);
    CHECK(out.same == 1);
    CHECK(out.passed_over == std::vector<std::string>{"shoe size"});
    CHECK(out.rows[0].words ==
          "what: Bead 2.8  mm, was bead 2.8 mm; place: drawer 2, was drawer 1");
    CHECK(out.rows[0].after.id == 3);
    CHECK(out.rows[2].line == 4);
    CHECK(out.rows[2].words.starts_with("pack: "));
}

TEST_CASE("a table without the column that tells rows apart, or with one twice, is refused") {
    for (const char* text : {"pack,price\n25,4\n", "what,pack,what\na,1,b\n"}) {
        const Result<TableText> table = read_table(text);
        REQUIRE(table.ok());
        const auto out =
            preview_table<StockItem>(table.value(), stock_fields(), "what", StockItem{},
                                     [](const StockItem&) -> const StockItem* { return nullptr; });
        CHECK_FALSE(out.ok());
    }
}

TEST_CASE("a hundred thousand rows are read, and more than two hundred thousand are refused") {
    std::string text("what,pack\n");
    for (int i = 0; i < 100'000; ++i) text.append("bead,\"20\"\n");
    CHECK(read_table(text).value().rows.size() == 100'001);
    text.append(text).append(text);
    CHECK_FALSE(read_table(text).ok());
}

TEST_CASE("every field of stock and orders takes back the text that it writes") {
    StockItem item;
    item.what = "cape, grizzle";
    item.unit = StockUnit::flies;
    item.pack = 60;
    item.price = {2000};
    item.low = 12;
    item.place = "tin 2";
    item.also = "a; b";
    StockItem read_item;
    for (const auto& field : stock_fields()) {
        CHECK(field.read(read_item, field.write(item)).ok());
    }
    CHECK(read_item == item);
    OrderLine line;
    line.who = "Slate Weir anglers";
    line.taken = day_of(2026, 11, 29);
    line.due = day_of(2026, 12, 24);
    line.recipe = line.name = "weirfoot-jig";
    line.size = "14";
    line.flies = 30;
    line.dozen = {2350};
    line.status = LineStatus::packed;
    line.minutes = 4.5;
    OrderLine read_line;
    for (const auto& field : order_fields()) {
        CHECK(field.read(read_line, field.write(line)).ok());
    }
    CHECK(read_line == line);
    CHECK(price_of(line).minor == 5875); // worked by hand: 23.50 / 12 * 30
}

TEST_CASE("what a field cannot mean is refused and leaves the row as it was") {
    StockItem item;
    item.what = "bead";
    const StockItem before = item;
    const auto field = [](auto fields, std::string_view key) {
        return *std::find_if(fields.begin(), fields.end(),
                             [&](const auto& f) { return f.key == key; });
    };
    const auto stock = stock_fields();
    for (const auto& [key, text] :
         std::initializer_list<std::pair<const char*, const char*>>{{"pack", "0"},
                                                                    {"pack", "-1"},
                                                                    {"pack", "nan"},
                                                                    {"pack", "1e99"},
                                                                    {"price", "-4"},
                                                                    {"price", "free"},
                                                                    {"low", "-1"},
                                                                    {"unit", "boxes"},
                                                                    {"unit", ""},
                                                                    {"what", "  "}}) {
        CAPTURE(key);
        CAPTURE(text);
        CHECK_FALSE(field(stock, key).read(item, text).ok());
        CHECK(item == before);
    }
    OrderLine line;
    const OrderLine was = line;
    const auto orders = order_fields();
    for (const auto& [key, text] :
         std::initializer_list<std::pair<const char*, const char*>>{{"flies", "0"},
                                                                    {"flies", "-1 dozen"},
                                                                    {"status", "p"},
                                                                    {"status", ""},
                                                                    {"due", "tomorrow"},
                                                                    {"dozen", "-1"},
                                                                    {"minutes", "-3"},
                                                                    {"size", "large"}}) {
        CAPTURE(key);
        CAPTURE(text);
        CHECK_FALSE(field(orders, key).read(line, text).ok());
        CHECK(line == was);
    }
}
