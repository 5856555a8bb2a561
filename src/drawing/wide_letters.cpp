#include "drawing/wide_letters.hpp"

#include <utf8proc.h>

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr std::u32string_view never_first = U"、。，．・：；？！）］｝」』】〕〉》〟ーヽヾゝゞ々〜～…‥％"
                                            U"ぁぃぅぇぉっゃゅょゎァィゥェォッャュョヮヵヶ)]}.,:;!?%";
constexpr std::u32string_view never_last = U"（［｛「『【〔〈《〝([{";

bool is_in(std::u32string_view letters, char32_t letter) { return letters.find(letter) != letters.npos; }

/// Kana, ideographs, full-width forms and their marks.
bool is_wide(char32_t letter) {
  return (letter >= 0x2E80 && letter <= 0x9FFF) || (letter >= 0xF900 && letter <= 0xFAFF) ||
         (letter >= 0xFF00 && letter <= 0xFF60) || (letter >= 0x20000 && letter <= 0x3FFFF);
}

bool may_break(char32_t before, char32_t behind) {
  if (is_in(never_last, before) || is_in(never_first, behind)) return false;
  return is_wide(before) || is_wide(behind);
}

/// Whether some byte of the word may begin a wide letter, so that most words are not looked at further.
bool may_be_wide(std::string_view word) {
  constexpr unsigned char first = 0xE2;
  return std::any_of(word.begin(), word.end(), [](char c) { return static_cast<unsigned char>(c) >= first; });
}

} // namespace

std::vector<std::string> breakable_pieces(std::string_view word) {
  if (!may_be_wide(word)) return {std::string(word)};
  std::vector<std::string> pieces{""};
  const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(word.data());
  char32_t before = 0;
  for (std::size_t at = 0; at < word.size();) {
    utf8proc_int32_t code = 0;
    const auto read = utf8proc_iterate(bytes + at, static_cast<utf8proc_ssize_t>(word.size() - at), &code);
    const auto letter = static_cast<char32_t>(read > 0 ? code : 0);
    if (at > 0 && may_break(before, letter)) pieces.emplace_back();
    const std::size_t length = read > 0 ? static_cast<std::size_t>(read) : 1;
    pieces.back() += word.substr(at, length);
    before = letter;
    at += length;
  }
  return pieces;
}

} // namespace whorl::drawing
