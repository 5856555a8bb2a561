#pragma once

#include "words/vocabulary.hpp"

#include <cstddef>
#include <cstdint>
#include <string_view>

namespace whorl::pattern {

/// A stretch of a line that says how many pieces are made, in bytes of the line.
struct MakeTold {
  std::size_t begin = 0;
  std::size_t end = 0;
  std::uint32_t count = 0; ///< 0: it says nothing
};

/// "make 2", "make two", "x2", "2x", "*2", "(2 parts)", "(2)", "make a pair", and the number of "2 wings",
/// anywhere in a line that may name a part.
MakeTold make_told(std::string_view line, const words::Vocabulary& vocabulary);

/// What a line that begins so says by itself, "(make 2)", "Make 4 (legs).", "x2", with the marks behind.
MakeTold make_alone(std::string_view line, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
