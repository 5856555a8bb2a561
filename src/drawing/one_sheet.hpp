#pragma once

#include "drawing/arrange.hpp"
#include "drawing/copy.hpp"

#include <cstdint>
#include <vector>

namespace whorl::drawing {

/// What a sheet's legend explains.
enum class Explains : std::uint8_t { nothing, its_own, everything };

/// What one sheet of a chart carries; its figures are those that its `Copy` names.
struct Carried {
  std::vector<Block> blocks;
  Explains legend = Explains::its_own;
  bool closing = true;
  Paper paper; ///< its size; 0: what it needs
};

/// The figures of a sheet with their captions.
std::vector<Cell> cells_of(const Copy& copy);

/// The height of the legend in a width; empty: the sheet has none.
LegendHeight legend_height(const Copy& copy, const std::vector<Mark>& marks);

/// How high paper must be for a sheet that is arranged so.
double height_of(const Copy& copy, const std::vector<Mark>& marks, const Carried& carried,
                 const Arrangement& arranged);

/// The sheet; where it needs more than its paper, that grows.
Scene compose(const Copy& copy, const std::vector<Mark>& marks, const Carried& carried,
              const Arrangement& arranged);

} // namespace whorl::drawing
