#pragma once

#include "pattern/own_list.hpp"

namespace whorl::pattern {

/// The definitions of a line that has no sign between name and meaning: `Acorn. X sc / V inc / Q bobble of 4
/// dc`. Names are single letters, signs or capitals; below a list's heading abbreviations too.
std::vector<Definition> definitions_without_signs(const Source& source, Span line, bool in_list,
                                                  const words::Vocabulary& vocabulary);

/// The definitions that stand behind a round's work or in a sentence of their own: `(sc, bo) around, bo =
/// bobble of 4 dc`, `A dec is 2 stitches together.`
std::vector<Definition> definitions_in_sentences(const Source& source, Span line,
                                                 const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
