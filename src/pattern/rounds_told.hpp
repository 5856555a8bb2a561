#pragma once

#include "pattern/label.hpp"

#include <optional>

namespace whorl::pattern {

/// How many rounds a line is worked for, where its words say so: "work even for 3 rounds", "sc 4 rnds even",
/// "for 2 more rows". The label has the span of those words, and the line from its head as its work.
std::optional<Label> rounds_told(std::string_view text, std::uint32_t begin,
                                 const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
