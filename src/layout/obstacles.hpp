#pragma once

#include "layout/extents.hpp"

#include <vector>

namespace whorl::layout {

/// Convex outlines, looked up by where they are.
class Obstacles {
public:
  void add(std::vector<Convex> outlines);
  /// Whether what reaches so far round a point may touch one of them.
  bool may_be_near(Point middle, double reach) const;
  /// Air between some ink and the outlines, looked for up to `most`.
  double air_around(const std::vector<Convex>& ink, double most) const;

private:
  struct Obstacle {
    Point middle;
    double reach = 0;
    Convex outline;
  };
  std::vector<Obstacle> sorted_; ///< by the middle's x
  double widest_ = 0;
};

/// Air between two inks, looked for up to `most`.
double air_between(const std::vector<Convex>& one, const std::vector<Convex>& other, double most);

} // namespace whorl::layout
