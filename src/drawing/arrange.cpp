#include "drawing/arrange.hpp"

#include "drawing/furniture.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr double after_section = 9, between_sections = 14, after_head = 3;
constexpr double most_more_between = 16;
constexpr std::size_t most_parts = 24; ///< all ways are tried of so many; others follow below

using Kind = Piece::Kind;

/// One of the ways to set a part with its head, or the legend.
struct Form {
  std::uint32_t piece = 0; ///< of the part's front
  double head = 0;         ///< height of the head and the air below it
};

/// What a sheet is arranged from, part by part; things are the parts, then the legend.
struct Arranging {
  const Copy& copy;
  const std::vector<Block>& blocks;
  std::vector<Section> sections;
  std::vector<SectionSlices> slices;
  std::vector<std::vector<Form>> forms; ///< of each part
  Slicing slicing;
  std::vector<Front> things;
};

Section& section_of(std::vector<Section>& sections, std::uint32_t part) {
  const auto at = std::find_if(sections.begin(), sections.end(),
                               [part](const Section& section) { return section.part == part; });
  if (at != sections.end()) return *at;
  sections.push_back({part, {}, {}});
  return sections.back();
}

/// Figures and furniture part by part, in the order of the figures; furniture of other sheets' figures last.
std::vector<Section> sections_of(const std::vector<Cell>& cells, const std::vector<Block>& blocks) {
  std::vector<Section> sections;
  for (const Cell& cell : cells) section_of(sections, cell.part).cells.push_back(cell);
  for (std::size_t i = 0; i < blocks.size(); ++i) section_of(sections, blocks[i].part).blocks.push_back(i);
  return sections;
}

/// A part has a head where its figures are; furniture alone has none.
double head_height(const Copy& copy, const Section& section, double width) {
  if (section.cells.empty() || !has_head(copy, section.part)) return 0;
  return draw_part_head(copy, section.part, {}, width).height + after_head;
}

/// The ways to set a part under its head, which takes fewer lines in more width.
void add_part(Arranging& it, std::size_t section, double most) {
  it.slices.push_back(slices_of(it.sections[section], it.blocks, most));
  const SectionSlices& made = it.slices.back();
  const double least =
      it.sections[section].cells.empty() ? 0 : head_width(it.copy, it.sections[section].part);
  std::vector<Form> forms;
  std::vector<Piece> pieces;
  for (const std::uint32_t number : made.front)
    for (const double more : {0.0, 30.0, 70.0}) {
      const Piece& body = made.slicing[number];
      const double width = std::max(body.width, least) + more;
      const double head = head_height(it.copy, it.sections[section], width);
      pieces.push_back({Kind::thing, static_cast<std::uint32_t>(section),
                        static_cast<std::uint32_t>(forms.size()), width, head + body.height, 0});
      forms.push_back({number, head});
    }
  it.forms.push_back(std::move(forms));
  it.things.push_back(it.slicing.keep(std::move(pieces)));
}

void add_legend(Arranging& it, const LegendHeight& height) {
  constexpr double least = 66, step = 8, most = 320;
  if (!height) return;
  std::vector<Piece> pieces;
  for (double width = least; width <= most; width += step)
    pieces.push_back(
        {Kind::thing, static_cast<std::uint32_t>(it.sections.size()), 0, width, height(width), 0});
  it.things.push_back(it.slicing.keep(std::move(pieces)));
}

Arranging begun(const Copy& copy, const std::vector<Cell>& cells, const std::vector<Block>& blocks,
                double most) {
  Arranging it{
      copy, blocks, sections_of(cells, blocks), {}, {}, Slicing(between_sections, after_section, most), {}};
  for (std::size_t section = 0; section < it.sections.size(); ++section) add_part(it, section, most);
  return it;
}

/// All ways to set the things `first` to before `end`, which stand one after the other.
Front ways(Slicing& slicing, const std::vector<Front>& things, std::size_t first, std::size_t end) {
  const std::size_t many = end - first;
  std::vector<std::vector<Front>> of(many); // of[i][k]: of k + 1 things from first + i on
  for (std::size_t i = 0; i < many; ++i) of[i].push_back(things[first + i]);
  for (std::size_t run = 2; run <= many; ++run)
    for (std::size_t i = 0; i + run <= many; ++i) {
      std::vector<Piece> offers;
      for (std::size_t cut = 1; cut < run; ++cut) {
        slicing.offer_above(of[i][cut - 1], of[i + cut][run - cut - 1], offers);
        slicing.offer_beside(of[i][cut - 1], of[i + cut][run - cut - 1], offers);
      }
      of[i].push_back(slicing.keep(std::move(offers)));
    }
  return of[0].back();
}

