#pragma once

#include "pattern/header.hpp"
#include "pattern/way.hpp"

#include <vector>

namespace whorl::pattern {

enum class LineKind : std::uint8_t { title, subtitle, header, heading, round, sentence };

/// A piece of the pattern that stands for itself: one line as typed, or several that belong together.
struct Line {
  LineKind kind = LineKind::sentence;
  Span span;
  Heading heading; ///< heading
  Header header;   ///< header
  Ways ways;       ///< round: the ways to understand it
};

/// What cutting a text into lines gives.
struct Cut {
  std::vector<Line> lines;
  std::vector<Span> too_long; ///< typed lines that are not read
};

/// Title, header lines, headings, rounds and the sentences between them, in order.
Cut cut(const Reader& reader);

} // namespace whorl::pattern
