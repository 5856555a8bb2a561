#pragma once
/// Room `writing`: the tree comes in; instructions in words go out: so far how each stitch is made, move by
/// move. Words come from a wording that is handed in; nothing here is English, draws, or counts a round.

#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

#include <string_view>
#include <vector>

namespace whorl::writing {

/// A way of working that a pattern uses: a kind, how many of it go into one place, and how it goes in.
struct Used {
  stitch::KindId kind = 0;
  std::uint16_t in_one = 1;
  pattern::Into into = pattern::Into::loops;
  bool operator==(const Used&) const = default;
};

/// The ways of working of a pattern, each once, in the order of the text.
std::vector<Used> used_stitches(const pattern::Tree& tree);

} // namespace whorl::writing
