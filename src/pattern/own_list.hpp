#pragma once

#include "pattern/source.hpp"
#include "words/vocabulary.hpp"

#include <string_view>
#include <vector>

namespace whorl::pattern {

/// A place where a pattern explains a word of its own: `X = sc`, `Bobble (bo): 4 dc in same st, joined`.
struct Definition {
  Span name;
  Span value;
  Span whole;               ///< all that is no work, bullets and brackets too
  bool in_list = false;     ///< below a heading like "Abbreviations", or beside other definitions
  bool equals = false;      ///< with `=`
  bool in_line = false;     ///< in brackets within a line of work, or in a sentence behind it
  bool behind_work = false; ///< in a sentence that may be about something else
};

/// What a text explains, and the headings of its lists.
struct OwnList {
  std::vector<Definition> definitions; ///< in the order of the text
  std::vector<Span> headings;
};

/// Finds every place that looks like a definition; what it means, and so whether it is one, is told later.
OwnList find_own_list(const Source& source, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
