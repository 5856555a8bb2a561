#pragma once

#include "pattern/way.hpp"

/// A reader of a text in US English with the standard kinds of stitches.
inline whorl::pattern::Reader reader_of(const whorl::pattern::Source& source) {
  static const std::vector<whorl::stitch::StitchKind> kinds = whorl::stitch::standard_kinds();
  return {source, *whorl::words::find_vocabulary("en-US"), kinds};
}
