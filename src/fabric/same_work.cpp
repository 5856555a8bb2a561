#include "fabric/same_work.hpp"

#include <algorithm>
#include <iterator>

namespace whorl::fabric {

namespace {

/// Rows and rounds have one name in many languages: whether the work is turned tells them apart.
bool same_sort(const Round& a, const Round& b) {
  return (a.kind == pattern::RoundKind::chain) == (b.kind == pattern::RoundKind::chain);
}

bool same_owner(const Round& a, const Round& b) {
  return a.part == b.part && a.number == b.number && a.again == b.again && same_sort(a, b);
}

bool same_position(const Fabric& a, StitchId x, const Fabric& b, StitchId y) {
  if (x >= a.stitches.size() || y >= b.stitches.size()) return x >= a.stitches.size() && y >= b.stitches.size();
  return same_owner(a.rounds[a.stitches[x].round], b.rounds[b.stitches[y].round]) &&
         index_in_round(a, x) == index_in_round(b, y);
}

bool same_arch(const Fabric& a, std::uint32_t x, const Fabric& b, std::uint32_t y) {
  return a.arches[x].count == b.arches[y].count &&
         same_position(a, a.arches[x].first_chain, b, b.arches[y].first_chain);
}

/// Whether places are the same, whatever stands before them in their fabrics.
bool same_place(const Fabric& a, const Place& x, const Fabric& b, const Place& y) {
  if (x.what != y.what || x.loops != y.loops) return false;
  switch (x.what) {
  case On::space:
    return same_arch(a, x.of, b, y.of);
  case On::ring:
    return x.of == y.of;
  case On::row_end:
    return same_owner(a.rounds[x.of], b.rounds[y.of]);
  default:
    return same_position(a, x.of, b, y.of);
  }
}

Difference same_legs(const Fabric& a, StitchId x, const Fabric& b, StitchId y) {
  const Legs one = legs_of(a, x), other = legs_of(b, y);
  if (one.size() != other.size()) return "how many legs a stitch has";
  for (std::size_t i = 0; i < one.size(); ++i)
    if (!same_place(a, one.first[i].into, b, other.first[i].into)) return "what a stitch goes into";
  return {};
}

bool same_kind(const stitch::StitchKind& a, const stitch::StitchKind& b) {
  return a.name == b.name && a.moves == b.moves && a.takes == b.takes && a.makes == b.makes;
}

Difference same_stitch(const Fabric& a, StitchId x, const Fabric& b, StitchId y) {
  const Stitch &one = a.stitches[x], &other = b.stitches[y];
  if (!same_kind(a.kinds[one.kind], b.kinds[other.kind])) return "the kind of a stitch";
  if (one.yarn != other.yarn) return "the yarn of a stitch";
  if (one.flags != other.flags) return "what a stitch counts as";
  return same_legs(a, x, b, y);
}

Difference same_head(const Round& a, const Round& b) {
  if (a.number != b.number || a.again != b.again || !same_sort(a, b)) return "the number of a round";
  if (a.uses != b.uses) return "how many stitches a round uses";
  if (a.count != b.count || a.makes != b.makes) return "how many stitches a round makes";
  if (a.stated != b.stated || a.counted != b.counted) return "the count of a round";
  if (a.turned != b.turned || a.joined != b.joined || a.attached != b.attached || a.side != b.side)
    return "how a round is turned or joined";
  if (a.worked != b.worked || a.left_over != b.left_over) return "what a round leaves unworked";
  return {};
}

Difference same_part(const Fabric& a, const Part& x, const Fabric& b, const Part& y) {
  if (x.make != y.make) return "how many of a part are made";
  if (x.start != y.start || x.end != y.end) return "how a part begins or ends";
  if (x.rounds != y.rounds || (x.foundation == none) != (y.foundation == none)) return "the rounds of a part";
  return x.foundation == none ? Difference{} : same_round(a, x.foundation, b, y.foundation);
}

/// All but the notes, which are only said.
std::vector<Placing> things_of(const Fabric& fabric) {
  std::vector<Placing> things;
  std::copy_if(fabric.placings.begin(), fabric.placings.end(), std::back_inserter(things),
               [](const Placing& placing) { return placing.what != pattern::What::note; });
  return things;
}

bool same_placing(const Placing& a, const Placing& b) {
  return a.what == b.what && a.part == b.part && a.round == b.round && a.after == b.after;
}

bool same_footprint(const Footprint& a, const Footprint& b) {
  return a.part == b.part && a.first_round == b.first_round && a.last_round == b.last_round &&
         std::equal(a.stitches.begin(), a.stitches.end(), b.stitches.begin(), b.stitches.end(),
                    [](const Covering& x, const Covering& y) { return x.first == y.first && x.last == y.last; });
}

/// The first round from `from` on that an entry of the text gave; as many as there are: none.
std::uint32_t next_of_entry(const Fabric& fabric, std::uint32_t entry, std::uint32_t from) {
  while (from < fabric.rounds.size() && fabric.rounds[from].text != entry) ++from;
  return from;
}

} // namespace

Difference same_round(const Fabric& a, std::uint32_t round_a, const Fabric& b, std::uint32_t round_b) {
  const Round &one = a.rounds[round_a], &other = b.rounds[round_b];
  Difference difference = same_head(one, other);
  for (std::uint32_t i = 0; i < one.count && difference.empty(); ++i)
    difference = same_stitch(a, one.first_stitch + i, b, other.first_stitch + i);
  return difference;
}

Difference same_entry(const Fabric& a, std::uint32_t entry_a, const Fabric& b, std::uint32_t entry_b) {
  std::uint32_t x = next_of_entry(a, entry_a, 0), y = next_of_entry(b, entry_b, 0);
  while (x < a.rounds.size() && y < b.rounds.size()) {
    const Difference difference = same_round(a, x, b, y);
    if (!difference.empty()) return difference;
    x = next_of_entry(a, entry_a, x + 1);
    y = next_of_entry(b, entry_b, y + 1);
  }
  const bool both = x >= a.rounds.size() && y >= b.rounds.size();
  return both ? Difference{} : Difference{"how many rounds a line gives"};
}

Difference same_work(const Fabric& a, const Fabric& b) {
  if (a.rounds.size() != b.rounds.size()) return "how many rounds there are";
  if (a.parts.size() != b.parts.size()) return "how many parts there are";
  Difference difference;
  for (std::uint32_t i = 0; i < a.rounds.size() && difference.empty(); ++i) difference = same_round(a, i, b, i);
  for (std::size_t i = 0; i < a.parts.size() && difference.empty(); ++i)
    difference = same_part(a, a.parts[i], b, b.parts[i]);
  if (!difference.empty()) return difference;
  const std::vector<Placing> placed_a = things_of(a), placed_b = things_of(b);
  if (!std::equal(placed_a.begin(), placed_a.end(), placed_b.begin(), placed_b.end(), same_placing))
    return "what is placed";
  if (!std::equal(a.footprints.begin(), a.footprints.end(), b.footprints.begin(), b.footprints.end(),
                  same_footprint))
    return "where a part is sewn on";
  return {};
}

} // namespace whorl::fabric
