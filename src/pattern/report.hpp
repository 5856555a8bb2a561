#pragma once

#include "pattern/finding.hpp"
#include "pattern/source.hpp"

#include <string>
#include <string_view>

namespace whorl::pattern {

/// A finding as a person reads it: `file:line:column: error: …`, the line of the pattern, a caret under the
/// place (placed by display width), the mend. Ends with a line end.
std::string show(const Finding& finding, const Source& source, std::string_view file);

} // namespace whorl::pattern
