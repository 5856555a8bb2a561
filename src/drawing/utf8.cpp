#include "drawing/utf8.hpp"

namespace whorl::drawing {
namespace {

constexpr char32_t least[] = {0, 0, 0x80, 0x800, 0x10000};

std::size_t length_of(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead < 0xE0) return 2;
  if (lead >= 0xE0 && lead < 0xF0) return 3;
  return lead >= 0xF0 && lead < 0xF5 ? 4 : 0;
}

char tail(char32_t character, int shift) { return static_cast<char>(0x80 | ((character >> shift) & 0x3F)); }

} // namespace

char32_t take_character(std::string_view& text) {
  const auto lead = static_cast<unsigned char>(text[0]);
  const std::size_t length = length_of(lead);
  char32_t character = length <= 1 ? lead : lead & (0x7FU >> length);
  bool good = length > 0 && length <= text.size();
  for (std::size_t i = 1; good && i < length; ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    good = (byte & 0xC0) == 0x80;
    character = character << 6 | (byte & 0x3FU);
  }
  good = good && character >= least[length] && character <= 0x10FFFF &&
         (character < 0xD800 || character > 0xDFFF);
  text.remove_prefix(good ? length : 1);
  return good ? character : no_character;
}

void append_character(std::string& out, char32_t character) {
  if (character < 0x80) {
    out += static_cast<char>(character);
    return;
  }
  if (character < 0x800) {
    out += static_cast<char>(0xC0 | character >> 6);
  } else if (character < 0x10000) {
    out += static_cast<char>(0xE0 | character >> 12);
    out += tail(character, 6);
  } else {
    out += static_cast<char>(0xF0 | character >> 18);
    out += tail(character, 12);
    out += tail(character, 6);
  }
  out += tail(character, 0);
}

} // namespace whorl::drawing
