#include "drawing/blocks.hpp"

#include "drawing/loop_picture.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr double widest_loops = 56;

bool is_drawn(const Copy& copy, std::uint32_t part) {
  const auto& figures = copy.placement.figures;
  return std::any_of(figures.begin(), figures.end(),
                     [part](const layout::Figure& figure) { return figure.part == part; });
}

bool marks_loops(const Copy& copy, std::uint32_t part) {
  const auto& figures = copy.placement.figures;
  return std::any_of(figures.begin(), figures.end(), [part](const layout::Figure& figure) {
    return figure.part == part && has_loop_marks(figure);
  });
}

Setting setting_of(SetTable set) {
  Setting setting{set.width, set.height, {}};
  setting.table = std::move(set);
  return setting;
}

/// A table set in as few columns as make it so low.
Setting lowest(const Table& table, double width) {
  Setting best;
  for (std::size_t blocks = 1; blocks <= most_blocks(table, width); ++blocks) {
    SetTable set = set_table(table, width, blocks);
    if (blocks == 1 || set.height <= best.height - 4) best = setting_of(std::move(set));
  }
  return best;
}

} // namespace

std::vector<Block> blocks_of(const Copy& copy) {
  std::vector<Block> blocks;
  if (copy.options.figures_only) return blocks;
  const std::vector<LeftFree> free = copy.options.table ? left_free(copy.fabric) : std::vector<LeftFree>();
  bool loops = false;
  for (std::uint32_t part = 0; part < copy.fabric.parts.size(); ++part) {
    if (!is_drawn(copy, part)) continue;
    if (copy.options.side_view) {
      SideView view = side_view_of(copy, part);
      if (!view.outline.empty()) blocks.push_back({Block::Kind::side_view, part, std::move(view), {}});
    }
    if (copy.options.table) blocks.push_back({Block::Kind::table, part, {}, table_of(copy, part, free)});
    if (copy.options.legend && !loops && marks_loops(copy, part)) {
      loops = true;
      blocks.push_back({Block::Kind::loops, part, {}, {}});
    }
  }
  return blocks;
}

std::vector<Setting> settings_of(const Block& block, double most) {
  constexpr std::size_t most_abreast = 6;
  if (block.kind != Block::Kind::table) return {set_block(block, loop_picture_width)};
  const std::size_t abreast = std::min(most_abreast, most_blocks(block.table, most));
  std::vector<Setting> settings;
  for (const double room : good_rooms(block.table))
    for (std::size_t blocks = 1; blocks <= abreast; ++blocks) {
      const double width = width_in(block.table, room, blocks);
      if (width <= most) settings.push_back(setting_of(set_table(block.table, width, blocks)));
    }
  if (settings.empty()) settings.push_back(set_block(block, most));
  return settings;
}

Setting eased(const Block& block, const Setting& setting, double width) {
  if (block.kind == Block::Kind::side_view) return setting;
  if (block.kind == Block::Kind::loops) return set_block(block, width);
  Setting wider = setting_of(set_table(block.table, width, setting.table.blocks.size()));
  return wider.height < setting.height - 1e-6 && wider.width <= width + 1e-6 ? wider : setting;
}

Setting set_block(const Block& block, double width) {
  if (block.kind == Block::Kind::table) return lowest(block.table, width);
  if (block.kind == Block::Kind::side_view) return {block.view.width, block.view.height, {}};
  return {std::min(width, widest_loops), loop_picture_height, {}};
}

Drawn draw_block(const Copy& copy, const Block& block, const Setting& setting, Point at) {
  if (block.kind == Block::Kind::table) return draw_table(block.table, setting.table, at);
  if (block.kind == Block::Kind::side_view) return draw_side_view(block.view, at);
  return draw_loop_picture(copy, at, setting.width);
}

} // namespace whorl::drawing
