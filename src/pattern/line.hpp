#pragma once

#include "pattern/choice.hpp"
#include "pattern/header.hpp"
#include "pattern/source.hpp"

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

/// What is needed to read a line's work.
struct Reader {
  const Source& source;
  const words::Vocabulary& vocabulary;
  const std::vector<stitch::StitchKind>& kinds;
};

/// Makes the readings of a way's work.
void read_way(const Reader& reader, Way& way, Effort effort);

/// The count at the end of a line's work, found by its form alone: `(18)`, `[18]`, `= 18`.
std::optional<std::uint32_t> count_at_end(std::string_view work);

/// Title, header lines, headings, rounds and the sentences between them, in order.
Cut cut(const Reader& reader);

} // namespace whorl::pattern
