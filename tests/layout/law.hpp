#pragma once
/// What holds for all figures of a pattern.

#include "standing.hpp"
#include "typed.hpp"

#include <catch2/catch.hpp>

namespace whorl::layout::test {

/// Feet by their places, in order, no stems that cross, every stitch shown once, air.
inline void check_law(const Typed& typed) {
  for (const Figure& figure : typed.figures) {
    CHECK(nearness_of(typed.fabric, figure).which == "");
    CHECK(out_of_order(typed.fabric, figure) == "");
    CHECK(crossing_stems(typed.fabric, figure) == "");
  }
  CHECK(not_shown_once(typed.fabric, typed.figures) == "");
  CHECK(typed.air() > 0.05);
}

} // namespace whorl::layout::test
