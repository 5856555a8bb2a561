#pragma once

#include "pattern/stated.hpp"

namespace whorl::pattern {

/// The bare number that a line ends with ("inc x 6 12"), read as its count; empty if it ends otherwise.
StatedCount bare_count(const Sentence& sentence);

/// A count that stands last as a sentence of its own, where a stitch or unit is named: "… twice. 4 dc."
StatedCount last_sentence_count(const Sentence& sentence, const std::vector<stitch::StitchKind>& kinds);

/// A ring, a bracket or "times" takes the number behind it, so that the line reads although it was meant as a
/// count.
bool may_hide_count(const Sentence& sentence, std::uint32_t number);

/// "sc inc sc inc | 6": whether four steps or more stand before the last number, none of them with a number.
bool counts_unnumbered_list(const Sentence& sentence, std::uint32_t number);

} // namespace whorl::pattern
