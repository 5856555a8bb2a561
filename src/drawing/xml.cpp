#include "drawing/xml.hpp"

#include "drawing/utf8.hpp"

namespace whorl::drawing {
namespace {

bool is_blank(char32_t c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

bool is_dropped(char32_t c) {
  return (c < 0x20 && !is_blank(c)) || (c >= 0x7F && c < 0xA0) || (c & 0xFFFE) == 0xFFFE;
}

void append_one(std::string& out, char32_t c) {
  switch (c) {
  case '&':
    out += "&amp;";
    break;
  case '<':
    out += "&lt;";
    break;
  case '>':
    out += "&gt;";
    break;
  case '"':
    out += "&quot;";
    break;
  default:
    append_character(out, c);
  }
}

/// Nearly all that is written: it stands as it is.
bool is_plain(char c) { return c >= ' ' && c < 0x7F && c != '&' && c != '<' && c != '>' && c != '"'; }

bool is_plain_in_word(char c) { return is_plain(c) && c != ' '; }

/// Writes what is plain at the beginning of a text, which is moved past it.
void append_plain(std::string& out, std::string_view& text, bool (*is_so)(char)) {
  std::size_t plain = 0;
  while (plain < text.size() && is_so(text[plain])) ++plain;
  out.append(text.substr(0, plain));
  text.remove_prefix(plain);
}

bool is_id_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
}

} // namespace

void append_escaped(std::string& out, std::string_view text) {
  for (append_plain(out, text, is_plain); !text.empty(); append_plain(out, text, is_plain)) {
    const char32_t c = take_character(text);
    if (!is_dropped(c)) append_one(out, is_blank(c) ? U' ' : c);
  }
}

void append_class(std::string& out, std::string_view word) {
  for (append_plain(out, word, is_plain_in_word); !word.empty(); append_plain(out, word, is_plain_in_word)) {
    const char32_t c = take_character(word);
    append_one(out, is_dropped(c) || is_blank(c) ? U'-' : c);
  }
}

std::string id_word(std::string_view word) {
  std::string out;
  for (const char c : word) out += is_id_letter(c) ? c : '-';
  return out;
}

} // namespace whorl::drawing
