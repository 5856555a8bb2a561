#pragma once

#include "words/lattice.hpp"

#include <optional>
#include <string>

namespace whorl::pattern {

/// Whether a word of a pattern's own names several stitches in one place: "V-st".
bool names_group(const words::Vocabulary& vocabulary, words::Concept means);

/// Whether such a word names stitches that go into several places, and say into which.
bool names_sequence(const words::Vocabulary& vocabulary, words::Concept means);

/// Whether a concept is several stitches of the pattern's own in one place: such a group, or so many of one
/// stitch ("shell: 5 dc in one st").
bool is_own_group(const words::Vocabulary& vocabulary, words::Concept means);

/// The stitches of such a group in brackets, out of the words that explain it: "(dc, ch 1, dc)" of "(dc, ch
/// 1, dc) in the same st"; none if these tell no group of so many stitches, or work goes on behind it.
std::optional<std::string> group_told(std::string_view explanation, const words::Vocabulary& vocabulary,
                                      int least = 2);

/// All of an explanation whose stitches go into several places, in brackets: "(ch 3, sl st in the same st, sc in
/// next st)"; none if it tells no such stitches.
std::optional<std::string> sequence_told(std::string_view explanation, const words::Vocabulary& vocabulary);

/// Whether an explanation counts chains from the hook: it goes back along a chain of its own.
bool goes_back(std::string_view explanation, const words::Vocabulary& vocabulary);

/// The stitches of the group that an explanation names and nothing else: "Fan", "same as a Fan"; none if it
/// says more or names none.
std::optional<std::string> group_named(std::string_view explanation, const words::Vocabulary& vocabulary);

/// Puts the stitches of named groups where they are named: "V-st in next st" becomes "(dc, ch 1, dc) in next
/// st", "in each V-st" the chain space of each. Groups that are only counted stay. False if none is named.
bool tell_groups(words::Folded& folded, const words::Lattice& lattice, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
