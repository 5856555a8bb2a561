#pragma once

#include "pattern/sentence.hpp"
#include "words/vocabulary.hpp"

#include <cstdint>
#include <string_view>

namespace whorl::pattern {

/// Which of a round's loops a sentence begins in: "join yarn in the 5th free front loop of Rnd 3", "in the
/// back loop of st 5", "starting in loop 5"; 0: it does not say.
std::uint16_t loop_named(std::string_view sentence, const words::Vocabulary& vocabulary);

/// "front loops | 4-9 of Rnd 3", "loops | 1 to 6": the first and the last, and where the words for them end;
/// 0: none are numbered.
struct NumberedLoops {
  std::uint16_t first = 0, last = 0;
  std::uint32_t end = 0;
};
NumberedLoops loops_numbered(const Sentence& sentence, std::uint32_t loop_end);
NumberedLoops loops_named(std::string_view text, const words::Vocabulary& vocabulary);

/// Which of a round's stitches a sentence begins in: "join yarn in the 5th st of the last round", "starting
/// in st 5"; 0: it does not say.
std::uint16_t stitch_named(std::string_view sentence, const words::Vocabulary& vocabulary);

/// Whether one loop is told by its number in [begin, end) of a sentence, "in loop 5", "in the 5th free loop",
/// and no other loop anywhere in it.
bool names_one_loop(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

} // namespace whorl::pattern
