#pragma once

#include "pattern/choice.hpp"
#include "pattern/line.hpp"

#include <optional>
#include <string>

namespace whorl::pattern {

/// What a mended line has to agree with.
struct Wanted {
  std::int64_t opened = unknown;    ///< stitches before it
  std::int64_t used_next = unknown; ///< what the round after it uses, where that is known
};

/// The line with the one smallest change that makes it agree on both sides: a near word, a letter that a
/// scanner takes for another, dc for dec, the number of a repeat, a bracket, the stated count. None if no
/// change does, or several do alike.
std::optional<std::string> find_mend(const Reader& reader, const Way& way, Span line, const Wanted& wanted);

/// The word of the language that has the same letters in another order ("eahc"); "" if there is none.
std::string word_of_same_letters(std::string_view typed, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
