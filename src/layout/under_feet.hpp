#pragma once

#include "layout/place.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// Feet that go into one place one after another.
struct Feet {
  fabric::Place into;
  std::vector<Point> at;
};

/// Those of items that stand side by side.
std::vector<Feet> feet_of(const fabric::Fabric& fabric, const Extents& extents,
                          const std::vector<Item>& items, Hand hand);

/// The places of rounds that stand, into which others are worked: tops of stitches and chains of spaces.
class UnderFeet {
public:
  explicit UnderFeet(const fabric::Fabric& fabric) : fabric_(fabric) {}

  /// Adds the next round: that of a ring of a figure.
  void add(const Figure& figure, const Ring& ring);

  /// Whether feet stand nearer to their own place than to any other of its round, or straighter outside it
  /// where the round needs so much room that it stands further out; also where that is not known. Of many
  /// feet in one place their middle is asked: they fan out.
  bool holds(const Feet& feet) const;

private:
  struct Spot {
    Point at;
    fabric::StitchId stitch = fabric::none;
    std::uint32_t arch = fabric::none;
  };
  struct Shown {
    std::uint32_t round = fabric::none;
    std::vector<Spot> spots;
  };
  std::uint32_t round_of(const fabric::Place& into) const;
  bool is_near(const fabric::Place& into, Point foot) const;

  const fabric::Fabric& fabric_;
  std::vector<Shown> shown_;
};

} // namespace whorl::layout
