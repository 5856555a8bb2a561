#pragma once

#include "pattern/way.hpp"

#include <utility>
#include <vector>

namespace whorl::pattern {

/// A line as typed, and what it may be by itself.
struct Typed {
  Span span;
  bool blank = false;
  bool underlined = false;
  bool begins_round = false; ///< with a label, or as a start without one
  bool before_round = false; ///< the head of a typed line in which a round begins: "TAIL: Ch 9 …"
  Ways ways;                 ///< where it begins a round

  /// It begins a round, read in this way; or it begins none.
  void begin_round(Way way) { ways = {std::move(way)}, begins_round = true; }
  void begin_none() { ways.clear(), begins_round = false; }
};

/// The typed lines of a text without the blanks around them; two rounds typed in one line are two. Lines that
/// are too long are left out and told.
std::vector<Typed> typed_lines(const Reader& reader, std::vector<Span>& too_long);

} // namespace whorl::pattern
