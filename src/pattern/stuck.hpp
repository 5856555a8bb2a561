#pragma once

#include "pattern/passage.hpp"
#include "pattern/reading.hpp"

namespace whorl::pattern {

/// Where reading got no further, and what could have followed there, in the language's written form.
Stuck stuck_at(const WorkReader& reader, std::string_view text, std::uint32_t text_begin);

} // namespace whorl::pattern
