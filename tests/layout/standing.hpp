#pragma once
/// How the stitches of a figure stand: by their own places, in order, without crossing one another.

#include "layout/place.hpp"

#include <string>
#include <vector>

namespace whorl::layout::test {

/// Of the places that are worked into: how many have their feet nearer than any other place of their round
/// has, or straighter beneath them, where a round that needs room stands further out; how many not, and
/// which. Of more than two feet in one place their middle is asked. Places that the figure does not show (a
/// ring, the end of a row), and chains of the same round, are passed over.
struct Nearness {
  int near = 0, not_near = 0;
  std::string which;
};
Nearness nearness_of(const fabric::Fabric& fabric, const Figure& figure);

/// The stitches that stand before the one worked before them.
std::string out_of_order(const fabric::Fabric& fabric, const Figure& figure);

/// The pairs of stems, from foot to top, that cross.
std::string crossing_stems(const fabric::Fabric& fabric, const Figure& figure);

/// The stitches that are not drawn, and not stood for, exactly once.
std::string not_shown_once(const fabric::Fabric& fabric, const std::vector<Figure>& figures);

} // namespace whorl::layout::test
