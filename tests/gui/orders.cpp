// Orders and stock in the hand: cells that are typed, what is refused, and what is undone.

#include "tests/gui/person.h"

using namespace wrapwright;
using namespace wrapwright::test;

namespace {

/// A person at the orders' screen with a small book; what is kept is put into it as the bench does.
struct Clerk {
    Person person{"weirfoot-jig", {1280, 800}};
    Book book{};
    std::int64_t next = 100;

    explicit Clerk(OrdersView view = OrdersView::lines) {
        StockItem bead;
        bead.id = 1;
        bead.what = "bead";
        bead.pack = 20;
        bead.price = {480};
        book.items.push_back(bead);
        OrderLine line;
        line.id = 1;
        line.who = "Slate Weir anglers";
        line.due = {20'800};
        line.taken = {20'700};
        line.recipe = line.name = "weirfoot-jig";
        book.lines.push_back(line);
        Entry bought;
        bought.item = 1;
        bought.amount = 40;
        book.holdings.take(bought);
        person.model.screen = Screen::orders;
        person.model.book.view = view;
        person.model.book.today = {20'750};
        show();
        person.frame();
        person.frame();
    }
    void show() {
        Model& m = person.model;
        m.book.book = std::make_shared<const Book>(book);
        LineFacts facts;
        facts.line = 1;
        facts.uses = {{"bead", 1.0, 0.0, 0.0}};
        m.book.facts = {facts};
        reckon(m.book, terms_of(m.settings.book, m.book.today));
    }
    /// Keeps what the effects of the last presses ask for; how many changes that were.
    int keep() {
        int kept = 0;
        for (Effect& e : person.effects) {
            if (e.kind != EffectKind::keep_book) continue;
            ++kept;
            for (StockItem& item : e.change.items) item.id = item.id == 0 ? next++ : item.id;
            for (OrderLine& line : e.change.lines) line.id = line.id == 0 ? next++ : line.id;
            for (Entry& entry : e.change.entries) entry.id = next++;
            person.model.book.undo.push_back(inverse(e.change, book));
            REQUIRE(merge(book, e.change));
        }
        person.effects.clear();
        show();
        person.frame();
        person.frame();
        return kept;
    }
    void want(WishKind kind, int number, std::string key = {}, std::string text = {}) {
        Wish w = wish(kind, number, std::move(text));
        w.key = std::move(key);
        Applied applied = apply(person.model, w, person.model.now);
        person.model = std::move(applied.model);
        for (Effect& e : applied.effects) person.effects.push_back(std::move(e));
    }
};

} // namespace

TEST_CASE("letters typed on a cell begin it anew, enter keeps it and goes down, tab goes on") {
    Clerk clerk(OrdersView::stock);
    clerk.person.key(ImGuiKey_RightArrow); // on hand
    clerk.person.type("38");
    CHECK(clerk.person.typing().grid.editing);
    clerk.person.key(ImGuiKey_Tab);
    REQUIRE(clerk.keep() == 1);
    CHECK(clerk.book.holdings.of(1).on_hand == 38.0);
    CHECK(clerk.person.typing().grid.column == 2);
    clerk.person.key(ImGuiKey_RightArrow);
    clerk.person.key(ImGuiKey_RightArrow); // packs that were bought
    clerk.person.type("2");
    clerk.person.key(ImGuiKey_Enter);
    REQUIRE(clerk.keep() == 1);
    CHECK(clerk.book.holdings.of(1).on_hand == 78.0);
    CHECK(clerk.person.typing().grid.row == 1); // the new line
    clerk.person.key(ImGuiKey_Home);
    clerk.person.type("jig hook");
    clerk.person.key(ImGuiKey_Enter);
    REQUIRE(clerk.keep() == 1);
    REQUIRE(clerk.book.items.size() == 2);
    CHECK(clerk.book.items[1].what == "jig hook");
}

TEST_CASE("escape leaves a cell as it was, and no letter works the fly meanwhile") {
    Clerk clerk(OrdersView::stock);
    const int at = clerk.person.model.state.at;
    clerk.person.type("q");
    clerk.person.key(ImGuiKey_Escape);
    CHECK(clerk.keep() == 0);
    CHECK(clerk.person.model.screen == Screen::orders);
    clerk.person.key(ImGuiKey_Space);
    clerk.person.key(ImGuiKey_Escape); // of the cell that the blank began
    CHECK(clerk.person.model.state.at == at);
    clerk.person.key(ImGuiKey_Escape);
    CHECK(clerk.person.model.screen == Screen::bench);
}

TEST_CASE("what a cell cannot mean is refused in words and stays readable, and nothing is kept") {
    Clerk clerk;
    for (const auto& [key, text] :
         std::initializer_list<std::pair<const char*, const char*>>{{"stock on hand", "-3"},
                                                                    {"stock packs", "many"},
                                                                    {"stock pack", "0"},
                                                                    {"stock what", ""},
                                                                    {"order flies", "-1 dozen"},
                                                                    {"order due", "soon"},
                                                                    {"order status", "lost"}}) {
        clerk.want(WishKind::book_cell, 1, key, text);
        CAPTURE(key);
        CHECK(clerk.person.effects.empty());
        CHECK(clerk.person.model.book.refused.find(text) != std::string::npos);
    }
    clerk.want(WishKind::book_cell, 0, "stock pack", "25"); // a line without a name
    CHECK(clerk.person.effects.empty());
    clerk.want(WishKind::book_cell, 0, "stock what", " BEAD "); // there is one
    CHECK(clerk.person.effects.empty());
    clerk.want(WishKind::book_cell, 1, "order due", "2020-01-01"); // past, and the person's own
    CHECK(clerk.keep() == 1);
    CHECK(clerk.person.model.notice.find("is past") != std::string::npos);
}

TEST_CASE("a new line goes on with the order before it") {
    Clerk clerk;
    clerk.want(WishKind::book_cell, 0, "order recipe", "sill-dun");
    REQUIRE(clerk.keep() == 1);
    REQUIRE(clerk.book.lines.size() == 2);
    CHECK(same_order(clerk.book.lines[0], clerk.book.lines[1]));
    CHECK(clerk.book.lines[1].taken == Day{20'750});
}

TEST_CASE("reserving lowers what is free, and a line that is cancelled gives it back") {
    Clerk clerk;
    clerk.want(WishKind::reserve_line, 1);
    REQUIRE(clerk.keep() == 1);
    CHECK(clerk.book.holdings.of(1).free() == 26.0); // 14 begun for 12 good ones
    clerk.want(WishKind::reserve_line, 1);
    CHECK(clerk.person.effects.empty()); // there is nothing more to reserve
    clerk.want(WishKind::book_remove, 1, "stock");
    CHECK(clerk.person.effects.empty()); // an order holds it
    clerk.want(WishKind::book_cell, 1, "order status", "cancelled");
    REQUIRE(clerk.keep() == 1);
    CHECK(clerk.book.holdings.of(1).free() == 40.0);
}

TEST_CASE("ctrl z or a press on Undo takes the last change back, and says so where there is none") {
    Clerk clerk;
    clerk.want(WishKind::book_undo, 0);
    CHECK(clerk.person.effects.empty());
    CHECK_FALSE(clerk.person.model.notice.empty());
    clerk.want(WishKind::book_cell, 1, "order flies", "5 dozen");
    REQUIRE(clerk.keep() == 1);
    CHECK(clerk.book.lines[0].flies == 60);
    clerk.person.press("Undo##book");
    REQUIRE(clerk.person.effects.size() == 1);
    CHECK(clerk.person.effects[0].number == 1);
    REQUIRE(clerk.keep() == 1);
    CHECK(clerk.book.lines[0].flies == 12);
}

TEST_CASE("letters are taken however many come in a frame, and right behind the last edit") {
    Clerk clerk;
    ImGuiIO& io = ImGui::GetIO();
    clerk.person.key(ImGuiKey_RightArrow);
    // All at once, as after a frame that took long: three cells, a tab behind each.
    for (const char* words : {"Bridge shop", "2040-12-20", "Sill Dun"}) {
        io.AddInputCharactersUTF8(words);
        io.AddKeyEvent(ImGuiKey_Tab, true);
        io.AddKeyEvent(ImGuiKey_Tab, false);
    }
    for (int i = 0; i < 40; ++i) {
        clerk.person.frame();
        clerk.keep();
    }
    REQUIRE(clerk.book.lines.size() == 1);
    CHECK(clerk.book.lines[0].who == "Bridge shop");
    CHECK(write_day(clerk.book.lines[0].due) == "2040-12-20");
    CHECK(clerk.book.lines[0].name == "Sill Dun");
}

TEST_CASE(
    "every page for a printer is a press away, and the swap's tags once somebody is in the swap") {
    Clerk clerk(OrdersView::paper);
    const auto presses = [&](const std::string& label) {
        clerk.person.effects.clear();
        clerk.person.press(label);
        const auto& effects = clerk.person.effects;
        return effects.size() == 1 && effects[0].kind == EffectKind::page ? effects[0].number : -1;
    };
    CHECK(presses("Card##paper") == static_cast<int>(Paper::card));
    CHECK(presses("Handout, left##paper") == static_cast<int>(Paper::handout_left));
    CHECK(presses("Gauge strip##paper") == static_cast<int>(Paper::gauge));
    const auto has = [&](const std::string& label) {
        const auto& all = clerk.person.shown.controls;
        return std::any_of(all.begin(), all.end(),
                           [&](const DrawnControl& c) { return c.label == label; });
    };
    CHECK_FALSE(has("Swap tags##paper"));
    clerk.person.model.settings.book.roster = {{"Brun", false}};
    clerk.person.frame();
    clerk.person.frame();
    CHECK(has("Swap tags##paper"));
}

TEST_CASE(
    "every view of the orders draws in any window, with its words whole or with an ellipsis") {
    for (const auto& [width, height] :
         {std::pair{800, 480}, {600, 960}, {1280, 800}, {1080, 1920}}) {
        for (int view = 0; view <= static_cast<int>(OrdersView::paper); ++view) {
            Clerk clerk(static_cast<OrdersView>(view));
            ImGui::GetIO().DisplaySize = {static_cast<float>(width), static_cast<float>(height)};
            clerk.person.frame();
            clerk.person.frame();
            CAPTURE(width);
            CAPTURE(view);
            CHECK(clerk.person.shown.controls.size() > 14);
            for (const DrawnControl& c : clerk.person.shown.controls) {
                CAPTURE(c.label);
                CHECK(c.box.right() <= static_cast<float>(width) + 1.0F);
                CHECK(c.box.x >= -1.0F);
            }
            // 2026-11-30: seven in a row were cut in a narrow window
            for (const char* name : {"Orders", "Classes", "Paper"}) {
                const auto& all = clerk.person.shown.texts;
                const auto it = std::find_if(all.begin(), all.end(),
                                             [&](const DrawnText& t) { return t.text == name; });
                REQUIRE(it != all.end());
                CHECK(it->whole);
            }
        }
    }
}

TEST_CASE("settings of the book are read back as they were written, and odd ones are refused") {
    BookSettings s;
    s.spoil = 0.08;
    s.sure = 0.0;
    s.minutes = {60, 0, 90, 0, 60, 240, 240};
    s.hourly = {1550};
    s.tax = 0.1;
    s.currency = "crowns";
    s.roster = {{"Ada of the weir", true}, {"Brun", false}};
    s.wright = true;
    s.letter = true;
    s.maker = "Brun of the lock";
    std::vector<std::pair<std::string, std::string>> texts;
    add_texts(s, texts);
    BookSettings read;
    for (const auto& [key, text] : texts) CHECK(take_setting(read, key, text));
    CHECK(read == s);
    for (const auto& [key, text] : std::initializer_list<std::pair<const char*, const char*>>{
             {"spoilt share", "1.5"},
             {"spoilt share", "nan"},
             {"minutes a day", "1 2 3"},
             {"minutes a day", "-5"},
             {"an hour's worth", "-1"},
             {"learning curve", "mine"},
             {"currency", "a very long word for a currency"},
             {"no such", "1"}}) {
        CAPTURE(key);
        CHECK_FALSE(take_setting(read, key, text));
        CHECK(read == s);
    }
    CHECK(text_of(roster_of("a; +b;;A;c;d ")) == "a;+b;c;d"); // no name twice, none empty
    CHECK(text_of(std::vector<Sender>{{"x;y", false}}) == "x,y");
    CHECK(take_setting(read, "minutes a day", "90"));
    CHECK(read.minutes[6] == 90.0);
}

TEST_CASE("no usual key works two commands") {
    const KeyMap map = usual_keys();
    for (const KeyUse& use : map) {
        CAPTURE(use.key);
        CHECK(command_of(map, use.key) == use.command);
    }
}
