#pragma once

#include "drawing/side_view.hpp"
#include "drawing/table.hpp"

#include <cstdint>
#include <vector>

namespace whorl::drawing {

/// A piece of furniture that stands wherever there is room: beside the figures or under them.
struct Block {
  enum class Kind : std::uint8_t { side_view, table, loops } kind = Kind::table;
  std::uint32_t part = 0; ///< it stands no higher than this part's first figure
  SideView view;
  Table table;
};

/// A block as it will stand.
struct Setting {
  double width = 0, height = 0;
  SetTable table;
};

/// The furniture of a sheet, part by part.
std::vector<Block> blocks_of(const Copy& copy);

/// The ways to set a block, the narrowest first; only where `most` is narrower are lines broken more than
/// they should be.
std::vector<Setting> settings_of(const Block& block, double most);

/// A block that is set in a room with no more lines than it was, or fewer.
Setting eased(const Block& block, const Setting& setting, double width);

/// A block set as low as it can be within `width`.
Setting set_block(const Block& block, double width);

Drawn draw_block(const Copy& copy, const Block& block, const Setting& setting, Point at);

} // namespace whorl::drawing
