#pragma once

#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

#include <string_view>

namespace whorl::pattern {

/// How a text says that a piece is held: "hold the stem with the start down", "hold it upside down".
Hold hold_said(std::string_view text, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
