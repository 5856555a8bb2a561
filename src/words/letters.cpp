#include "words/letters.hpp"

#include <utf8proc.h>

namespace whorl::words {

namespace {

struct Lead {
  unsigned char mask, mark;
  std::uint32_t length;
  char32_t least;
};
constexpr Lead leads[] = {
    {0x80, 0x00, 1, 0}, {0xE0, 0xC0, 2, 0x80}, {0xF0, 0xE0, 3, 0x800}, {0xF8, 0xF0, 4, 0x10000}};

bool is_scalar(char32_t c) { return c <= 0x10FFFF && (c < 0xD800 || c > 0xDFFF); }

struct Pair {
  char32_t from, to;
};
constexpr Pair looks_like[] = {
    {U'α', 'a'}, {U'ζ', 'z'}, {U'ι', 'i'}, {U'κ', 'k'}, {U'ν', 'v'}, {U'ο', 'o'}, {U'ρ', 'p'}, {U'τ', 't'},
    {U'υ', 'u'}, {U'χ', 'x'}, {U'а', 'a'}, {U'в', 'b'}, {U'е', 'e'}, {U'к', 'k'}, {U'м', 'm'}, {U'н', 'h'},
    {U'о', 'o'}, {U'р', 'p'}, {U'с', 'c'}, {U'т', 't'}, {U'у', 'y'}, {U'х', 'x'}, {U'ѕ', 's'}, {U'і', 'i'},
    {U'ј', 'j'}, {U'һ', 'h'}, {U'ԁ', 'd'}, {U'ո', 'n'}, {U'ı', 'i'},
};

} // namespace

Letter letter_at(std::string_view text, std::size_t at) {
  const auto first = static_cast<unsigned char>(text[at]);
  if (first < 0x80) return {first, 1, true};
  for (const Lead& lead : leads) {
    if ((first & lead.mask) != lead.mark) continue;
    if (at + lead.length > text.size()) break;
    char32_t code = first & static_cast<unsigned char>(~lead.mask);
    for (std::uint32_t i = 1; i < lead.length; ++i) {
      const auto next = static_cast<unsigned char>(text[at + i]);
      if ((next & 0xC0) != 0x80) return {};
      code = (code << 6) | (next & 0x3FU);
    }
    if (code < lead.least || !is_scalar(code)) break;
    return {code, lead.length, true};
  }
  return {};
}

void append_utf8(std::string& text, char32_t c) {
  const auto put = [&text](char32_t byte) { text.push_back(static_cast<char>(byte)); };
  const auto tail = [&put, c](int shift) { put(0x80 | ((c >> shift) & 0x3F)); };
  if (c < 0x80) return put(c);
  if (c < 0x800) return put(0xC0 | (c >> 6)), tail(0);
  if (c < 0x10000) return put(0xE0 | (c >> 12)), tail(6), tail(0);
  put(0xF0 | (c >> 18)), tail(12), tail(6), tail(0);
}

char32_t upper(char32_t c) {
  return static_cast<char32_t>(utf8proc_toupper(static_cast<utf8proc_int32_t>(c)));
}

char32_t lower(char32_t c) {
  if (c >= 'A' && c <= 'Z') return c + 32;
  if (c < 0xC0) return c;
  if (c <= 0xDE) return c == 0xD7 ? c : c + 32;
  if (c >= 0x139 && c <= 0x148) return c % 2 == 1 ? c + 1 : c;
  if (c == 0x178) return 0xFF;
  if (c >= 0x179 && c <= 0x17E) return c % 2 == 1 ? c + 1 : c;
  if (c >= 0x100 && c <= 0x177) return c == 0x130 ? 'i' : (c == 0x131 || c == 0x138 ? c : c | 1);
  if (c >= 0x391 && c <= 0x3A9) return c + 32;
  if (c >= 0x400 && c <= 0x40F) return c + 80;
  if (c >= 0x410 && c <= 0x42F) return c + 32;
  if (c >= 0x460 && c <= 0x4BF) return c | 1;
  return c;
}

bool is_letter(char32_t c) {
  if (c < 0x80) return c >= 'a' && c <= 'z';
  if (c < 0xC0) return c == 0xAA || c == 0xB5 || c == 0xBA;
  if (c == 0xD7 || c == 0xF7) return false;
  return c < 0x2000 || c > 0x2BFF;
}

char32_t look_alike(char32_t c) {
  for (const Pair& pair : looks_like)
    if (pair.from == c) return pair.to;
  return c;
}

} // namespace whorl::words
