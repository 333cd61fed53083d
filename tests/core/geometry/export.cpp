#include "core/geometry/export.h"
#include "core/geometry/primitives.h"
#include "tests/support/close.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <cstring>
#include <doctest/doctest.h>
#include <nlohmann/json.hpp>
#include <vector>

using namespace wrapwright;
using nlohmann::json;
using wrapwright::test::within;
using wrapwright::test::within_share;

namespace {

template <class T>
T read(const std::string& bytes, std::size_t at) {
    REQUIRE(at + sizeof(T) <= bytes.size());
    T value;
    std::memcpy(&value, bytes.data() + at, sizeof(T));
    return value;
}

struct Glb {
    json description;
    std::string binary;
};

// Takes a GLB apart as section 4.4 of the glTF 2.0 specification lays it out.
Glb take_apart(const std::string& bytes) {
    Glb glb;
    CHECK(bytes.substr(0, 4) == "glTF");
    CHECK(read<std::uint32_t>(bytes, 4) == 2);
    CHECK(read<std::uint32_t>(bytes, 8) == bytes.size());
    const auto json_bytes = read<std::uint32_t>(bytes, 12);
    CHECK(bytes.substr(16, 4) == "JSON");
    CHECK(json_bytes % 4 == 0);
    glb.description = json::parse(bytes.substr(20, json_bytes));
    const std::size_t next = 20 + json_bytes;
    if (next < bytes.size()) {
        const auto binary_bytes = read<std::uint32_t>(bytes, next);
        CHECK(binary_bytes % 4 == 0);
        CHECK(bytes.substr(next + 4, 4) == std::string("BIN\0", 4));
        CHECK(next + 8 + binary_bytes == bytes.size());
        glb.binary = bytes.substr(next + 8);
    }
    return glb;
}

} // namespace

TEST_CASE("a GLB holds each mesh with its name, colour, metres and true bounds") {
    Mesh ball, slab;
    append_sphere(ball, 1.5F, 16);
    append_slab(slab, {2.0F, 4.0F, 6.0F});
    const std::vector<NamedMesh> meshes{
        {&ball, "bead \"gold\" \\ \n", {0.9F, 0.7F, 0.2F}, 1.0F, 0.25F},
        {&slab, "Flügel", {0.1F, 0.2F, 0.3F}, 0.0F, 0.8F, 0.5F}};
    const Glb glb = take_apart(write_glb(meshes));
    const json& d = glb.description;
    CHECK(d["asset"]["version"] == "2.0");
    REQUIRE(d["meshes"].size() == 2);
    REQUIRE(d["scenes"][0]["nodes"].size() == 2);
    CHECK(d["buffers"][0]["byteLength"] == glb.binary.size());
    for (std::size_t i = 0; i < 2; ++i) {
        const NamedMesh& m = meshes[i];
        CHECK(d["nodes"][i]["name"] == m.name);
        const json& primitive =
            d["meshes"][d["nodes"][i]["mesh"].get<std::size_t>()]["primitives"][0];
        const json& material = d["materials"][primitive["material"].get<std::size_t>()];
        const json& surface = material["pbrMetallicRoughness"];
        for (std::size_t c = 0; c < 3; ++c)
            CHECK(surface["baseColorFactor"][c].get<float>() == m.rgb[c]);
        CHECK(surface["baseColorFactor"][3] == m.opacity);
        CHECK(surface["metallicFactor"] == m.metallic);
        CHECK(surface["roughnessFactor"].get<float>() == m.roughness);
        CHECK(material.contains("alphaMode") == (m.opacity < 1.0F));

        const auto accessor = [&](const json& number) {
            return d["accessors"][number.get<std::size_t>()];
        };
        const json place = accessor(primitive["attributes"]["POSITION"]);
        const json normal = accessor(primitive["attributes"]["NORMAL"]);
        const json index = accessor(primitive["indices"]);
        CHECK(place["count"] == m.mesh->vertices.size());
        CHECK(index["count"] == m.mesh->indices.size());
        const json& view = d["bufferViews"][place["bufferView"].get<std::size_t>()];
        const json& index_view = d["bufferViews"][index["bufferView"].get<std::size_t>()];
        CHECK(view["byteStride"] == 24);
        CHECK(view["byteOffset"].get<std::size_t>() + view["byteLength"].get<std::size_t>() <=
              glb.binary.size());
        CHECK(index_view["byteOffset"].get<std::size_t>() +
                  index_view["byteLength"].get<std::size_t>() <=
              glb.binary.size());
        float low[3] = {1e9F, 1e9F, 1e9F};
        float high[3] = {-1e9F, -1e9F, -1e9F};
        for (std::size_t v = 0; v < m.mesh->vertices.size(); ++v) {
            const std::size_t at = view["byteOffset"].get<std::size_t>() + 24 * v;
            double square = 0.0;
            for (std::size_t c = 0; c < 3; ++c) {
                const auto x = read<float>(glb.binary, at + 4 * c);
                CHECK(within(x, m.mesh->vertices[v].position[c] / 1000.0, 1e-9));
                low[c] = std::min(low[c], x);
                high[c] = std::max(high[c], x);
                const auto n =
                    read<float>(glb.binary, at + normal["byteOffset"].get<std::size_t>() + 4 * c);
                square += static_cast<double>(n) * n;
            }
            CHECK(within(square, 1.0, 1e-5));
        }
        for (std::size_t c = 0; c < 3; ++c) { // the specification asks for exactly these
            CHECK(place["min"][c].get<float>() == low[c]);
            CHECK(place["max"][c].get<float>() == high[c]);
        }
        for (std::size_t k = 0; k < m.mesh->indices.size(); ++k) {
            CHECK(read<std::uint32_t>(glb.binary, index_view["byteOffset"].get<std::size_t>() +
                                                      4 * k) == m.mesh->indices[k]);
        }
    }
}

