#pragma once

#include "pattern/sentence.hpp"

namespace whorl::pattern {

/// Whether a bracket only tells something: "(counts as dc)", "(the one that holds your first sc)",
/// "(bobble: 5 dc in the same st)". One that is repeated, or that begins with work, does not.
bool is_aside(const Sentence& sentence, const Bracket& bracket);

/// Where a sentence that tells what a stitch is ends: "bobble: 4 dc in the same st", "a dec is 2 sts
/// together"; `at` if none begins there.
std::uint32_t end_of_definition(const Sentence& sentence, std::uint32_t at);

/// "8 petals!" behind the work: a number of what nobody counts, to the end of its clause; `at` if that is
/// not what stands there.
std::uint32_t end_of_other_count(const Sentence& sentence, std::uint32_t at);

/// "(first dc)", "(missed ch = first dc)": the chains before the bracket stand for a stitch.
bool says_first_stitch(const Sentence& sentence, const Bracket& bracket);

/// Behind the other sizes in "6 (7, 8) sc", where `at` stands behind the number of the first; `at` if there
/// are none.
std::uint32_t behind_sizes(const Sentence& sentence, std::uint32_t at);

/// Behind the bracket in "crab st (sc from left to right) in each st", where `at` stands behind the stitch;
/// `at` if there is none.
std::uint32_t behind_gloss(const Sentence& sentence, std::uint32_t at);

} // namespace whorl::pattern
