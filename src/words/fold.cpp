#include "words/fold.hpp"

#include "words/letters.hpp"

namespace whorl::words {

Span cover(Span a, Span b) {
  if (a.empty()) return b;
  if (b.empty()) return a;
  return {a.begin < b.begin ? a.begin : b.begin, a.end > b.end ? a.end : b.end};
}

namespace {

struct Stretch {
  char32_t first, last, to;
};

/// Characters that stand for one other; 0 drops them. Sorted.
constexpr Stretch one_for_all[] = {
    {0x0009, 0x000D, ' '},    {0x00A0, 0x00A0, ' '},    {0x00AB, 0x00AB, '"'},    {0x00AD, 0x00AD, 0},
    {0x00B4, 0x00B4, '\''},   {0x00BB, 0x00BB, '"'},    {0x02B9, 0x02BC, '\''},   {0x02C8, 0x02C8, '\''},
    {0x1680, 0x1680, ' '},    {0x2000, 0x200A, ' '},    {0x200B, 0x200F, 0},      {0x2010, 0x2015, '-'},
    {0x2018, 0x201B, '\''},   {0x201C, 0x201F, '"'},    {0x2022, 0x2023, 0x2022}, {0x2026, 0x2026, '.'},
    {0x2028, 0x2029, ' '},    {0x202A, 0x202E, 0},      {0x202F, 0x202F, ' '},    {0x2032, 0x2032, '\''},
    {0x2033, 0x2033, '"'},    {0x2043, 0x2043, '-'},    {0x205F, 0x205F, ' '},    {0x2060, 0x2064, 0},
    {0x2192, 0x2192, '>'},    {0x21D2, 0x21D2, '>'},    {0x2212, 0x2212, '-'},    {0x2217, 0x2217, '*'},
    {0x22C6, 0x22C6, '*'},    {0x25A0, 0x25AB, 0x2022}, {0x25B6, 0x25B6, 0x2022}, {0x25CB, 0x25CF, 0x2022},
    {0x25E6, 0x25E6, 0x2022}, {0x2606, 0x2606, '*'},    {0x2605, 0x2605, '*'},    {0x2715, 0x2716, 0xD7},
    {0x2731, 0x2733, '*'},    {0x2794, 0x2794, '>'},    {0x279C, 0x27BE, '>'},    {0x27F6, 0x27F6, '>'},
    {0x2A2F, 0x2A2F, 0xD7},   {0x3000, 0x3000, ' '},    {0x3001, 0x3001, ','},    {0x3002, 0x3002, '.'},
    {0x3008, 0x3008, '('},    {0x3009, 0x3009, ')'},    {0x300A, 0x300A, '('},    {0x300B, 0x300B, ')'},
    {0x300C, 0x300C, '('},    {0x300D, 0x300D, ')'},    {0x300E, 0x300E, '('},    {0x300F, 0x300F, ')'},
    {0x3010, 0x3010, '['},    {0x3011, 0x3011, ']'},    {0x3014, 0x3014, '['},    {0x3015, 0x3015, ']'},
    {0x3016, 0x3016, '['},    {0x3017, 0x3017, ']'},    {0x301C, 0x301C, '~'},    {0x30FB, 0x30FB, ','},
    {0xFF61, 0xFF61, '.'},    {0xFF62, 0xFF62, '('},    {0xFF63, 0xFF63, ')'},    {0xFF64, 0xFF65, ','},
    {0xFE00, 0xFE0F, 0},      {0xFE58, 0xFE58, '-'},    {0xFE63, 0xFE63, '-'},    {0xFEFF, 0xFEFF, 0},
};

/// The number in a circle, ① to ⑳; 0 for others.
std::uint32_t circled_number(char32_t c) { return c >= 0x2460 && c <= 0x2473 ? c - 0x2460 + 1 : 0; }

char32_t one_form(char32_t c) {
  if (c >= 0xFF01 && c <= 0xFF5E) return c - 0xFEE0;
  for (const Stretch& stretch : one_for_all)
    if (c >= stretch.first && c <= stretch.last) return stretch.to;
  return c;
}

void append(Folded& out, char32_t c, std::uint32_t from, bool capital) {
  const std::size_t before = out.text.size();
  append_utf8(out.text, c);
  out.from.resize(out.text.size(), from);
  out.capital.resize(out.text.size(), false);
  if (capital) out.capital[before] = true;
}

/// ③ as "3.", as a label has it; the stop takes no byte of the file.
void append_circled(Folded& out, std::uint32_t number, Span typed) {
  for (const char c : std::to_string(number)) append(out, static_cast<char32_t>(c), typed.begin, false);
  append(out, '.', typed.end, false);
}

/// Where the line's own text begins, list marks and blanks passed over.
std::size_t behind_list_mark(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    const Letter letter = letter_at(text, at);
    const char32_t c = letter.valid ? one_form(letter.code) : U' ';
    const bool dash = c == '-' && at + letter.length < text.size() && text[at + letter.length] == ' ';
    if (c != ' ' && c != 0 && c != 0x2022 && !dash) break;
    at += letter.length;
  }
  return at;
}

/// True if the line is set in bold with two stars on either side of a passage at its head.
bool has_bold(std::string_view text) {
  return text.substr(0, 2) == "**" && text.find("**", 2) != std::string_view::npos;
}

} // namespace

Folded fold(std::string_view text, std::uint32_t begin) {
  Folded out;
  out.text.reserve(text.size());
  out.from.reserve(text.size() + 1);
  out.capital.reserve(text.size());
  std::size_t at = behind_list_mark(text);
  const bool bold = has_bold(text.substr(at));
  while (at < text.size()) {
    const std::uint32_t from = begin + static_cast<std::uint32_t>(at);
    const auto byte = static_cast<unsigned char>(text[at]);
    if (bold && text.substr(at, 2) == "**") {
      at += 2;
    } else if (byte < 0x80 && byte >= ' ') {
      const bool capital = byte >= 'A' && byte <= 'Z';
      out.text.push_back(static_cast<char>(capital ? byte + 32 : byte));
      out.from.push_back(from);
      out.capital.push_back(capital);
      ++at;
    } else {
      const Letter letter = letter_at(text, at);
      const char32_t c = letter.valid ? one_form(letter.code) : U' ';
      const char32_t low = lower(c);
      if (const std::uint32_t number = circled_number(c))
        append_circled(out, number, {from, from + letter.length});
      else if (low != 0)
        append(out, low, from, low != c);
      at += letter.length;
    }
  }
  out.from.push_back(begin + static_cast<std::uint32_t>(text.size()));
  return out;
}

} // namespace whorl::words
