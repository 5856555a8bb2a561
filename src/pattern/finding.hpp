#pragma once

#include "words/fold.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace whorl::pattern {

/// An error is a pattern that cannot be worked as written, a warning what is most likely a slip, a note what
/// the tool assumed.
enum class Severity : std::uint8_t { error, warning, note };

/// A second place that a finding speaks of.
struct Remark {
  words::Span span;
  std::string text;
  bool operator==(const Remark&) const = default;
};

/// Something to tell the designer. Messages speak of rounds, stitches and loops.
struct Finding {
  Severity severity = Severity::error;
  std::string code;    ///< one word for programs: "count", "unread", "left-over"
  words::Span span;    ///< what it is about; empty: the whole text
  std::string message; ///< what was being read, what is known, where it does not agree
  std::string mend;    ///< the smallest change that would mend it, where exactly one exists
  std::vector<Remark> remarks;
  bool operator==(const Finding&) const = default;
};

const char* name(Severity severity);

} // namespace whorl::pattern
