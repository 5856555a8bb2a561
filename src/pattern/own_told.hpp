#pragma once

#include "pattern/finding.hpp"
#include "stitch/kind.hpp"
#include "words/vocabulary.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace whorl::pattern {

/// What is said of the lines in which a designer defines a stitch.

/// "sc = dc": the word of one standard stitch for another.
Finding redefined(words::Span name, std::string_view named, std::string_view is_now, std::string_view was);

/// "sc: insert hook, pull up a loop, pull through 1 loop, …": other moves than those of the stitch of that name.
Finding other_moves(words::Span moves, std::string_view named);

/// Moves that do not come down to one loop. `usual`: it is read as stitches of its family are made.
Finding loops_left(words::Span moves, int left, bool usual);

/// "3 unfinished tr in the same st", and not that they are joined together.
Finding left_unfinished(words::Span told, const stitch::StitchKind& kind);

/// "Frond: sc, ch 3, sl st in 2nd ch from hook, sc in same st": stitches back along a chain, under one name.
Finding works_back(words::Span told, std::string_view named);

/// "bp = bumpy petal": a word that the language has, and an explanation that nobody can follow.
Finding not_followed(words::Span told, std::string_view named, std::string_view usual);

/// "3 unfinished wibbles in the same st": the word that stands where the stitch does which it is made of, if
/// nobody knows it; none where the explanation is of another kind.
std::optional<std::string> unknown_base(std::string_view told, const words::Vocabulary& vocabulary);
Finding made_of_unknown(words::Span told, std::string_view named, std::string_view base);

} // namespace whorl::pattern
