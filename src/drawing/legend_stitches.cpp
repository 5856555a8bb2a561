#include "drawing/legend_making.hpp"

#include "drawing/figure.hpp"
#include "drawing/technique.hpp"

#include <algorithm>

namespace whorl::drawing {

using layout::SymbolKey;

const stitch::StitchKind& kind_of(const Making& making, const SymbolKey& key) {
  return making.copy.fabric.kinds[key.kind];
}

namespace {

/// "dc2tog" taken apart: where its number begins; npos: it is no stitches worked together.
std::size_t number_in(const std::string& name) {
  if (name.size() < 5 || name.substr(name.size() - 3) != "tog") return std::string::npos;
  const std::size_t at = name.find_last_not_of("0123456789", name.size() - 4) + 1;
  return at > 0 && at < name.size() - 3 ? at : std::string::npos;
}

/// The name of a kind in the terms of the sheet; of stitches worked together, that of the stitch and how
/// many.
std::string kind_name(const Making& making, const std::string& kind) {
  const std::size_t number = number_in(kind);
  if (number == std::string::npos || making.copy.wording.count("name-" + kind) > 0)
    return words_or(making, "name-" + kind, kind);
  const std::string base = kind.substr(0, number);
  return words_or(making, "name-" + base, base) + kind.substr(number);
}

/// The plain stitch that a gathered one is made of, by its height and slashes; "" if there is none.
std::string plain_of(const stitch::Shape& shape) {
  for (const stitch::StitchKind& plain : stitch::standard_kinds()) {
    const stitch::Shape one = stitch::shape_of(plain);
    const bool same = one.legs == 1 && one.stems == shape.stems && one.height == shape.height && one.bar;
    if (same && !shape.slashes.empty() && one.slashes == std::vector<int>{shape.slashes.front()})
      return plain.name;
  }
  return {};
}

/// "bobble: 4 dc joined at top and foot": of a bobble, popcorn or cluster that the pattern makes its own way;
/// "" of any other stitch.
std::string gathered_title(const Making& making, const stitch::StitchKind& kind) {
  const auto usual = stitch::find_kind(stitch::standard_kinds(), kind.name);
  const stitch::Shape shape = stitch::shape_of(kind);
  if (!shape.feet_joined || shape.legs < 2) return {};
  const bool slashed = std::any_of(shape.slashes.begin(), shape.slashes.end(), [](int n) { return n > 0; });
  if (kind.name == "puff" && !slashed) return words(making, "title-puff", {std::to_string(shape.legs)});
  const std::string named = "title-gathered-" + kind.name;
  const std::string id = making.copy.wording.count(named) > 0 ? named : "title-gathered-own";
  if (!kind.own || (usual && shape == stitch::shape_of(stitch::standard_kinds()[*usual]))) return {};
  const std::string plain = plain_of(shape);
  return plain.empty() ? "" : words(making, id, {std::to_string(shape.legs), kind_name(making, plain)});
}

/// "3 tr worked together": of a stitch of the pattern's own over several places, which says no more than its
/// name; "" of any other.
std::string together_title(const Making& making, const stitch::StitchKind& kind) {
  const stitch::Shape shape = stitch::shape_of(kind);
  if (!kind.own || shape.legs < 2 || kind.takes != shape.legs || shape.feet_joined) return {};
  const std::string plain = plain_of(shape);
  const auto of = stitch::find_kind(stitch::standard_kinds(), plain);
  if (!of) return {};
  const auto alike = stitch::together(stitch::standard_kinds()[*of], shape.legs);
  if (!alike || alike->moves != kind.moves) return {};
  return words(making, "title-together", {std::to_string(shape.legs), kind_name(making, plain)});
}

std::string kind_title(const Making& making, const stitch::StitchKind& kind) {
  if (std::string own = gathered_title(making, kind); !own.empty()) return own;
  if (std::string own = together_title(making, kind); !own.empty()) return own;
  const std::size_t number = number_in(kind.name);
  if (kind.own || number == std::string::npos || making.copy.wording.count("title-" + kind.name) > 0)
    return words_or(making, "title-" + kind.name, kind.title);
  const std::string many = kind.name.substr(number, kind.name.size() - 3 - number);
  return words(making, "title-together", {many, kind_name(making, kind.name.substr(0, number))});
}

/// "3 sc", "sl st, sc, hdc": what is worked back along the chains of a spur; "" of any other stitch.
std::string back_words(const Making& making, const stitch::StitchKind& kind) {
  const std::vector<stitch::StitchKind> back = stitch::back_along(kind);
  std::string list;
  for (std::size_t i = 0; i < back.size();) {
    std::size_t end = i;
    while (end < back.size() && back[end].moves == back[i].moves) ++end;
    list += (list.empty() ? "" : ", ") + (end - i > 1 ? std::to_string(end - i) + " " : "") +
            kind_name(making, back[i].name);
    i = end;
  }
  return list;
}

/// "front-post", "below": what a stitch stands on, for the ids of words.
std::string base_id(layout::Base base) {
  if (base == layout::Base::below) return "below";
  return base == layout::Base::front_post ? "front-post" : "back-post";
}

/// The author's own word, unless other stitches go by the same.
std::string typed_name(const Making& making, const SymbolKey& key) {
  std::string name;
  for (const TypedName& typed : making.copy.text.names)
    if (typed.kind == key.kind && typed.in_one == key.in_one) name = typed.name;
  for (const TypedName& typed : making.copy.text.names)
    if (typed.name == name && (typed.kind != key.kind || typed.in_one != key.in_one)) return {};
  return name;
}

} // namespace

std::string stitch_name(const Making& making, const SymbolKey& key) {
  const bool on_top = key.base == layout::Base::top;
  if (const std::string back = back_words(making, kind_of(making, key)); !back.empty())
    return kind_name(making, "ch") + " + " + back;
  std::string name = kind_name(making, kind_of(making, key).name);
  if (!on_top) name = words(making, "name-" + base_id(key.base), {name});
  if (std::string typed = on_top ? typed_name(making, key) : ""; !typed.empty()) return typed;
  if (key.in_one == 1) return name;
  const std::string several = key.in_one == 2 ? "name-inc" : "name-several";
  if (!on_top) return words(making, "name-several", {std::to_string(key.in_one), name});
  return words_or(making, "name-" + kind_of(making, key).name + "-" + std::to_string(key.in_one),
                  words(making, several, {std::to_string(key.in_one), name}));
}

namespace {

bool is_single(const stitch::StitchKind& kind) {
  const stitch::Shape shape = stitch::shape_of(kind);
  return shape.cross && shape.legs == 1 && shape.picot == 0;
}

/// The stitch that chains are closed back into, where a kind is one with such chains; else nothing.
const stitch::StitchKind* below_chains(const Making& making, const stitch::StitchKind& kind) {
  const std::size_t chains = kind.moves.find(" (c)");
  if (chains == std::string::npos || !kind.own) return nullptr;
  for (const stitch::StitchKind& base : making.copy.fabric.kinds)
    if (!base.own && base.moves == kind.moves.substr(0, chains)) return &base;
  return nullptr;
}

/// Whether the piece is turned: posts then lie on the right side that were worked from the wrong side.
bool is_turned(const Making& making) {
  for (const fabric::Round& round : making.copy.fabric.rounds)
    if (round.side == fabric::Side::wrong) return true;
  return false;
}

/// Of a stitch that does not go into a top.
std::string base_words(const Making& making, const SymbolKey& key) {
  const std::string name = kind_name(making, kind_of(making, key).name);
  const std::string some = key.in_one == 1 ? name : std::to_string(key.in_one) + " " + name;
  const bool post = key.base != layout::Base::below;
  std::string id = "title-" + base_id(key.base);
  if (post ? is_turned(making) : key.down > 1) id += post ? "-turned" : "-deep";
  if (!post && key.down == 0) id += "-stem";
  return words(making, id, {some, std::to_string(key.down)});
}

std::string stitch_words(const Making& making, const SymbolKey& key) {
  if (key.base != layout::Base::top) return base_words(making, key);
  const stitch::StitchKind& kind = kind_of(making, key);
  const std::string name = words_or(making, "name-" + kind.name, kind.name);
  if (key.in_one > 1) return words(making, "title-several", {std::to_string(key.in_one), name});
  if (const stitch::StitchKind* base = below_chains(making, kind))
    return words(making, "title-stalk",
                 {kind_title(making, *base), std::to_string(stitch::shape_of(kind).picot)});
  if (const std::string back = back_words(making, kind); !back.empty())
    return words(making, "title-spur", {std::to_string(stitch::shape_of(kind).picot), back});
  const std::string title = kind_title(making, kind);
  if (is_single(kind) && making.usage.disc) return words(making, "title-turned", {title});
  return title;
}

} // namespace

void add_stitches(const Making& making, Entries& entries) {
  for (const SymbolKey& key : making.usage.stitches) {
    const std::uint32_t symbol = making.symbols.stitch(key);
    entries.push_back(
        finished(making, {making.symbols.definition(symbol).id,
                          {centred(making, symbol, {}, ink::black)},
                          {},
                          stitch_name(making, key),
                          with_techniques(making.copy, key.kind, key.in_one, stitch_words(making, key))}));
  }
}

namespace {

const char* loops_key(std::uint8_t loops) {
  if (loops == stitch::back) return "back";
  if (loops == stitch::front) return "front";
  return loops == stitch::third ? "third" : "loops";
}

} // namespace

void add_loops(const Making& making, Entries& entries) {
  for (const SymbolKey& key : making.usage.looped) {
    const std::string loops = loops_key(key.loops);
    entries.push_back(finished(making, {loops,
                                        {centred(making, making.symbols.stitch(key), {}, ink::black)},
                                        {},
                                        words(making, "name-" + loops),
                                        words(making, "title-" + loops)}));
  }
}

} // namespace whorl::drawing