Front all_ways(Arranging& it) {
  Front front;
  for (std::size_t first = 0; first < it.things.size(); first += most_parts) {
    const std::size_t end = std::min(first + most_parts, it.things.size());
    const Front more = ways(it.slicing, it.things, first, end);
    std::vector<Piece> offers;
    if (first > 0) it.slicing.offer_above(front, more, offers);
    front = first > 0 ? it.slicing.keep(std::move(offers)) : more;
  }
  return front;
}

void put(const Arranging& it, std::uint32_t number, Point at, double width, Arrangement& whole);

void put_thing(const Arranging& it, const Piece& piece, Point at, double width, Arrangement& whole) {
  if (piece.first == it.sections.size()) {
    whole.legend = at;
    whole.legend_width = width;
    return;
  }
  const Section& section = it.sections[piece.first];
  const Form& form = it.forms[piece.first][piece.second];
  if (form.head > 0) whole.heads.push_back({section.part, at, width});
  set_down(section, it.blocks, it.slices[piece.first], form.piece, at + Point{0, form.head}, width, whole);
}

/// Side by side, with what is free between them up to a measure.
void put_row(const Arranging& it, const std::vector<std::uint32_t>& row, Point at, double width,
             Arrangement& whole) {
  double taken = 0;
  for (const std::uint32_t number : row) taken += it.slicing[number].width;
  const double gaps = static_cast<double>(row.size()) - 1, free = width - taken - gaps * between_sections;
  const double gap = between_sections + std::max(0.0, std::min(most_more_between, free / gaps));
  const double right = at.x + width;
  for (const std::uint32_t number : row) {
    const double own = it.slicing[number].width;
    put(it, number, at, number == row.back() ? std::max(own, right - at.x) : own, whole);
    at.x += own + gap;
  }
}

void put(const Arranging& it, std::uint32_t number, Point at, double width, Arrangement& whole) {
  const Piece& piece = it.slicing[number];
  if (piece.kind == Kind::thing) return put_thing(it, piece, at, width, whole);
  if (piece.kind == Kind::beside)
    return put_row(it, it.slicing.chain(number, Kind::beside), at, width, whole);
  for (const std::uint32_t part : it.slicing.chain(number, Kind::above)) {
    put(it, part, at, width, whole);
    at.y += it.slicing[part].height + after_section;
  }
}

Arrangement arranged(const Arranging& it, const Front& front, std::size_t way, double width) {
  Arrangement whole;
  whole.width = width;
  if (front.empty()) return whole;
  whole.width = std::max(width, it.slicing[front[way]].width);
  whole.height = it.slicing[front[way]].height;
  put(it, front[way], {0, 0}, whole.width, whole);
  return whole;
}

/// What a sheet of such a size costs: its paper, more where it is slender, and more where it is so wide that
/// it must be seen small.
double cost(double inner_width, double inner_height, double besides) {
  constexpr double slender = 1.8, legible = 170;
  const double width = inner_width + 2 * margin, height = inner_height + besides;
  return width * height * (1 + 0.4 * std::max(0.0, height / width - slender)) *
         (1 + 0.5 * std::max(0.0, width / legible - 1));
}

} // namespace

Arrangement best_arrangement(const Copy& copy, const std::vector<Cell>& cells,
                             const std::vector<Block>& blocks, double least, const LegendHeight& legend) {
  constexpr double title_and_foot = 45, widest = 300;
  Arranging it = begun(copy, cells, blocks, std::max(least, widest));
  add_legend(it, legend);
  const Front front = all_ways(it);
  std::size_t best = 0;
  double lowest = 0;
  for (std::size_t way = 0; way < front.size(); ++way) {
    const Piece& piece = it.slicing[front[way]];
    const double paper = cost(std::max(least, piece.width), piece.height, title_and_foot);

    if (way > 0 && paper >= lowest) continue;
    lowest = paper;
    best = way;
  }
  return arranged(it, front, best, least);
}

Arrangement lowest_arrangement(const Copy& copy, const std::vector<Cell>& cells,
                               const std::vector<Block>& blocks, double width) {
  Arranging it = begun(copy, cells, blocks, width);
  const Front front = all_ways(it);
  std::size_t lowest = 0;
  while (lowest + 1 < front.size() && it.slicing[front[lowest + 1]].width <= width) ++lowest;
  return arranged(it, front, lowest, width);
}

} // namespace whorl::drawing
