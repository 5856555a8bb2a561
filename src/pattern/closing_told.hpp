#pragma once

#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

#include <string_view>

namespace whorl::pattern {

/// The tree's last round is the last of its part and, worked in decreases only, is closed by a sentence that
/// may as well join a round, "6 dec. Close.": its stitches are gathered instead. `text` is the whole text.
void gather_last_round(Tree& tree, std::string_view text, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
