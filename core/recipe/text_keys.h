#pragma once
// Every key of the text form, once: the reader, the writer and the check of the schema walk it.
//
// A visitor has one member function for each way that a value is written (see text_read.cpp). The
// order here is the order in a file.

#include "core/recipe/measure.h"
#include "core/recipe/recipe.h"

#include <concepts>
#include <type_traits>

namespace wrapwright::detail {

/// T, or const T: the writer walks what it may not change.
template <class X, class T>
concept Like = std::same_as<std::remove_const_t<X>, T>;

template <class V, Like<Provenance> P>
void visit_keys(V& v, P& p) {
    v.text("author", p.author);
    v.text("date", p.date);
    v.text("source", p.source);
    v.text("page", p.page);
    v.text("permission", p.permission);
    v.text("credit", p.credit);
    v.text("changes", p.changes);
    v.text("version_of", p.version_of);
    v.text("language", p.language);
    v.rest(p.unknown);
}

template <class V, Like<Base> B>
void visit_keys(V& v, B& b) {
    v.text("id", b.id);
    v.text("kind", b.kind);
    v.text("text", b.text);
    v.maybe_word("family", b.family);
    v.amount("size", b.size, AmountOf::size);
    v.hook("measured", b.measured, b.measured_json);
    v.flag("dressed", b.dressed, true);
    v.rest(b.unknown);
}

template <class V, Like<Joint> J>
void visit_keys(V& v, J& j) {
    v.text("id", j.id);
    v.text("from", j.from);
    v.text("to", j.to);
    v.text("material", j.material);
    v.amount("length", j.length, AmountOf::length);
    v.text("beads", j.beads);
    v.amount("bead_count", j.bead_count, AmountOf::count);
    v.rest(j.unknown);
}

template <class V, Like<RecipeMaterial> M>
void visit_keys(V& v, M& m) {
    v.text("id", m.id);
    v.word("kind", m.kind);
    v.text("text", m.text);
    v.text("colour", m.colour);
    v.tint("tint", m.tint);
    v.word("substance", m.substance, Substance::unknown);
    v.word("coat", m.coat, CoatKind::none);
    v.amount("size", m.size, AmountOf::length);
    v.amount("width", m.width, AmountOf::length);
    v.amount("thickness", m.thickness, AmountOf::length);
    v.amount("linear", m.linear, AmountOf::linear_density);
    v.amount("fibre_length", m.fibre_length, AmountOf::length);
    v.amount("barb_length", m.barb_length, AmountOf::length);
    v.amount("bore", m.bore, AmountOf::length);
    v.amount("slot", m.slot, AmountOf::length);
    v.hole("hole", m.hole);
    v.amount("weighed", m.weighed, AmountOf::mass);
    v.amount("cure", m.cure, AmountOf::duration);
    v.flag("flat", m.flat, false);
    v.text("instead", m.instead);
    v.text("origin_note", m.origin_note);
    v.flag("restricted", m.restricted, false);
    v.rest(m.unknown);
}

template <class V, Like<Ingredient> I>
void visit_keys(V& v, I& i) {
    v.text("material", i.material);
    v.share("share", i.share, i.share_said);
    v.text("how", i.how);
    v.rest(i.unknown);
}

template <class V, Like<Part> P>
void visit_keys(V& v, P& p) {
    v.text("id", p.id);
    v.text("role", p.role);
    v.text("text", p.text);
    v.text("base", p.base);
    v.made_of("made_of", p.made_of);
    v.text("side", p.side);
    v.whole("copies", p.copies, 1, 99);
    v.flag("off_hook", p.off_hook, false);
    v.amount("turns", p.turns, AmountOf::turns);
    v.amount("count", p.count, AmountOf::count);
    v.amount("length", p.length, AmountOf::length);
    v.amount("diameter", p.diameter, AmountOf::length);
    v.amount("pitch", p.pitch, AmountOf::length);
    v.sizes("only_sizes", p.only_sizes, p.only);
    v.flag("optional", p.optional, false);
    v.text("either", p.either);
    v.text("choice", p.choice);
    v.text("condition", p.condition);
    v.rest(p.unknown);
}

template <class V, Like<Action> A>
void visit_keys(V& v, A& a) {
    v.word("do", a.op);
    v.text("part", a.part);
    v.text("material", a.material);
    v.text("base", a.base);
    v.text("other", a.other);
    v.spot("from", a.from);
    v.spot("to", a.to);
    v.amount("turns", a.turns, AmountOf::turns);
    v.amount("count", a.count, AmountOf::count);
    v.amount("length", a.length, AmountOf::length);
    v.amount("diameter", a.diameter, AmountOf::length);
    v.amount("diameter_end", a.diameter_end, AmountOf::length);
    v.amount("pitch", a.pitch, AmountOf::length);
    v.maybe_word("sense", a.sense);
    v.word("spacing", a.spacing, Spacing::unsaid);
    v.text("hold", a.hold);
    v.flag("over_wet", a.over_wet, false);
    v.text("note", a.note);
    v.rest(a.unknown);
}

template <class V, Like<Step> S>
void visit_keys(V& v, S& s) {
    v.text("text", s.text);
    v.text("landmark", s.landmark);
    v.text("tip", s.tip);
    v.text("caution", s.caution);
    v.text("original", s.original);
    v.text("picture", s.picture);
    v.word("batch", s.batch, BatchStage::each);
    v.flag("restore_point", s.restore_point, false);
    v.list("actions", s.actions);
    v.rest(s.unknown);
}

template <class V, Like<OwnTarget> T>
void visit_keys(V& v, T& t) {
    v.text("part", t.part);
    v.amount("length", t.length, AmountOf::length);
    v.share("within", t.within, t.within_said);
    v.rest(t.unknown);
}

template <class V, Like<Recipe> R>
void visit_keys(V& v, R& r) {
    v.header("wrapwright recipe", recipe_version);
    v.text("id", r.id);
    v.text("name", r.name);
    v.texts("aliases", r.aliases);
    v.texts("tags", r.tags);
    v.text("class", r.fly_class);
    v.sizes("sizes", r.sizes, r.size_list);
    v.text("verbatim", r.verbatim);
    v.text("fishing", r.fishing);
    v.text("imitates", r.imitates);
    v.text("history", r.history);
    v.text("notes", r.notes);
    v.object("provenance", r.provenance);
    v.list("bases", r.bases);
    v.list("joints", r.joints);
    v.list("materials", r.materials);
    v.list("parts", r.parts);
    v.list("steps", r.steps);
    v.list("targets", r.targets);
    v.rest(r.unknown);
}

/// The keys of a hook, of its own file or within a base.
template <class V, Like<Hook> H>
void visit_keys(V& v, H& h) {
    v.text("label", h.label);
    v.hook_size("size", h.size);
    v.word("shape", h.shape);
    v.word("family", h.family);
    v.length("shank", h.shank);
    v.length("gape", h.gape);
    v.length("wire", h.wire);
    v.length("eye_length", h.eye_length);
    v.length("eye_diameter", h.eye_diameter);
    v.length("barb_height", h.barb_height);
    v.length("jig_leg", h.jig_leg);
    v.length("jig_radius", h.jig_radius);
    v.angle("jig_angle", h.jig_angle);
    v.angle("eye_angle", h.eye_angle);
}

} // namespace wrapwright::detail
