#pragma once

#include "pattern/passage.hpp"
#include "pattern/reading.hpp"

namespace whorl::pattern {

/// Where reading the work [begin, stop) gets no further, and what could have followed there, in the
/// language's written form. `reader` is fresh and lenient.
Stuck stuck_at(WorkReader& reader, std::uint32_t begin, std::uint32_t stop, std::string_view text,
               std::uint32_t text_begin);

} // namespace whorl::pattern
