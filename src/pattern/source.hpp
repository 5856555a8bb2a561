#pragma once
/// Room `pattern`: the text of a pattern comes in; the tree of what the designer wrote and every finding
/// about it go out. Reading never fails and settles nothing before the counts of the whole part have spoken.
/// Nothing here knows which stitch is worked into which, or how a chart looks.

#include "words/fold.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::pattern {

using words::Span;

/// A place as a person counts it: lines from 1, columns in code points from 1.
struct Position {
  std::uint32_t line = 1;
  std::uint32_t column = 1;
};

/// The bytes of a pattern and where its lines begin. A byte order mark is passed over; lines end with
/// LF, CRLF or CR.
class Source {
public:
  explicit Source(std::string_view text);

  std::string_view text() const { return text_; }
  std::size_t line_count() const { return starts_.size(); }
  /// The span of a line (from 0) without its line end.
  Span line(std::size_t index) const;
  /// The text of a span.
  std::string_view at(Span span) const { return std::string_view(text_).substr(span.begin, span.length()); }
  /// The line (from 0) in which a byte lies.
  std::size_t line_of(std::uint32_t byte) const;
  Position position(std::uint32_t byte) const;
  /// Length of a span in code points.
  std::uint32_t length(Span span) const;
  /// Bytes that are no text (not UTF-8, or NUL), in order, one span a run.
  const std::vector<Span>& bad_bytes() const { return bad_; }

private:
  std::string text_;
  std::vector<std::uint32_t> starts_;
  std::vector<Span> bad_;
};

} // namespace whorl::pattern
