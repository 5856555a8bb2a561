#pragma once
/// What a figure covers, as convex outlines, and how near they come to one another.

#include "layout/place.hpp"

#include <string>
#include <vector>

namespace whorl::layout::test {

/// One outline and what it belongs to: outlines of one owner may touch.
struct Patch {
  Convex outline;
  std::size_t owner = 0;
  std::string what;
};

/// Ink of every item, boxes of labels, pointers, pieces of the lines, what is placed beside the stitches.
std::vector<Patch> patches_of(const Figure& figure, const Extents& extents);

/// The two patches of different owners that come nearest.
struct Nearest {
  double air = 1e9;
  std::string one, other;
};
Nearest nearest(const std::vector<Patch>& patches);

} // namespace whorl::layout::test
