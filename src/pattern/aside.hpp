#pragma once

#include "pattern/sentence.hpp"

namespace whorl::pattern {

/// Whether a bracket only tells something: "(counts as dc)", "(the one that holds your first sc)",
/// "(bobble: 5 dc in the same st)". One that is repeated, or that begins with work, does not.
bool is_aside(const Sentence& sentence, const Bracket& bracket);

} // namespace whorl::pattern
