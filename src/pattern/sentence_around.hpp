#pragma once

#include "pattern/source.hpp"

#include <algorithm>
#include <string_view>

namespace whorl::pattern {

/// The sentence of its line that words stand in, as typed, without its full stop.
inline std::string_view sentence_around(const Source& source, Span words) {
  const Span line = source.line(source.line_of(words.begin));
  const std::string_view text = source.at(line);
  const std::size_t at = std::min<std::size_t>(words.begin - line.begin, text.size());
  const std::size_t stop = at == 0 ? std::string_view::npos : text.rfind(". ", at - 1);
  const std::size_t begin = stop == std::string_view::npos ? 0 : stop + 2;
  return text.substr(begin, std::min(text.find(". ", at), text.size()) - begin);
}

} // namespace whorl::pattern
