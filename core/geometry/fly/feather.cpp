#include "core/geometry/fly/feather.h"

#include <algorithm>
#include <cmath>
#include <glm/geometric.hpp>

namespace wrapwright {

bool is_barred(const RecipeMaterial& material) {
    for (const std::string_view word :
         {"barred", "grizzly", "speckled", "mottled", "mallard", "teal", "partridge"}) {
        for (const std::string* text : {&material.colour, &material.text}) {
            if (text->find(word) != std::string::npos) return true;
        }
    }
    return false;
}

void add_barred(const Sketch& sketch, Mesh& light, Mesh& dark, const Fibre& fibre, int bands,
                int offset) {
    for (int i = 0; i < bands; ++i) {
        const float from = static_cast<float>(i) / static_cast<float>(bands);
        const float to = static_cast<float>(i + 1) / static_cast<float>(bands);
        add_fibre((i + offset) % 2 == 0 ? light : dark, sketch.sections.round, fibre, 2, from, to);
    }
}

void add_fluff(const Sketch& sketch, Mesh& mesh, const Fibre& barb, Dice& dice, float length,
               int most) {
    // No more than the picture can tell apart.
    const int count = std::clamp(static_cast<int>(sketch.pixels(barb.length) / 5.0F), 6, most);
    for (int k = 0; k < count; ++k) {
        const float u =
            0.08F + 0.92F * (static_cast<float>(k) + dice.even()) / static_cast<float>(count);
        const glm::vec3 near = fibre_point(barb, u - 0.03F);
        const glm::vec3 along = glm::normalize(fibre_point(barb, std::min(u + 0.03F, 1.0F)) - near);
        glm::vec3 aside =
            glm::cross(along, glm::vec3{dice.bell(), dice.bell(), 0.3F + dice.bell()});
        aside = aside / std::max(glm::length(aside), 1e-4F);
        Fibre flue;
        flue.root = fibre_point(barb, std::min(u, 1.0F));
        flue.direction = glm::normalize(along + dice.between(0.2F, 0.55F) * aside);
        flue.bend = 0.5F * along - 0.10F * aside;
        flue.length = length * dice.between(0.5F, 1.0F) * (1.1F - 0.5F * u);
        flue.thick = sketch.visible(0.014F, 1.0F);
        flue.tip = 0.4F * flue.thick;
        add_fibre(mesh, sketch.sections.fine, flue, 3);
    }
}

void add_feather(Sketch& sketch, int material, int part, int act, const FeatherShape& shape,
                 int seed) {
    const Colour colour = sketch.colour(material);
    const Shades shades = sketch.open_shades(Look::fibre, colour, part, act, 0.18F);
    const RecipeMaterial* words = sketch.material(material);
    const bool barred = words && is_barred(*words);
    const int bars = sketch.open(Look::fibre, shade(colour, barred ? 0.25F : 0.6F), part, act);
    const glm::vec3 across = glm::normalize(glm::cross(shape.face, shape.direction));

    Fibre stem;
    stem.root = shape.root;
    stem.direction = shape.direction;
    stem.bend = -shape.curve * shape.face;
    stem.length = shape.length;
    stem.thick = sketch.visible(0.012F * shape.length + 0.08F, 1.2F);
    stem.tip = sketch.visible(0.02F, 0.4F);
    add_fibre(sketch.mesh(bars), sketch.sections.round, stem, 16);

    const int rows = std::clamp(static_cast<int>(sketch.pixels(shape.length) / 3.0F), 30, 150);
    Dice dice(seed, 307);
    for (int i = 0; i < 2 * rows; ++i) {
        const float side = i % 2 == 0 ? 1.0F : -1.0F;
        const float u = shape.bare + (1.0F - shape.bare) *
                                         (0.5F * static_cast<float>(i) + dice.even()) /
                                         static_cast<float>(rows + 1);
        // Full in the middle, drawn in to a point.
        const float vane = std::pow(std::sin(3.14159F * std::pow(std::min(u, 1.0F), 0.8F)), 0.6F);
        const glm::vec3 along = glm::normalize(fibre_point(stem, std::min(u + 0.02F, 1.0F)) -
                                               fibre_point(stem, std::max(u - 0.02F, 0.0F)));
        Fibre barb;
        barb.root = fibre_point(stem, std::min(u, 1.0F));
        barb.direction =
            glm::normalize(along * 0.85F + side * across + 0.06F * dice.bell() * shape.face);
        barb.bend = 0.30F * along - 0.10F * side * across - 0.12F * shape.face;
        barb.length = 0.72F * shape.width * std::max(vane, 0.12F) * dice.between(0.93F, 1.0F);
        barb.thick = sketch.visible(1.5F * shape.length / static_cast<float>(rows), 1.0F);
        barb.thick = std::min(barb.thick, sketch.visible(0.11F, 1.0F));
        barb.tip = 0.2F * barb.thick;
        barb.face = shape.face;
        Mesh& own = shades.mesh(sketch, i / 2);
        const bool dark = barred && static_cast<int>(u * 14.0F) % 2 == 1;
        add_fibre(dark ? sketch.mesh(bars) : own, sketch.sections.blade, barb, 5);
    }
}

} // namespace wrapwright
