#include "pattern/source.hpp"

#include <utf8proc.h>

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// Bytes of the character at `place`; 0 where there is none.
std::uint32_t character_bytes(std::string_view text, std::size_t place) {
  const auto byte = static_cast<unsigned char>(text[place]);
  if (byte == 0) return 0;
  if (byte < 0x80) return 1;
  utf8proc_int32_t code = 0;
  const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(text.data()) + place;
  const auto rest = static_cast<utf8proc_ssize_t>(std::min<std::size_t>(text.size() - place, 4));
  const auto taken = utf8proc_iterate(bytes, rest, &code);
  return taken > 0 ? static_cast<std::uint32_t>(taken) : 0;
}

std::vector<Span> find_bad_bytes(std::string_view text) {
  std::vector<Span> bad;
  for (std::uint32_t place = 0; place < text.size();) {
    const auto bytes = character_bytes(text, place);
    if (bytes == 0 && !bad.empty() && bad.back().end == place) {
      ++bad.back().end;
    } else if (bytes == 0) {
      bad.push_back({place, place + 1});
    }
    place += std::max(bytes, 1U);
  }
  return bad;
}

/// Where the line after the one that ends at `place` begins; `place` itself where no line ends.
std::uint32_t after_line_end(std::string_view text, std::uint32_t place) {
  if (text[place] == '\n') return place + 1;
  if (text[place] != '\r') return place;
  const bool line_feed_too = place + 1 < text.size() && text[place + 1] == '\n';
  return place + (line_feed_too ? 2 : 1);
}

std::vector<std::uint32_t> find_starts(std::string_view text) {
  const bool marked = text.substr(0, byte_order_mark.size()) == byte_order_mark;
  std::vector<std::uint32_t> starts{marked ? static_cast<std::uint32_t>(byte_order_mark.size()) : 0};
  for (auto place = starts[0]; place < text.size();) {
    const auto next = after_line_end(text, place);
    if (next != place && next < text.size()) starts.push_back(next);
    place = std::max(next, place + 1);
  }
  return starts;
}

} // namespace

Source::Source(std::string_view text) : text_(text), starts_(find_starts(text)), bad_(find_bad_bytes(text)) {}

Span Source::line(std::size_t index) const {
  const auto begin = starts_[index];
  const bool last = index + 1 == starts_.size();
  auto end = last ? static_cast<std::uint32_t>(text_.size()) : starts_[index + 1];
  if (end > begin && text_[end - 1] == '\n') --end;
  if (end > begin && text_[end - 1] == '\r') --end;
  return {begin, end};
}

std::size_t Source::line_of(std::uint32_t byte) const {
  const auto after = std::upper_bound(starts_.begin(), starts_.end(), byte);
  return after == starts_.begin() ? 0 : static_cast<std::size_t>(after - starts_.begin()) - 1;
}

Position Source::position(std::uint32_t byte) const {
  const auto index = line_of(byte);
  const auto begin = std::min(starts_[index], byte);
  return {static_cast<std::uint32_t>(index) + 1, length({begin, byte}) + 1};
}

std::uint32_t Source::length(Span span) const {
  std::uint32_t characters = 0;
  const auto end = std::min<std::size_t>(span.end, text_.size());
  for (std::size_t place = span.begin; place < end; ++characters)
    place += std::max(character_bytes(text_, place), 1U);
  return characters;
}

} // namespace whorl::pattern
