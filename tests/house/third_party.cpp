// The fetched sources are the versions that the program is written for, and work as configured.

#include <doctest/doctest.h>
#include <imgui.h>
#include <sqlite3.h>

#include <string>

TEST_CASE("one header and one library of SQLite 3.46.1 are in use") {
    CHECK(std::string(sqlite3_libversion()) == SQLITE_VERSION);
    CHECK(std::string(SQLITE_VERSION) == "3.46.1");
}

TEST_CASE("SQLite searches full text without accents and refuses text in double quotes") {
    sqlite3* db = nullptr;
    REQUIRE(sqlite3_open(":memory:", &db) == SQLITE_OK);
    const char* found =
        "create virtual table words using fts5(word, tokenize = 'unicode61 remove_diacritics 2');"
        "insert into words values ('Höhle'); create table hit as select * from words('hohle');";
    CHECK(sqlite3_exec(db, found, nullptr, nullptr, nullptr) == SQLITE_OK);
    sqlite3_stmt* count = nullptr;
    REQUIRE(sqlite3_prepare_v2(db, "select count(*) from hit", -1, &count, nullptr) == SQLITE_OK);
    REQUIRE(sqlite3_step(count) == SQLITE_ROW);
    CHECK(sqlite3_column_int(count, 0) == 1);
    sqlite3_finalize(count);
    CHECK(sqlite3_exec(db, "select \"no such column\"", nullptr, nullptr, nullptr) == SQLITE_ERROR);
    sqlite3_close(db);
}

TEST_CASE("Dear ImGui 1.90.1 or newer builds a frame and sees a key pressed and let go in one") {
    CHECK(IMGUI_VERSION_NUM >= 19010);
    REQUIRE(IMGUI_CHECKVERSION());
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.DisplaySize = {320, 200};
    unsigned char* pixels = nullptr;
    int width = 0;
    int height = 0;
    io.Fonts->GetTexDataAsAlpha8(&pixels, &width, &height);
    io.AddKeyEvent(ImGuiKey_F5, true);
    io.AddKeyEvent(ImGuiKey_F5, false);
    int presses = 0;
    int vertices = 0;
    for (int frame = 0; frame < 3; ++frame) {
        io.DeltaTime = 1.0F / 60;
        ImGui::NewFrame();
        presses += ImGui::IsKeyPressed(ImGuiKey_F5, false) ? 1 : 0;
        ImGui::SetNextWindowPos({10, 10});
        ImGui::Begin("window");
        ImGui::TextUnformatted("text");
        ImGui::End();
        ImGui::Render();
        vertices = ImGui::GetDrawData()->TotalVtxCount;
    }
    CHECK(presses == 1);
    CHECK(vertices > 0);
    ImGui::DestroyContext();
}
