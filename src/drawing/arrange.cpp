#include "drawing/arrange.hpp"

#include "drawing/furniture.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr double after_section = 9, between_sections = 15, most_between = 30;
constexpr std::size_t most_abreast = 4;

/// The ways in which one part can be set, wider ones lower.
using Settings = std::vector<Arrangement>;

/// What a sheet is arranged from, part by part.
struct Arranging {
  const Copy& copy;
  const std::vector<Block>& blocks;
  std::vector<Section> sections;
  std::vector<Settings> settings;
};

Section& section_of(std::vector<Section>& sections, std::vector<std::uint32_t>& parts, std::uint32_t part) {
  const auto at = std::find(parts.begin(), parts.end(), part);
  if (at != parts.end()) return sections[static_cast<std::size_t>(at - parts.begin())];
  parts.push_back(part);
  return sections.emplace_back();
}

/// Figures and furniture part by part, in the order of the figures; furniture of other sheets' figures last.
std::vector<Section> sections_of(const std::vector<Cell>& cells, const std::vector<Block>& blocks) {
  std::vector<Section> sections;
  std::vector<std::uint32_t> parts;
  for (const Cell& cell : cells) section_of(sections, parts, cell.part).cells.push_back(cell);
  for (std::size_t i = 0; i < blocks.size(); ++i)
    section_of(sections, parts, blocks[i].part).blocks.push_back(i);
  return sections;
}

double least_width(const Section& section, const std::vector<Block>& blocks) {
  double least = 0;
  for (const Cell& cell : section.cells) least = std::max(least, 2 * cell.side);
  for (const std::size_t block : section.blocks) least = std::max(least, least_width(blocks[block]));
  return least;
}

/// The lowest way to set a part within a width.
Arrangement lowest_section(const Copy& copy, const Section& section, const std::vector<Block>& blocks,
                           double width) {
  Arrangement lowest;
  for (const double column : {0.0, 45.0, 65.0, 85.0}) {
    const double figures = width - column;
    const bool fit = std::all_of(section.cells.begin(), section.cells.end(),
                                 [&](const Cell& cell) { return 2 * cell.side <= figures; });
    if (column > 0 && (!fit || section.blocks.empty())) break;
    Arrangement made = set_section(copy, section, blocks, figures, width);
    if (column == 0 || made.height < lowest.height) lowest = std::move(made);
  }
  return lowest;
}

/// Ways to set a part in widths from the least up to `most`, by steps; each is lower than those before it.
Settings settings_of(const Copy& copy, const Section& section, const std::vector<Block>& blocks, double most,
                     double step) {
  Settings settings;
  const double least = least_width(section, blocks);
  for (double width = least;; width += step) {
    width = std::min(width, std::max(most, least));
    Arrangement made = lowest_section(copy, section, blocks, width);
    if (settings.empty() || made.height < settings.back().height - 1) settings.push_back(std::move(made));
    if (width >= most) return settings;
  }
}

/// The narrowest of the settings that are no higher; none: nullptr.
const Arrangement* narrowest(const Settings& settings, double height) {
  const Arrangement* best = nullptr;
  for (const Arrangement& made : settings)
    if (made.height <= height && (best == nullptr || made.width < best->width)) best = &made;
  return best;
}

/// Parts that stand side by side.
struct Shelf {
  std::vector<const Arrangement*> parts;
  double width = 0, height = 0;
};

/// Parts `first` to before `end` side by side, no higher than `height`; empty where one cannot be so low.
Shelf shelf_of(const std::vector<Settings>& all, std::size_t first, std::size_t end, double height) {
  Shelf shelf;
  for (std::size_t i = first; i < end; ++i) {
    const Arrangement* made = narrowest(all[i], height);
    if (made == nullptr) return {};
    shelf.parts.push_back(made);
    shelf.width += made->width + (i > first ? between_sections : 0);
    shelf.height = std::max(shelf.height, made->height);
  }
  return shelf;
}

/// The lowest shelf of these parts within a width; empty: they have no room side by side.
Shelf lowest_shelf(const std::vector<Settings>& all, std::size_t first, std::size_t end, double width) {
  Shelf best;
  for (std::size_t i = first; i < end; ++i)
    for (const Arrangement& made : all[i]) {
      if (!best.parts.empty() && made.height >= best.height) continue;
      Shelf shelf = shelf_of(all, first, end, made.height);
      if (!shelf.parts.empty() && shelf.width <= width + 1e-6) best = std::move(shelf);
    }
  return best;
}

