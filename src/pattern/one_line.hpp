#pragma once

#include "pattern/way.hpp"

#include <string>

namespace whorl::pattern {

/// The work of a way as it is read: on one line, what stands above it in front, brackets that only hold its
/// loops opened.
std::string text_to_read(const Reader& reader, const Way& way);

} // namespace whorl::pattern
