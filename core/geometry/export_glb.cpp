#include "core/geometry/export.h"

#include "core/assert.h"
#include "core/units/number_text.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstring>
#include <limits>
#include <type_traits>

static_assert(std::endian::native == std::endian::little, "both formats are little-endian");

namespace wrapwright {

namespace {

// Numbers of the format.
constexpr int float_component = 5126;
constexpr int uint_component = 5125;
constexpr int vertex_target = 34962;
constexpr int index_target = 34963;

// A JSON text that is written from front to back.
class Json {
  public:
    Json& raw(std::string_view text) {
        text_ += text;
        return *this;
    }
    // "key": with the comma that belongs before it.
    Json& key(std::string_view name) {
        comma();
        text_ += '"';
        text_ += name;
        text_ += "\":";
        return *this;
    }
    Json& comma() {
        if (!text_.empty() && std::string_view("{[:,").find(text_.back()) == std::string_view::npos)
            text_ += ',';
        return *this;
    }
    template <class Number>
    Json& number(Number value) {
        comma();
        if constexpr (std::is_integral_v<Number>) {
            text_ += std::to_string(value);
        } else {
            text_ += write_number(static_cast<double>(value));
        }
        return *this;
    }
    Json& string(std::string_view value) {
        comma();
        text_ += '"';
        for (const char c : value) {
            if (c == '"' || c == '\\') {
                text_ += '\\';
                text_ += c;
            } else if (static_cast<unsigned char>(c) < 0x20) {
                constexpr std::string_view hex = "0123456789abcdef";
                text_ += "\\u00";
                text_ += hex[static_cast<unsigned char>(c) >> 4];
                text_ += hex[static_cast<unsigned char>(c) & 15];
            } else {
                text_ += c;
            }
        }
        text_ += '"';
        return *this;
    }
    [[nodiscard]] const std::string& text() const { return text_; }

