#pragma once

#include "words/lattice.hpp"
#include "words/vocabulary.hpp"

#include <cstdint>
#include <vector>

namespace whorl::pattern {

enum class Passage : std::uint8_t { round, square, curly, stars, open_star, list, slashes };

/// A passage in brackets, between two stars, from a star on, or a list. Places are folded bytes.
struct Bracket {
  Passage kind = Passage::round;
  std::uint32_t begin = 0;
  std::uint32_t inner_begin = 0;
  std::uint32_t inner_end = 0;
  std::uint32_t end = 0;
};

/// `last`: where the last pass of a repeat ends.
enum class StarRole : std::uint8_t { none, opens, closes, times, reference, last };

inline constexpr std::int32_t no_bracket = -1;

/// The passages of a line, paired before anything is read.
struct Brackets {
  std::vector<Bracket> all;
  std::vector<std::int32_t> at; ///< per folded byte: the passage that begins here, or no_bracket
  std::vector<StarRole> stars;  ///< per folded byte
  bool too_deep = false;
  std::uint32_t deep_at = 0; ///< where it got too deep
};

Brackets pair_brackets(const words::Folded& text, const words::Lattice& lattice,
                       const words::Vocabulary& vocabulary);

/// `at` moved on over blanks.
std::uint32_t skip_blanks(std::string_view text, std::uint32_t at);

/// `end` moved back over blanks and separators, not before `begin`.
std::uint32_t trim_separators(std::string_view text, std::uint32_t begin, std::uint32_t end);

bool is_separator(char c);

} // namespace whorl::pattern
