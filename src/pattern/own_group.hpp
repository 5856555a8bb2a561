#pragma once

#include "words/lattice.hpp"

#include <optional>
#include <string>

namespace whorl::pattern {

/// Whether a word of a pattern's own names several stitches in one place: "V-st".
bool names_group(const words::Vocabulary& vocabulary, words::Concept means);

/// Whether a concept is several stitches of the pattern's own in one place: such a group, or so many of one
/// stitch ("shell: 5 dc in one st").
bool is_own_group(const words::Vocabulary& vocabulary, words::Concept means);

/// The stitches of such a group in brackets, out of the words that explain it: "(dc, ch 1, dc)" of "(dc, ch
/// 1, dc) in the same st"; none if these tell no group of so many stitches.
std::optional<std::string> group_told(std::string_view explanation, const words::Vocabulary& vocabulary,
                                      int least = 2);

/// The stitches of the group that an explanation names and nothing else: "Fan", "same as a Fan"; none if it
/// says more or names none.
std::optional<std::string> group_named(std::string_view explanation, const words::Vocabulary& vocabulary);

/// Puts the stitches of named groups where they are named: "V-st in next st" becomes "(dc, ch 1, dc) in next
/// st", "in each V-st" the chain space of each. Groups that are only counted stay. False if none is named.
bool tell_groups(words::Folded& folded, const words::Lattice& lattice, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