  private:
    std::string text_;
};

// One mesh's share of the binary chunk.
struct Block {
    std::size_t vertices = 0; // where they start
    std::size_t indices = 0;
    float low[3], high[3];
};

void put(std::string& out, const void* data, std::size_t bytes) {
    out.append(static_cast<const char*>(data), bytes);
}

void put(std::string& out, std::uint32_t value) { put(out, &value, sizeof value); }

// In metres, with unit normals: a degenerate one becomes any.
Vertex exported(const Vertex& v) {
    Vertex w = v;
    for (float& x : w.position) x /= 1000.0F;
    const float length = std::hypot(v.normal[0], v.normal[1], v.normal[2]);
    for (int i = 0; i < 3; ++i) {
        w.normal[i] = length > 0.0F ? v.normal[i] / length : (i == 0 ? 1.0F : 0.0F);
    }
    return w;
}

Block put_mesh(std::string& binary, const Mesh& mesh) {
    Block block;
    block.vertices = binary.size();
    std::fill_n(block.low, 3, std::numeric_limits<float>::max());
    std::fill_n(block.high, 3, std::numeric_limits<float>::lowest());
    for (const Vertex& v : mesh.vertices) {
        const Vertex w = exported(v);
        for (int i = 0; i < 3; ++i) {
            block.low[i] = std::min(block.low[i], w.position[i]);
            block.high[i] = std::max(block.high[i], w.position[i]);
        }
        put(binary, &w, sizeof w);
    }
    block.indices = binary.size();
    put(binary, mesh.indices.data(), mesh.indices.size() * sizeof(std::uint32_t));
    return block;
}

void triple(Json& json, const float (&values)[3]) {
    json.raw("[");
    for (const float x : values) json.number(x);
    json.raw("]");
}

void put_material(Json& json, const NamedMesh& m) {
    json.comma().raw("{").key("name").string(m.name);
    json.key("pbrMetallicRoughness").raw("{").key("baseColorFactor").raw("[");
    json.number(m.rgb[0]).number(m.rgb[1]).number(m.rgb[2]).number(m.opacity).raw("]");
    json.key("metallicFactor").number(m.metallic);
    json.key("roughnessFactor").number(m.roughness).raw("}");
    if (m.opacity < 1.0F) json.key("alphaMode").string("BLEND");
    json.raw("}");
}

void put_view(Json& json, std::size_t at, std::size_t bytes, int target) {
    json.comma().raw("{").key("buffer").number(0).key("byteOffset").number(at);
    json.key("byteLength").number(bytes).key("target").number(target);
    if (target == vertex_target) json.key("byteStride").number(sizeof(Vertex));
    json.raw("}");
}

std::string describe(std::span<const NamedMesh> meshes, std::span<const Block> blocks,
                     std::size_t binary_bytes) {
    const std::size_t n = meshes.size();
    const auto list = [&](Json& json, std::string_view name, auto&& each) {
        json.key(name).raw("[");
        for (std::size_t i = 0; i < n; ++i) each(i);
        json.raw("]");
    };
    Json json;
    json.raw("{").key("asset").raw("{").key("version").string("2.0");
    json.key("generator").string("wrapwright").raw("}").key("scene").number(0);
    json.key("scenes").raw("[{");
    if (n == 0) return json.raw("}]}").text(); // empty lists are not allowed
    list(json, "nodes", [&](std::size_t i) { json.number(i); });
    json.raw("}]");
    list(json, "nodes", [&](std::size_t i) {
        json.comma().raw("{").key("mesh").number(i).key("name").string(meshes[i].name).raw("}");
    });
    list(json, "meshes", [&](std::size_t i) {
        json.comma().raw("{").key("name").string(meshes[i].name);
        json.key("primitives").raw("[{").key("attributes").raw("{");
        json.key("POSITION").number(3 * i).key("NORMAL").number(3 * i + 1).raw("}");
        json.key("indices").number(3 * i + 2).key("material").number(i).raw("}]}");
    });
    list(json, "materials", [&](std::size_t i) { put_material(json, meshes[i]); });
    list(json, "accessors", [&](std::size_t i) {
        const std::size_t vertices = meshes[i].mesh->vertices.size();
        for (const bool normal : {false, true}) {
            json.comma().raw("{").key("bufferView").number(2 * i);
            json.key("byteOffset").number(normal ? offsetof(Vertex, normal) : 0);
            json.key("componentType").number(float_component).key("count").number(vertices);
            json.key("type").string("VEC3");
            if (!normal) {
                triple(json.key("min"), blocks[i].low);
                triple(json.key("max"), blocks[i].high);
            }
            json.raw("}");
        }
        json.comma().raw("{").key("bufferView").number(2 * i + 1);
        json.key("componentType").number(uint_component);
        json.key("count").number(meshes[i].mesh->indices.size()).key("type").string("SCALAR");
        json.raw("}");
    });
    list(json, "bufferViews", [&](std::size_t i) {
        put_view(json, blocks[i].vertices, blocks[i].indices - blocks[i].vertices, vertex_target);
        put_view(json, blocks[i].indices, meshes[i].mesh->indices.size() * sizeof(std::uint32_t),
                 index_target);
    });
    json.key("buffers").raw("[{").key("byteLength").number(binary_bytes).raw("}]}");
    return json.text();
}

} // namespace

std::string write_glb(std::span<const NamedMesh> meshes) {
    std::vector<NamedMesh> full; // a mesh without triangles has no place in the format
    std::vector<Block> blocks;
    std::string binary;
    for (const NamedMesh& m : meshes) {
        if (m.mesh->indices.empty()) continue;
        full.push_back(m);
        blocks.push_back(put_mesh(binary, *m.mesh));
    }
    std::string json = describe(full, blocks, binary.size());
    json.resize((json.size() + 3) / 4 * 4, ' '); // chunks are multiples of four
    const std::size_t total = 12 + 8 + json.size() + (binary.empty() ? 0 : 8 + binary.size());
    WW_ASSERT(total <= std::numeric_limits<std::uint32_t>::max());

    std::string out;
    out.reserve(total);
    out += "glTF";
    put(out, std::uint32_t{2});
    put(out, static_cast<std::uint32_t>(total));
    put(out, static_cast<std::uint32_t>(json.size()));
    out += "JSON";
    out += json;
    if (!binary.empty()) {
        put(out, static_cast<std::uint32_t>(binary.size()));
        put(out, "BIN", 4); // with its closing zero
        out += binary;
    }
    return out;
}

} // namespace wrapwright