TEST_CASE("a GLB of nothing is still a scene, and an empty mesh is left out of one") {
    const Glb nothing = take_apart(write_glb({}));
    CHECK(nothing.description["asset"]["version"] == "2.0");
    CHECK(nothing.binary.empty());
    Mesh ball;
    const Mesh empty;
    append_sphere(ball, 1.0F, 8);
    const std::vector<NamedMesh> meshes{{&empty, "nothing"}, {&ball, "ball"}};
    const Glb one = take_apart(write_glb(meshes));
    REQUIRE(one.description["nodes"].size() == 1);
    CHECK(one.description["nodes"][0]["name"] == "ball");
}

TEST_CASE("an STL holds every triangle in millimetres with its flat normal") {
    Mesh ball, slab;
    append_sphere(ball, 1.5F, 16);
    append_slab(slab, {2.0F, 4.0F, 6.0F});
    const std::vector<NamedMesh> meshes{{&ball, "ball"}, {&slab, "slab"}};
    const std::string bytes = write_stl(meshes);
    CHECK(bytes.substr(0, 5) != "solid"); // readers take that for the text form
    const auto triangles = read<std::uint32_t>(bytes, 80);
    CHECK(triangles == (ball.indices.size() + slab.indices.size()) / 3);
    REQUIRE(bytes.size() == 84 + std::size_t{50} * triangles);
    double six_volumes = 0.0;
    for (std::uint32_t t = 0; t < triangles; ++t) {
        double x[4][3];
        for (std::size_t i = 0; i < 12; ++i) {
            x[i / 3][i % 3] = read<float>(bytes, 84 + std::size_t{50} * t + 4 * i);
        }
        const double* a = x[1];
        const double* b = x[2];
        const double* c = x[3];
        six_volumes += a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) +
                       a[2] * (b[0] * c[1] - b[1] * c[0]);
        CHECK(within(std::hypot(x[0][0], x[0][1], x[0][2]), 1.0, 1e-5));
    }
    CHECK(within_share(six_volumes / 6.0, check_mesh(ball).volume_mm3 + check_mesh(slab).volume_mm3,
                       1e-6));
}
