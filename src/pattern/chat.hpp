#pragma once

#include "pattern/way.hpp"

namespace whorl::pattern {

/// Reads a way that is not understood without the sentences at its ends that tell of no work: "We do not want
/// the increases to line up.", "You gain one stitch each time." They are kept as notes; a count among them is
/// stated.
void read_without_chat(const Reader& reader, Way& way, Effort effort);

/// Keeps with every reading what is said around the work.
void keep_note(const Reader& reader, Span said, std::vector<Reading>& readings);

} // namespace whorl::pattern
