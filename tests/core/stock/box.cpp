// What lies in the fly box, and what the stock makes.

#include "core/stock/box.h"

#include "core/stock/enough.h"

#include <array>
#include <doctest/doctest.h>

using namespace wrapwright;

namespace {

BoxEntry counted(const char* size, int flies, std::int64_t after = 0) {
    return {"jig", size, false, flies, after};
}

BoxEntry wanted(const char* size, int flies) { return {"jig", size, true, flies, 0}; }

} // namespace

TEST_CASE("the last count stands, and what was finished since lies in the box too") {
    const std::array said{counted("14", 3), wanted("14", 12), counted("14", 7, 20)};
    const std::array<BoxFly, 4> finished{{
        {"jig", "14", 12}, // counted with the rest
        {"jig", "14", 21},
        {"jig", "14", 22},
        {"jig", "16", 4}, // never counted, so every one is there
    }};
    const BoxCounts box = count_box(said, finished);
    CHECK(box.at({"jig", "14"}) == BoxCount{9, 12});
    CHECK(box.at({"jig", "16"}) == BoxCount{1, 0});
    CHECK(count_box({}, {}).empty());
}

TEST_CASE("a cell says how many there are, how many there should be, or both") {
    const auto read = [](const char* text) {
        const Result<BoxCell> cell = read_box_cell(text);
        REQUIRE(cell.ok());
        return cell.value();
    };
    CHECK(read("7") == BoxCell{7, {}});
    CHECK(read(" 7 / 12 ") == BoxCell{7, 12});
    CHECK(read("/12") == BoxCell{{}, 12});
    CHECK(read("") == BoxCell{0, 0});
    CHECK(write_box_cell({7, 12}) == "7/12");
    CHECK(write_box_cell({7, 0}) == "7");
    for (int have = 0; have < 30; have += 3) {
        for (int want = 1; want < 30; want += 4) {
            CHECK(read(write_box_cell({have, want}).c_str()) == BoxCell{have, want});
        }
    }
    for (const char* wrong :
         {"-1", "7/", "some", "1/2/3", "7.5", "10000", "1/99999999999999", "0x7"}) {
        CAPTURE(wrong);
        const Result<BoxCell> cell = read_box_cell(wrong);
        CHECK_FALSE(cell.ok());
        if (!cell.ok()) CHECK_FALSE(cell.error().remedy.empty());
    }
}

TEST_CASE("the grid has a column for every size written or in the box, and its sums agree") {
    const std::array said{counted("14", 7), wanted("14", 12), counted("16", 9), wanted("16", 6),
                          counted("8", 2)};
    const BoxGrid grid =
        box_grid({{"jig", "Jig", "14-18", 24}, {"note", "A note", "", 0}}, count_box(said, {}));
    REQUIRE(grid.sizes == std::vector<HookSize>{{8}, {14}, {16}, {18}});
    REQUIRE(grid.rows.size() == 2);
    const BoxGrid::Row& jig = grid.rows[0];
    CHECK(jig.counts == std::vector<BoxCount>{{2, 0}, {7, 12}, {9, 6}, {0, 0}});
    CHECK(jig.written == std::vector<bool>{false, true, true, true});
    CHECK(jig.all == BoxCount{18, 18});
    CHECK(jig.missing == 5); // three of 16 are over, and make no 14
    CHECK(grid.sums == jig.counts);
    CHECK(grid.all == jig.all);
    CHECK(grid.missing == 5);
    CHECK(grid.ordered == 24);
    CHECK(grid.rows[1].all == BoxCount{});
    CHECK(box_grid({}, count_box(said, {})).sizes.empty());
}

TEST_CASE("the stock makes as many flies as its scarcest material, and none where one is missing") {
    StockItem bead, wire;
    bead.id = 1;
    bead.what = "bead";
    wire.id = 2;
    wire.what = "wire";
    wire.unit = StockUnit::metres;
    const std::array items{bead, wire};
    Holdings holdings;
    Entry bought;
    bought.item = 1;
    bought.amount = 20;
    holdings.take(bought);
    bought.item = 2;
    bought.amount = 0.3;
    holdings.take(bought);
    const StockNames names(items);
    const std::vector<StockUse> fly{{"Bead", 1.0, 0.0, 0.0}, {"wire", 0.0, 0.1, 0.0}};
    CHECK(flies_from_stock(fly, names, items, holdings) == 3);
    Entry reserved = bought;
    reserved.kind = EntryKind::reserved;
    reserved.amount = 0.15;
    reserved.line = 9;
    holdings.take(reserved);
    CHECK(flies_from_stock(fly, names, items, holdings) == 1);
    CHECK(flies_from_stock({{"bead", 2.0, 0.0, 0.0}}, names, items, holdings) == 10);
    CHECK(flies_from_stock({{"bead", 1.0, 0.0, 0.0}, {"gold dust", 0.0, 0.0, 0.1}}, names, items,
                           holdings) == 0);
    CHECK(flies_from_stock({{"wire", 1.0, 0.0, 0.0}}, names, items, holdings) == 0); // no length
    CHECK(flies_from_stock({}, names, items, holdings) == 0);
}
