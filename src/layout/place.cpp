#include "layout/place.hpp"

#include "layout/ground.hpp"
#include "layout/items.hpp"
#include "layout/lace.hpp"
#include "layout/oval.hpp"
#include "layout/plan.hpp"
#include "layout/rows.hpp"
#include "layout/strip.hpp"

#include <algorithm>
#include <optional>
#include <tuple>
#include <utility>

namespace whorl::layout {

const char* name(Form form) {
  switch (form) {
  case Form::disc:
    return "disc";
  case Form::disc_inward:
    return "disc-inward";
  case Form::strip:
    return "strip";
  case Form::oval:
    return "oval";
  case Form::motif:
    return "motif";
  case Form::rows:
    return "rows";
  case Form::sector:
    return "sector";
  }
  return "";
}

std::vector<SymbolKey> symbols_of(const fabric::Fabric& fabric) {
  const auto less = [](const SymbolKey& a, const SymbolKey& b) {
    return std::tuple(a.kind, a.in_one, a.loops, a.base, a.down) <
           std::tuple(b.kind, b.in_one, b.loops, b.base, b.down);
  };
  std::vector<SymbolKey> keys;
  for (std::uint32_t round = 0; round < fabric.rounds.size(); ++round)
    for (const Item& item : items_of(fabric, round)) {
      SymbolKey unmarked = item.key, plain = item.key;
      unmarked.loops = stitch::both;
      if (plain.base == Base::below) plain.base = Base::top, plain.down = 0; // where its stem is drawn
      SymbolKey single = item.key;                                           // as a row may part it
      if (fabric.rounds[round].kind == pattern::RoundKind::row) single.in_one = 1;
      for (const SymbolKey& key : {item.key, unmarked, plain, single}) {
        const auto at = std::lower_bound(keys.begin(), keys.end(), key, less);
        if (at == keys.end() || !(*at == key)) keys.insert(at, key);
      }
    }
  return keys;
}

std::uint32_t most_lines(const Leaf& leaf, std::uint32_t longest) {
  return longest <= leaf.wide ? leaf.lines : leaf.lines_turned;
}

namespace {

/// A flat piece that is longer than a leaf goes on in further figures. Their rows are even in number, so that
/// inks go on alternating.
void add_rows(const fabric::Fabric& fabric, std::uint32_t part, const Section& section,
              const Folding& folding, const Extents& extents, const Page& page, Placement& placement) {
  const std::vector<std::uint32_t>& rows = section.rounds;
  const Places places = wanted_places(fabric, rows, page.wanted);
  if (places.empty()) return;
  std::uint32_t longest = 0;
  for (const std::uint32_t row : rows) longest = std::max(longest, fabric.rounds[row].makes);
  const std::size_t most = most_lines(page.leaf, longest), many = places.last + 1 - places.first;
  const std::size_t figures = most < 2 ? 1 : (many + most - 1) / most;
  const std::size_t each = (many + 2 * figures - 1) / (2 * figures) * 2;
  for (std::size_t at = places.first; at <= places.last; at += each) {
    Page some = page;
    some.wanted.from = fabric.rounds[rows[at]].number;
    some.wanted.to = fabric.rounds[rows[std::min(at + each - 1, places.last)]].number;
    placement.figures.push_back(
        draw_rows(fabric, part, section, folding, extents, figures == 1 ? page : some).figure);
  }
}

void add_rounds(const fabric::Fabric& fabric, const std::vector<Plan>& plans, const Extents& extents,
                const Page& page, Placement& placement) {
  const auto draw = [&](const Plan& plan) {
    if (plan.strip) return draw_strip(fabric, plan, extents, page).figure;
    if (plan.oval) return draw_oval(fabric, plan, extents, page).figure;
    if (is_lace(fabric, plan)) return draw_lace(fabric, plan, extents, page).figure;
    return draw_disc(fabric, plan, extents, page).figure;
  };
  for (const Plan& plan : plans) placement.figures.push_back(draw(plan));
}

/// Whether a stitch goes into the end of a row at the side where those on the right side begin; none: into
/// something else too.
std::optional<bool> begun_side(const fabric::Fabric& fabric, fabric::StitchId stitch) {
  std::optional<bool> side;
  for (const fabric::Leg& leg : fabric::own_legs_of(fabric, stitch)) {
    if (leg.into.what != fabric::On::row_end) return std::nullopt;
    const bool right = fabric.rounds[leg.into.of].side == fabric::Side::right;
    side = (leg.into.loops == stitch::front) == right;
  }
  return side;
}

/// Whether what goes along rows is a tube on one of their sides: a hand on a cuff, a crown on a brim.
bool is_tube(const fabric::Fabric& fabric, const std::vector<std::uint32_t>& edging) {
  constexpr std::size_t most_rounds_of_edge = 2;
  const auto is_round = [&](std::uint32_t round) {
    return fabric.rounds[round].kind == pattern::RoundKind::round;
  };
  if (edging.size() <= most_rounds_of_edge || !std::all_of(edging.begin(), edging.end(), is_round))
    return false;
  const fabric::Round& first = fabric.rounds[edging.front()];
  std::optional<bool> side;
  for (fabric::StitchId id = first.first_stitch; id < first.first_stitch + first.count; ++id) {
    if ((fabric.stitches[id].flags & (fabric::joins | fabric::starts_chain)) != 0) continue;
    const std::optional<bool> own = begun_side(fabric, id);
    if (!own || own != side.value_or(*own)) return false;
    side = own;
  }
  return side.has_value();
}

/// Rows with the edging round them in one figure; false: that is not wanted, or finds no room.
bool add_edged_rows(const fabric::Fabric& fabric, std::uint32_t part, const Section& section,
                    const Folding& folding, const Extents& extents, const Page& page, Placement& placement) {
  if (section.edging.empty() || is_tube(fabric, section.edging)) return false;
  if (section.owner != fabric::none && page.leaf.lines > 0) return false;
  std::vector<std::uint32_t> all = section.rounds;
  all.insert(all.end(), section.edging.begin(), section.edging.end());
  const Places places = wanted_places(fabric, all, page.wanted);
  std::uint32_t longest = 0;
  for (const std::uint32_t row : section.rounds) longest = std::max(longest, fabric.rounds[row].makes);
  const std::size_t most = most_lines(page.leaf, longest),
                    lines = section.rounds.size() + 2 * section.edging.size();
  if (places.first != 0 || places.last + 1 != all.size() || (most > 0 && lines > most)) return false;
  std::optional<Straight> drawn = draw_edged_rows(fabric, part, section, folding, extents, page);
  if (!drawn) return false;
  placement.figures.push_back(std::move(drawn->figure));
  return true;
}

/// The edging of rows as rounds of their own, as far as they are rounds.
Section edging_alone(const fabric::Fabric& fabric, const Section& rows) {
  Section section;
  if (!rows.rounds.empty()) section.before = rows.rounds.back();
  for (const std::uint32_t round : rows.edging)
    if (fabric.rounds[round].kind == pattern::RoundKind::round) section.rounds.push_back(round);
  return section;
}

void add_section(const fabric::Fabric& fabric, std::uint32_t part, const Section& section,
                 const Folding& folding, const Extents& extents, const Page& page, Placement& placement) {
  const auto add_plans = [&](const Section& rounds) {
    add_rounds(fabric, plan_section(fabric, part, rounds, folding, page, placement.figures.size()), extents,
               page, placement);
  };
  if (!section.rows) return add_plans(section);
  if (add_edged_rows(fabric, part, section, folding, extents, page, placement)) return;
  if (const std::optional<Plan> plan = plan_sector(fabric, part, section, folding, page)) {
    placement.figures.push_back(draw_lace(fabric, *plan, extents, page).figure);
    return;
  }
  if (!section.rounds.empty()) add_rows(fabric, part, section, folding, extents, page, placement);
  const Section alone = edging_alone(fabric, section);
  if (!alone.rounds.empty()) add_plans(alone);
}

} // namespace

Placement place(const fabric::Fabric& fabric, const Extents& extents, const Page& asked) {
  Placement placement;
  placement.wanted = asked.wanted;
  Page page = asked;
  if (page.main_yarn == 0) page.main_yarn = main_yarn(fabric);
  const Folding folding(fabric);
  for (std::uint32_t part = 0; part < fabric.parts.size(); ++part) {
    if (!is_wanted(page.wanted, part)) continue;
    for (const Section& section : sections_of(fabric, part))
      add_section(fabric, part, section, folding, extents, page, placement);
  }
  return placement;
}

} // namespace whorl::layout
