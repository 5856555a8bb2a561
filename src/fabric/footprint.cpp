#include "fabric/footprint.hpp"

#include "fabric/placing.hpp"

#include <algorithm>
#include <optional>

namespace whorl::fabric {
namespace {

/// The round of a part with this number; none if it is not drawn.
std::uint32_t drawn_round(const Fabric& fabric, const Part& part, int number) {
  for (std::uint32_t i = part.first_round; i < part.first_round + part.rounds; ++i)
    if (fabric.rounds[i].number == number && fabric.rounds[i].worked) return i;
  return none;
}

/// The rounds that are covered; "between rounds 9 and 13" covers 10 to 12.
struct Covered {
  std::uint32_t first = none, last = none;
  std::uint32_t rounds() const { return last - first + 1; }
};

std::optional<Covered> covered(const Fabric& fabric, const pattern::Placing& text) {
  const Part& owner = fabric.parts[text.part];
  Covered all{drawn_round(fabric, owner, text.from), drawn_round(fabric, owner, text.to)};
  if (all.first == none || all.last == none || all.first > all.last) return std::nullopt;
  const bool inside = text.between && all.last > all.first + 1;
  return inside ? Covered{all.first + 1, all.last - 1} : all;
}

/// How many of the owner's stitches a part covers. One that lies over a single round is pressed flat; else
/// its last round runs along both and up both sides of what it covers.
std::uint32_t width_of(const Fabric& fabric, const Part& part, const Covered& covered) {
  const Round& last = fabric.rounds[part.first_round + part.rounds - 1];
  const std::uint32_t stitches = last.makes;
  if (last.kind == pattern::RoundKind::row) return std::max(1U, stitches);
  const std::uint32_t along = stitches / 2, up = covered.rounds() > 1 ? covered.rounds() : 0;
  const std::uint32_t least = std::max(2U, stitches / 4);
  return along > up + least ? along - up : least;
}

/// Where copies of a part lie side by side on a round of so many stitches: each from one hole to another.
/// None if they do not fit, or would lie over the start of the round.
std::vector<Covering> stretches(std::uint32_t stitches, std::uint32_t copies, std::uint32_t width,
                                std::uint32_t apart) {
  const std::uint32_t free = copies * width < stitches ? stitches - copies * width : 0;
  if (copies == 0 || free == 0) return {};
  std::uint32_t gap = copies == 1 ? 0 : free / copies; // on both sides
  if (apart > 0 && copies > 1) gap = apart;
  const std::uint32_t all = copies * width + (copies - 1) * gap;
  if (all >= stitches) return {};
  std::vector<Covering> found;
  for (std::uint32_t i = 0; i < copies; ++i) {
    const std::uint32_t first = (stitches - all) / 2 + i * (width + gap);
    found.push_back({first, first + width});
  }
  return found;
}

/// Each copy with its middle behind a stitch that the text names; none if one lies over the start of the
/// round.
std::vector<Covering> stretches_at(const std::vector<std::uint16_t>& after, std::uint32_t stitches,
                                   std::uint32_t width) {
  std::vector<Covering> found;
  for (const std::uint32_t middle : after) {
    if (middle < width / 2 || middle - width / 2 + width > stitches) return {};
    found.push_back({middle - width / 2, middle - width / 2 + width});
  }
  return found;
}

/// Whether the text tells where on its rounds a part lies, or that follows: a pair opposite one another, a
/// snout in the middle of the front.
bool tells_where(const pattern::Placing& text) {
  if (!text.after.empty()) return text.after.size() == text.copies;
  return text.copies == 1 ? text.centred : text.apart > 0 || text.spread;
}

void find(const pattern::Placing& text, Fabric& fabric) {
  const bool sews = text.what == pattern::What::sew && text.from > 0 && !text.behind && tells_where(text);
  if (!sews || text.part >= fabric.parts.size() || text.sewn >= fabric.parts.size()) return;
  const Part& part = fabric.parts[text.sewn];
  const auto rounds = covered(fabric, text);
  if (!rounds || part.rounds == 0 || text.sewn == text.part) return;
  Footprint print;
  print.part = text.sewn;
  print.first_round = rounds->first;
  print.last_round = rounds->last;
  const Round& middle = fabric.rounds[rounds->first + (rounds->rounds() - 1) / 2];
  print.on_round = rounds->first + (rounds->rounds() - 1) / 2;
  if (middle.kind != pattern::RoundKind::round) return;
  const std::uint32_t width = width_of(fabric, part, *rounds);
  print.stitches = text.after.empty() ? stretches(middle.makes, text.copies, width, text.apart)
                                      : stretches_at(text.after, middle.makes, width);
  if (!print.stitches.empty()) fabric.footprints.push_back(std::move(print));
}

} // namespace

void find_footprints(const pattern::Tree& tree, Fabric& fabric) {
  for (const pattern::Placing& text : tree.placings) find(text, fabric);
}

} // namespace whorl::fabric
