#pragma once

#include "pattern/sentence.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace whorl::pattern {

/// "Ch 3 which count as the first dc, dc in same st": the text with blanks in place of what is told of the
/// chains at its head, up to the next comma, every byte keeping its place; none where nothing is told so.
/// `text` is what the sentence was made of.
std::optional<std::string> without_first_stitch_told(const Sentence& sentence, std::string_view text);

} // namespace whorl::pattern
