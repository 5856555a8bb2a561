#pragma once
/// One round's work by chance: stitches of every kind over the stitches that are open.

#include "pictures/floor.hpp"

#include <string>

namespace whorl::pictures {

/// What a round may have.
struct Mood {
  int grow = 0;            ///< of ten places so many get more stitches than one …
  int shrink = 0;          ///< … and so many are worked together
  int fancy = 0;           ///< of ten stitches so many are none of the plain ones
  bool chains = false;     ///< chains over skipped stitches
  bool loops = false;      ///< all in one loop
  int deep = 0;            ///< rounds below that spikes may reach into
  const char* kind = "sc"; ///< the plain stitch
};

/// A mood by chance: even or shaped, plain or of all sorts.
Mood mood_by_chance(Dice& dice, int open, int round);

/// The words of a round, and what it makes of `open` stitches.
struct Work {
  std::string text;
  int made = 0;
  int spaces = 0; ///< of one chain each
};
Work work_by_chance(Dice& dice, const Mood& mood, int open);

} // namespace whorl::pictures
