#pragma once

#include "layout/label.hpp"
#include "layout/place.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// What a ring is made of, before it has a radius.
struct Band {
  std::vector<const SymbolExtent*> shapes; ///< the different ones
  std::vector<std::uint32_t> how_many;     ///< items of each
  std::vector<std::uint32_t> shape_of;     ///< for every item, which of `shapes`
  std::vector<double> slot;                ///< the slot of each of `shapes`
  double height = 0.8;                     ///< from the feet's circle to the heads'
  double slots = 0;                        ///< all slots added up
  bool loop_marks = false;
  bool break_outside = false; ///< a break line stands outside it
  Lettering label;
};

/// Collects the shapes of a ring's items. An echo, on one side of which nothing stands, needs room for its
/// tops only.
Band band_of(const std::vector<Item>& items, const Extents& extents, bool echo);

} // namespace whorl::layout
