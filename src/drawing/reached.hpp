#pragma once

#include "layout/place.hpp"

#include <cstdint>
#include <utility>
#include <vector>

namespace whorl::drawing {

/// A place that a stitch goes into, as it stands in the stitch's own figure.
struct Reached {
  std::uint32_t first = fabric::none;     ///< in Figure::items
  std::uint32_t count = 0;                ///< of a space: all its chains; 0: the middle of the figure
  fabric::StitchId stitch = fabric::none; ///< … of a space the middle one
  fabric::On what = fabric::On::top;
  layout::Point foot; ///< of the leg that goes there
};

/// Finds what is drawn of a stitch in a figure.
class DrawnItems {
public:
  explicit DrawnItems(const layout::Figure& figure);
  /// Its number in Figure::items; none: the figure does not show it.
  std::uint32_t of(fabric::StitchId stitch) const;

private:
  const layout::Figure& figure_;
  std::vector<std::pair<fabric::StitchId, std::uint32_t>> items_;
};

/// Where the legs of an item go, as far as its figure shows it.
std::vector<Reached> reached_by(const fabric::Fabric& fabric, const layout::Figure& figure,
                                const DrawnItems& drawn, const layout::Item& item);

/// Where the legs of so many items of a figure go; each place once.
std::vector<Reached> reached_by(const fabric::Fabric& fabric, const layout::Figure& figure,
                                const std::vector<std::uint32_t>& items);

} // namespace whorl::drawing
