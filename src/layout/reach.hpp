#pragma once

#include "layout/extents.hpp"

#include <utility>
#include <vector>

namespace whorl::layout {

/// Corners of all ink of a symbol that stands upright, its foot at (0, 0); high lies below low where it has
/// none.
struct Reach {
  Point low{1e300, 1e300}, high{-1e300, -1e300};
};
Reach reach_of(const SymbolExtent& shape);

/// The reaches of a figure's symbols, each found once.
class Reaches {
public:
  const Reach& of(const SymbolExtent& shape);

private:
  std::vector<std::pair<const SymbolExtent*, Reach>> found_;
};

} // namespace whorl::layout
