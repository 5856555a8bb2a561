#include "drawing/table_rows.hpp"

#include "drawing/furniture.hpp"
#include "fabric/tally.hpp"
#include "layout/items.hpp"
#include "layout/label.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

using fabric::Round;
using layout::Ring;

/// The last of alike rounds that one line gives and no figure shows.
std::uint32_t last_alike(const fabric::Fabric& fabric, std::uint32_t round, std::uint32_t end) {
  const Round& it = fabric.rounds[round];
  while (round + 1 < end && fabric.rounds[round + 1].text == it.text &&
         fabric.rounds[round + 1].counted == it.counted && fabric.rounds[round + 1].uses == it.uses)
    ++round;
  return round;
}

/// The rings of a part's rounds, in order, a ring of its own for each round that no figure shows.
std::vector<Ring> rings_of(const Copy& copy, const fabric::Part& part, std::uint32_t number) {
  std::vector<Ring> shown;
  for (const layout::Figure& figure : copy.placement.figures)
    for (const Ring& ring : figure.rings)
      if (figure.part == number && !ring.echo) shown.push_back(ring);
  std::sort(shown.begin(), shown.end(), [](const Ring& a, const Ring& b) { return a.round < b.round; });
  std::vector<Ring> rings;
  auto next = shown.begin();
  for (std::uint32_t round = part.first_round; round < part.first_round + part.rounds; ++round) {
    while (next != shown.end() && next->round < round) ++next;
    if (next != shown.end() && next->round == round) {
      rings.push_back(*next);
    } else {
      rings.emplace_back();
      const std::uint32_t end = next != shown.end() ? next->round : part.first_round + part.rounds;
      rings.back().round = round;
      rings.back().last_round = last_alike(copy.fabric, round, end);
    }
    round = rings.back().last_round;
  }
  return rings;
}

/// As the text counts, where it counts chains with the stitches; a count of some of them says nothing here.
std::uint32_t stitches_of(const fabric::Fabric& fabric, const Round& round) {
  return std::max(round.counted, fabric::counted_as(fabric, round, {}));
}

/// Stitches that were open before a round of a part; none: it is the first.
std::int64_t open_before(const fabric::Fabric& fabric, std::uint32_t round) {
  const Round& it = fabric.rounds[round];
  if (it.joined_open > 0) return it.joined_open;
  if (round <= fabric.parts[it.part].first_round) return -1;
  return stitches_of(fabric, fabric.rounds[round - 1]);
}

/// "BLO" where every stitch of a round is worked so.
std::string loops_of(const Copy& copy, std::uint32_t round) {
  const std::uint8_t loops = layout::marked_loops(layout::items_of(copy.fabric, round));
  if (loops == stitch::back) return say(copy.wording, "name-back");
  return loops == stitch::front ? say(copy.wording, "name-front") : "";
}

void set_change(const Copy& copy, TableRow& row) {
  const Round& round = copy.fabric.rounds[row.round];
  const std::int64_t before = open_before(copy.fabric, row.round);
  const std::int64_t more = stitches_of(copy.fabric, round) - before;
  row.even = before >= 0 && more == 0;
  if (before < 0)
    row.change = say(copy.wording, "table-start");
  else if (row.even)
    row.change = say(copy.wording, "table-even");
  else
    row.change = (more > 0 ? "+" : "\u2212") + std::to_string(more > 0 ? more : -more);
  const std::string loops = loops_of(copy, row.round);
  if (!loops.empty()) row.change += " " + loops;
}

std::string words_of(const Copy& copy, const LeftFree& left) {
  std::string words;
  if (left.front > 0) words = say(copy.wording, "table-left-front", {std::to_string(left.front)});
  if (left.front > 0 && left.back > 0) words += ", ";
  if (left.back > 0) words += say(copy.wording, "table-left-back", {std::to_string(left.back)});
  if (words.empty() || left.parts.empty()) return words;
  std::string letters;
  for (const std::uint32_t part : left.parts) letters += (letters.empty() ? "" : ", ") + part_letter(part);
  return say(copy.wording, "table-left-for", {words, letters});
}

std::string line_of(const Copy& copy, std::uint32_t round) {
  const std::uint32_t text = copy.fabric.rounds[round].text;
  return text < copy.text.round_lines.size() ? copy.text.round_lines[text] : "";
}

} // namespace

TableRow table_row(const Copy& copy, const Ring& ring) {
  TableRow row{ring.round, ring.last_round, ring.ink};
  row.number = layout::number_of(copy.fabric, ring);
  row.line = line_of(copy, ring.round);
  row.stitches = layout::count_of(copy.fabric.rounds[ring.round]);
  set_change(copy, row);
  return row;
}

std::vector<TableRow> table_rows(const Copy& copy, std::uint32_t part, const std::vector<LeftFree>& left) {
  std::vector<TableRow> rows;
  for (const Ring& ring : rings_of(copy, copy.fabric.parts[part], part)) {
    if (!layout::is_wanted(copy.placement.wanted, copy.fabric.rounds[ring.round])) continue;
    TableRow row = table_row(copy, ring);
    row.left = words_of(copy, left[ring.last_round]);
    rows.push_back(std::move(row));
  }
  return rows;
}

} // namespace whorl::drawing
