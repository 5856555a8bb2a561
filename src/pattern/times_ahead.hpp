#pragma once

#include "pattern/sentence.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace whorl::pattern {

/// "6x 2 sc + 1 inc", "6 times 2 sc, inc": how often stands before a list without a mark between. The text with
/// a colon in place of the blank, as others type it, every byte keeping its place; none where it begins
/// otherwise. `text` is what the sentence was made of.
std::optional<std::string> mark_times_ahead(const Sentence& sentence, std::string_view text);

} // namespace whorl::pattern
