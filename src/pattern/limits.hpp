#pragma once

#include <cstdint>

/// Every limit of the reader, in one place.
namespace whorl::pattern {

namespace limit {
inline constexpr std::uint32_t file_bytes = 1U << 24;    ///< of a pattern, some thousands of pages
inline constexpr std::uint32_t line_bytes = 1U << 16;    ///< of a line; a longer one is not read
inline constexpr std::uint32_t times = 100'000;          ///< of one repeat, or stitches of one item
inline constexpr std::uint32_t in_one = 1000;            ///< stitches in one place
inline constexpr std::uint32_t stitches = 1'000'000;     ///< of one round
inline constexpr std::uint32_t all_stitches = 1'000'000; ///< of a pattern
inline constexpr int nesting = 20;                       ///< of brackets and stars in one another
inline constexpr int tree_nesting = 100;                 ///< of everything a tree nests, references too
inline constexpr int rounds = 256;       ///< of one line that are followed one by one where they differ
inline constexpr int number = 100'000;   ///< of a round
inline constexpr std::size_t digits = 7; ///< of a number
inline constexpr int joined_lines = 20;  ///< typed lines that make one round
inline constexpr std::size_t introduction = 100;   ///< letters of the sentence below a part's heading
inline constexpr int findings = 50;                ///< of one code; the others are counted
inline constexpr int states = 16;                  ///< ways to have come to a line that are kept
inline constexpr std::size_t depth = 64;           ///< of a tree that is shown
inline constexpr int lines_back = 8;               ///< lines before a disagreement that are read once more
inline constexpr int passes = 3;                   ///< of reading more where counts disagree
inline constexpr std::size_t mends = 40;           ///< changes that are tried on one line
inline constexpr std::uint32_t mended_bytes = 500; ///< of a line that is mended
inline constexpr int mended_lines = 100;           ///< of one text
inline constexpr int lines_again = 2000;           ///< of one text that are read once more
} // namespace limit

} // namespace whorl::pattern
