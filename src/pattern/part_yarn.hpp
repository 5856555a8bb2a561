#pragma once

#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// The yarn that a part's heading tells among other things: "brown" of "make 2, brown" and of "in brown,
/// worked flat", the letter of a `listed` yarn of "make 2, A"; "" if it tells none.
std::string yarn_of_heading(std::string_view note, const std::vector<ListedYarn>& listed,
                            const words::Vocabulary& vocabulary);

/// The yarn that a sentence above a part's first round tells: "In walnut, worked from the tip up", "start at
/// the nose with cream"; "" if it tells none.
std::string yarn_begun_in(std::string_view sentence, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
