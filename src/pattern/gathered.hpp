#pragma once

#include "stitch/kind.hpp"
#include "words/vocabulary.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// Several stitches of one kind that are closed together, as words tell them.
struct Gathered {
  stitch::StitchKind kind;
  bool unfinished = false; ///< each is said to be left unfinished until then
  bool closed = false;     ///< that they are closed together is said, too
};

/// "3 unfinished tr over the next 3 sts, joined together", "3 unfinished tr in the same st, closed together",
/// "1 tr in each of the next 3 sts, keeping the last loop of each on the hook"; none if the words tell
/// nothing of the kind.
std::optional<Gathered> gathered_told(std::string_view text, const words::Vocabulary& vocabulary,
                                      const std::vector<stitch::StitchKind>& kinds);

} // namespace whorl::pattern
