#pragma once

#include "layout/figure.hpp"

namespace whorl::layout {

/// The rings of a disc with their items, before they have a place.
struct Rungs {
  std::vector<std::vector<Item>> items;
  std::vector<Band> bands;
  double most_turned = 1.4; ///< radians between the first ring's gutter and another's
  bool keep_problems = false;
};

/// Sizes the rings of a disc and stands their stitches on them, from the inmost out, each by its own place.
/// Where there is no room for that a ring stands further out; where it would have to stand much further out,
/// those inside it leave room for it where it is dense. Its band keeps that.
void lay_rings(const fabric::Fabric& fabric, bool open, const Turn& turn, Rungs& rungs, Core& core,
               Drawn& drawn);

} // namespace whorl::layout
