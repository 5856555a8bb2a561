#pragma once

#include "pattern/source.hpp"
#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// Work that is told by naming rounds worked before: "as Rnd 11", "rep rnds 3 and 4 twice", "work as for the
/// head to Rnd 5", "as the first leg".
struct Reference {
  int from = 0;            ///< first of the rounds named; 0: none is
  int to = 0;              ///< last of them
  int back = 0;            ///< "repeat the last 2 rounds": how many before this one; 0: not told so
  std::uint32_t times = 1; ///< how often they are worked
  std::uint8_t loops = 0;  ///< "but in BLO": a set of stitch::Loop
  std::string part;        ///< the words that name a part; "": none
  std::vector<Stated> stated;
  Span span;
  Span tail; ///< what stands behind it; empty: nothing
};

/// The reference that a line's work is; none if it is none.
std::optional<Reference> read_reference(std::string_view text, std::uint32_t begin,
                                        const words::Vocabulary& vocabulary);

/// How well the words of a reference name a part of this name; 0: not at all. "the first leg" names "Leg 1"
/// and "FIRST LEG", "the head" names "Head".
int names_part(std::string_view words, std::string_view name, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
