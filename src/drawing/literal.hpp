#pragma once

#include <string>
#include <string_view>

namespace whorl::drawing {

/// A text as a C++ literal, for the tables that the build makes of `symbols/`.
inline void append_quoted(std::string& out, std::string_view text) {
  out += '"';
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  out += '"';
}

} // namespace whorl::drawing
