#pragma once

#include <string_view>

namespace whorl::pattern {

/// The byte of [begin, at) that stands last before a place, what may be passed (blanks) left out; 0: there is none.
inline char byte_before(std::string_view text, std::size_t at, std::size_t begin = 0,
                        std::string_view passed = " ") {
  while (at > begin && passed.find(text[at - 1]) != std::string_view::npos) --at;
  return at == begin ? '\0' : text[at - 1];
}

} // namespace whorl::pattern
