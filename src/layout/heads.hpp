#pragma once

#include "fabric/fabric.hpp"
#include "layout/rounded.hpp"

#include <optional>
#include <vector>

namespace whorl::layout {

/// Where the heads and chain spaces of a motif are, for what is worked into them.
class Heads {
public:
  /// Of the stitches from one on, so many.
  Heads(const fabric::Fabric& fabric, fabric::StitchId first, std::uint32_t many)
      : fabric_(fabric), first_(first), tops_(many) {}

  void put(fabric::StitchId stitch, Spotted head);
  /// Where a leg stands; none in a ring, or in what is not drawn here.
  std::optional<Spotted> of(const fabric::Place& place) const;

private:
  std::optional<Spotted> top(fabric::StitchId stitch) const;
  std::optional<Spotted> space(std::uint32_t arch) const;
  /// Half way between two that are known.
  static std::optional<Spotted> between(std::optional<Spotted> before, std::optional<Spotted> behind);

  const fabric::Fabric& fabric_;
  fabric::StitchId first_;
  std::vector<std::optional<Spotted>> tops_;
};

/// The place that is nearest to `at` a whole number of turns away from it.
double turned_near(double place, double at);

} // namespace whorl::layout
