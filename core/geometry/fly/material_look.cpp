// The usual look of a material where its words name no colour.

#include "core/geometry/fly/colour.h"

namespace wrapwright {

namespace {

unsigned substance_srgb(Substance substance) {
    switch (substance) {
    case Substance::lead: return 0x74777C;
    case Substance::tin: return 0xA9ACAE;
    case Substance::bismuth: return 0x9A959A;
    case Substance::tungsten: return 0x4A4C52;
    case Substance::brass: return 0xD0A340;
    case Substance::copper: return 0xB5652F;
    case Substance::steel: return 0x8E9196;
    case Substance::aluminium: return 0xC4C7CA;
    case Substance::glass: return 0xB8CCD0;
    default: return 0;
    }
}

unsigned kind_srgb(MaterialKind kind) {
    switch (kind) {
    case MaterialKind::thread: return 0x4A3B2C;
    case MaterialKind::ballast: return 0x74777C;
    case MaterialKind::wire: return 0xB5652F;
    case MaterialKind::tinsel:
    case MaterialKind::oval: return 0xC9CCD0;
    case MaterialKind::floss: return 0xC98F3C;
    case MaterialKind::yarn: return 0x8A7355;
    case MaterialKind::chenille: return 0x55582E;
    case MaterialKind::herl: return 0x3E5A32;
    case MaterialKind::quill: return 0xA98B5C;
    case MaterialKind::biot: return 0x8A6A45;
    case MaterialKind::fibres: return 0x7A5A3A;
    case MaterialKind::hackle: return 0x8A5A32;
    case MaterialKind::soft_hackle: return 0x8C7355;
    case MaterialKind::marabou: return 0x55582E;
    case MaterialKind::cdc: return 0xA7A196;
    case MaterialKind::hair: return 0xA98B66;
    case MaterialKind::slip: return 0x8D9096;
    case MaterialKind::dubbing: return 0x8A7355;
    case MaterialKind::foam: return 0xB79C5A;
    case MaterialKind::film: return 0xC8C8B8;
    case MaterialKind::legs: return 0x6A5232;
    case MaterialKind::flash: return 0xDDE4E8;
    case MaterialKind::bead:
    case MaterialKind::cone: return 0xD0A340;
    case MaterialKind::dumbbell: return 0x8C8F90;
    case MaterialKind::tube: return 0xD8D8D0;
    case MaterialKind::coat: return 0xEDE8DC;
    case MaterialKind::eyes: return 0xE3C23A;
    case MaterialKind::other: return 0x8A8274;
    }
    return 0x8A8274;
}

bool is_metal(MaterialKind kind) {
    switch (kind) {
    case MaterialKind::ballast:
    case MaterialKind::wire:
    case MaterialKind::bead:
    case MaterialKind::cone:
    case MaterialKind::dumbbell: return true;
    default: return false;
    }
}

} // namespace

Colour colour_of(const RecipeMaterial& material) {
    if (const auto tint = colour_of_words(material.tint)) return *tint;
    if (const auto word = colour_of_words(material.colour)) return *word;
    if (const auto text = colour_of_words(material.text)) return *text;
    const unsigned metal = is_metal(material.kind) ? substance_srgb(material.substance) : 0U;
    return linear_colour(metal != 0U ? metal : kind_srgb(material.kind));
}

Look look_of(const RecipeMaterial& material) {
    switch (material.kind) {
    case MaterialKind::ballast: return Look::lead;
    case MaterialKind::wire:
    case MaterialKind::tinsel:
    case MaterialKind::oval:
    case MaterialKind::flash:
    case MaterialKind::cone:
    case MaterialKind::dumbbell: return Look::metal;
    case MaterialKind::bead:
        return material.substance == Substance::glass ? Look::film : Look::metal;
    case MaterialKind::yarn:
    case MaterialKind::chenille:
    case MaterialKind::dubbing: return Look::fur;
    case MaterialKind::hair: return Look::hair;
    case MaterialKind::film:
    case MaterialKind::coat:
    case MaterialKind::tube: return Look::film;
    case MaterialKind::foam: return Look::foam;
    case MaterialKind::herl:
    case MaterialKind::quill:
    case MaterialKind::biot:
    case MaterialKind::fibres:
    case MaterialKind::hackle:
    case MaterialKind::soft_hackle:
    case MaterialKind::marabou:
    case MaterialKind::cdc:
    case MaterialKind::slip: return Look::fibre;
    case MaterialKind::eyes: return Look::metal;
    case MaterialKind::thread:
    case MaterialKind::floss:
    case MaterialKind::legs:
    case MaterialKind::other: return Look::thread;
    }
    return Look::thread;
}

} // namespace wrapwright
