#pragma once
/// Fabrics with what is placed on them: eyes, markers, a second yarn, parts begun in free loops.

#include "balls.hpp"

namespace whorl::layout::test {

/// Posts in the holes behind these stitches of a round, counted from the first round of all.
void place(fabric::Fabric& fabric, std::uint32_t round, const std::vector<std::uint32_t>& after,
           pattern::What what = pattern::What::eye);

/// Works the stitches of a round, from the first-th to the last-th, in another yarn.
void dye(fabric::Fabric& fabric, std::uint32_t round, std::uint8_t yarn, std::uint32_t first = 0,
         std::uint32_t last = 0xFFFFFFFF);

/// How a part is begun in the front loops of a round.
struct Begun {
  std::uint32_t round = 0;  ///< index into Fabric::rounds
  std::uint32_t in_one = 1; ///< stitches in each loop
  std::uint32_t from = 0;   ///< the first stitch that is worked into
  std::uint32_t loops = 0;  ///< how many are; 0: all
  bool against = false;     ///< from the last to the first
};

/// Begins a part and works its first round.
void begin_in_loops(Ball& ball, const std::string& name, const Begun& begun);

/// A stem with a skirt in the front loops of its fifth round.
fabric::Fabric toadstool(const Begun& begun = {4, 2, 0, 0, false});

/// A ball at random with eyes, markers, beads, another yarn in places and rounds, and parts begun in its
/// loops.
fabric::Fabric random_toy(std::uint64_t seed);

} // namespace whorl::layout::test
