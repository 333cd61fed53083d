// picture and model: what stands in the files that they write.

#include "tests/platform/cli/program.h"

#include <cstdint>
#include <doctest/doctest.h>

using namespace wrapwright::test;

namespace {

std::uint32_t big_endian(const std::string& bytes, std::size_t at) {
    std::uint32_t n = 0;
    for (std::size_t i = at; i < at + 4; ++i) n = n << 8U | static_cast<unsigned char>(bytes[i]);
    return n;
}

std::uint32_t little_endian(const std::string& bytes, std::size_t at) {
    std::uint32_t n = 0;
    for (std::size_t i = at + 4; i-- > at;) n = n << 8U | static_cast<unsigned char>(bytes[i]);
    return n;
}

} // namespace

TEST_CASE("a picture is a PNG of the size that was asked for") {
    const Scratch scratch;
    const std::string file = scratch.folder().string() + "/fly.png";
    const Ran ran = wrapwright::test::wrapwright({"picture", "weirfoot-jig", "--size", "14",
                                                  "--step", "8", "--turn", "90", "--width", "320",
                                                  "--height", "200", "-o", file});
    CAPTURE(ran.err);
    REQUIRE(ran.code == 0);
    const std::string png = bytes_of(file);
    // Source  PNG (ISO/IEC 15948) 5.2 signature; 11.2.2 IHDR: width and height, big-endian
    CHECK(png.substr(0, 8) == "\x89PNG\r\n\x1a\n");
    CHECK(big_endian(png, 16) == 320);
    CHECK(big_endian(png, 20) == 200);
}

TEST_CASE("the same picture asked for twice has the same bytes, and another step has others") {
    const Scratch scratch;
    const auto drawn = [&](const char* step) {
        const std::string file = scratch.folder().string() + "/fly.png";
        const Ran ran =
            wrapwright::test::wrapwright({"picture", "tailrace-spider", "--step", step, "--width",
                                          "240", "--height", "160", "-o", file});
        REQUIRE(ran.code == 0);
        return bytes_of(file);
    };
    const std::string once = drawn("2");
    CHECK(once == drawn("2"));
    CHECK(once != drawn("3"));
}

TEST_CASE("a model is a GLB whose header tells its length") {
    const Scratch scratch;
    const std::string file = scratch.folder().string() + "/fly.glb";
    REQUIRE(wrapwright::test::wrapwright({"model", "sill-dun", "--size", "14", "-o", file}).code ==
            0);
    const std::string glb = bytes_of(file);
    // Source  glTF 2.0 (ISO/IEC 12113) 4.4.2: magic "glTF", version 2, length; first chunk is JSON
    CHECK(glb.substr(0, 4) == "glTF");
    CHECK(little_endian(glb, 4) == 2);
    CHECK(little_endian(glb, 8) == glb.size());
    CHECK(glb.substr(16, 4) == "JSON");
    const auto json = nlohmann::json::parse(glb.substr(20, little_endian(glb, 12)));
    CHECK(json["asset"]["version"] == "2.0");
    CHECK(json["meshes"].size() >= 3); // hook, body, hackle at the least
}

TEST_CASE("a model is a binary STL of as many triangles as it says") {
    const Scratch scratch;
    const std::string file = scratch.folder().string() + "/fly.stl";
    REQUIRE(wrapwright::test::wrapwright({"model", "sill-dun", "--size", "14", "-o", file}).code ==
            0);
    const std::string stl = bytes_of(file);
    // Source  the common layout of binary STL: 80 bytes, a count, 50 bytes a triangle (from memory)
    CHECK(stl.size() == 84 + std::size_t{50} * little_endian(stl, 80));
    CHECK(little_endian(stl, 80) > 1000);
}

TEST_CASE("a step that there is not and a kind of file that there is not are refused") {
    const Scratch scratch;
    const std::string out = scratch.folder().string();
    for (const std::vector<std::string>& arguments : std::vector<std::vector<std::string>>{
             {"picture", "sill-dun", "--step", "99", "-o", out + "/a.png"},
             {"picture", "sill-dun", "--step", "-1", "-o", out + "/a.png"},
             {"picture", "sill-dun", "--turn", "nan", "-o", out + "/a.png"},
             {"picture", "sill-dun", "--width", "9", "-o", out + "/a.png"},
             {"picture", "sill-dun"},
             {"model", "sill-dun", "-o", out + "/a.obj"}}) {
        const Ran ran = wrapwright::test::wrapwright(arguments);
        CAPTURE(ran.err);
        CHECK(ran.code == 2);
        CHECK(ran.out.empty());
    }
    CHECK(std::filesystem::is_empty(out));
}

TEST_CASE("a folder that cannot be written is told apart from bad input") {
    for (const char* command : {"picture", "model"}) {
        const std::string name =
            std::string("/proc/no/fly") + (command[0] == 'p' ? ".png" : ".stl");
        const Ran ran = wrapwright::test::wrapwright({command, "sill-dun", "-o", name});
        CAPTURE(ran.err);
        CHECK(ran.code == 3);
        CHECK(ran.err.find(name) != std::string::npos);
    }
}
