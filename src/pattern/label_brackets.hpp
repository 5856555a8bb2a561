#pragma once

#include "pattern/label_head.hpp"

namespace whorl::pattern {

/// Whether the brackets [begin, end) hold a count and nothing else: "(18)", "[18 sts]".
bool holds_count(const Head& head, std::size_t begin, std::size_t end);

/// Whether they hold the loops of the round and nothing else: "(BLO)".
bool holds_loops(const Head& head, std::size_t begin, std::size_t end);

/// Whether they hold so many rounds and nothing else: "(6 rounds)".
bool holds_rounds(const Head& head, std::size_t begin, std::size_t end, int rounds);

/// Where the brackets that open at `place` close; `place` if none open there or they do not close.
std::size_t pass_brackets(const Head& head, std::size_t place);

/// Passes a number and the word for stitches: "18 sts"; `place` if they do not stand there.
std::size_t pass_count(const Head& head, std::size_t place);

/// Whether brackets that hold a number count what stands before them as often: "(12) x 6", "(12), sc".
bool is_repeated(const Head& head, std::size_t place);

} // namespace whorl::pattern