/// The shelves that together are lowest.
std::vector<Shelf> lowest_shelves(const std::vector<Settings>& all, double width) {
  std::vector<double> height(all.size() + 1, 0);
  std::vector<Shelf> last(all.size() + 1);
  for (std::size_t end = 1; end <= all.size(); ++end)
    for (std::size_t first = end; first-- > 0 && end - first <= most_abreast;) {
      Shelf shelf = lowest_shelf(all, first, end, width);
      if (shelf.parts.empty()) continue;
      const double high = height[first] + (first > 0 ? after_section : 0) + shelf.height;
      if (!last[end].parts.empty() && high >= height[end]) continue;
      height[end] = high;
      last[end] = std::move(shelf);
    }
  std::vector<Shelf> shelves;
  for (std::size_t end = all.size(); end > 0; end -= shelves.back().parts.size())
    shelves.push_back(std::move(last[end]));
  std::reverse(shelves.begin(), shelves.end());
  return shelves;
}

/// Adds a part to an arrangement, its upper left corner at `at`.
void set_down(Arrangement& whole, const Arrangement& part, Point at) {
  for (std::size_t i = 0; i < part.rows.size(); ++i) {
    Row row = part.rows[i];
    for (double& x : row.x) x += at.x;
    for (Head& head : row.heads) head.x += at.x;
    whole.rows.push_back(std::move(row));
    whole.heads.push_back(part.heads[i] + at.y);
    whole.tops.push_back(part.tops[i] + at.y);
  }
  for (StandingBlock block : part.blocks) {
    block.at = block.at + at;
    whole.blocks.push_back(std::move(block));
  }
}

/// Gives every part of a shelf its share of what is free, unless it becomes higher by it.
void widen(const Arranging& it, const Shelf& shelf, std::size_t first, double free,
           std::vector<Arrangement>& parts) {
  for (std::size_t i = 0; i < shelf.parts.size(); ++i) {
    const double share = free / static_cast<double>(shelf.parts.size() - i);
    Arrangement wider =
        lowest_section(it.copy, it.sections[first + i], it.blocks, shelf.parts[i]->width + share);
    const bool fits =
        wider.height <= shelf.height + 1e-6 && wider.width <= shelf.parts[i]->width + share + 1e-6;
    parts.push_back(fits ? std::move(wider) : *shelf.parts[i]);
    free -= parts.back().width - shelf.parts[i]->width;
  }
}

double width_of(const std::vector<Arrangement>& parts) {
  double width = between_sections * (static_cast<double>(parts.size()) - 1);
  for (const Arrangement& part : parts) width += part.width;
  return width;
}

Arrangement stacked(const Arranging& it, const std::vector<Shelf>& shelves, double width) {
  Arrangement whole;
  whole.width = width;
  std::size_t first = 0;
  for (const Shelf& shelf : shelves) {
    if (whole.height > 0) whole.height += after_section;
    std::vector<Arrangement> parts;
    widen(it, shelf, first, std::max(0.0, width - shelf.width), parts);
    const double gaps = static_cast<double>(parts.size()) - 1;
    const double gap =
        gaps > 0 ? std::min(most_between, between_sections + (width - width_of(parts)) / gaps) : 0;
    double x = 0;
    for (const Arrangement& part : parts) {
      set_down(whole, part, {x, whole.height});
      x += part.width + gap;
    }
    whole.height += shelf.height;
    first += parts.size();
  }
  return whole;
}

double height_of(const std::vector<Shelf>& shelves) {
  double height = 0;
  for (const Shelf& shelf : shelves) height += shelf.height + (height > 0 ? after_section : 0);
  return height;
}

/// Paper that a sheet of an arrangement takes; one that is higher than a page is long counts as more.
double paper_of(double inner_width, double inner_height) {
  constexpr double besides = 80, slender = 1.42; // about as high as title and legend are together
  const double width = inner_width + 2 * margin, height = inner_height + besides;
  return width * height * (1 + 1.2 * std::max(0.0, height / width - slender));
}

} // namespace

Arrangement lowest_arrangement(const Copy& copy, const std::vector<Cell>& cells,
                               const std::vector<Block>& blocks, double width) {
  Arranging it{copy, blocks, sections_of(cells, blocks), {}};
  for (const Section& section : it.sections)
    it.settings.push_back(settings_of(copy, section, blocks, width, std::max(12.0, width / 16)));
  return stacked(it, lowest_shelves(it.settings, width), width);
}

Arrangement best_arrangement(const Copy& copy, const std::vector<Cell>& cells,
                             const std::vector<Block>& blocks, double least) {
  constexpr double most = 1.6;
  Arranging it{copy, blocks, sections_of(cells, blocks), {}};
  for (const Section& section : it.sections) least = std::max(least, least_width(section, blocks));
  const double step = std::max(10.0, least / 18);
  for (const Section& section : it.sections)
    it.settings.push_back(settings_of(copy, section, blocks, least * most, step));
  std::vector<Shelf> best;
  double best_width = least, least_paper = 0;
  for (double width = least; width <= least * most; width += step) {
    std::vector<Shelf> shelves = lowest_shelves(it.settings, width);
    const double paper = paper_of(width, height_of(shelves));
    if (least_paper > 0 && paper >= least_paper) continue;
    least_paper = paper;
    best_width = width;
    best = std::move(shelves);
  }
  return stacked(it, best, best_width);
}

} // namespace whorl::drawing
