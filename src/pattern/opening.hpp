#pragma once

#include "pattern/meaning.hpp"

#include <optional>

namespace whorl::pattern {

/// Words that open places which the round before does not have: "the other side of the chain", "the free
/// front loops of Rnd 6", "the 8 skipped sts". Places are folded bytes.
struct Opening {
  Act act = Act::stitch;
  std::uint8_t loops = 0;
  std::uint32_t round = 0; ///< as typed; 0: not said
  std::uint32_t begin = 0;
  std::uint32_t end = 0;
};

/// The last opening in [begin, end); none if there is none.
std::optional<Opening> opening_in(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

/// Whether a text begins with words that are the other side of a chain where one is worked along, and else
/// how the work is turned or held: "turn the piece", "upside down".
bool tells_how_it_lies(std::string_view text);

/// Sees to it that a piece whose words in [match.begin, match.end) open places opens them; the match then
/// takes in the round that they name.
void settle_opening(const Sentence& sentence, Match& match, Piece& piece);

/// The opening that a clause [begin, end) begins with, before any stitch is named; none if there is none.
std::optional<Opening> opening_of_clause(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

/// The words of a text from byte `begin` on that open free loops; empty if none do.
words::Span words_that_open_loops(std::string_view text, std::uint32_t begin,
                                  const words::Vocabulary& vocabulary);

/// Whether a text tells of the other side of a starting chain, or of yarn that is joined to one.
bool opens_other_side(std::string_view text, const words::Vocabulary& vocabulary);

/// The piece that an opening is by itself.
Piece piece_of(const Opening& opening);

} // namespace whorl::pattern
