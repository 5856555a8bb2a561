#pragma once

#include "pattern/source.hpp"
#include "words/vocabulary.hpp"

#include <string_view>

namespace whorl::pattern {

/// The chain that a sentence above a first round tells of among other words: "8 ch" of "for the leaf make 8
/// ch in green and work in rows", "chain of 8 stitches" of "it stands on a chain of 8 stitches"; empty if
/// there is none, or if the line works stitches besides.
Span chain_told(std::string_view line, std::uint32_t begin, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
