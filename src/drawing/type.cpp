#include "drawing/type.hpp"

#include "drawing/utf8.hpp"
#include "drawing/widths.hpp"

#include <algorithm>
#include <iterator>

namespace whorl::drawing {
namespace {

std::size_t column(Typeface face, bool bold, bool italic) {
  return (face == Typeface::serif ? 4U : 0U) + (italic ? 2U : 0U) + (bold ? 1U : 0U);
}

/// Characters that the fonts lack, in ems: first, last, width.
struct Fallback {
  char32_t first, last;
  double width;
};
constexpr Fallback fallbacks[] = {
    {0x0300, 0x036F, 0},     {0x1100, 0x115F, 1},   {0x2002, 0x2002, 0.5},   {0x2003, 0x2003, 1},
    {0x2007, 0x2007, 0.556}, {0x2009, 0x200A, 0.2}, {0x200B, 0x200F, 0},     {0x202A, 0x202E, 0},
    {0x202F, 0x202F, 0.2},   {0x2066, 0x2069, 0},   {0x20D0, 0x20FF, 0},     {0x2E80, 0xA4CF, 1},
    {0xAC00, 0xD7A3, 1},     {0xF900, 0xFAFF, 1},   {0xFE00, 0xFE0F, 0},     {0xFE20, 0xFE2F, 0},
    {0xFE30, 0xFE6F, 1},     {0xFF00, 0xFF60, 1},   {0x1F300, 0x1FAFF, 1.3}, {0x20000, 0x3FFFD, 1},
};
constexpr double unknown = 0.6;

double fallback_width(char32_t character) {
  for (const Fallback& row : fallbacks)
    if (character >= row.first && character <= row.last) return row.width;
  return unknown;
}

/// The row of a character, or that before which it would stand. The printed characters of ASCII are the
/// first.
const AdvanceRow* row_of(const AdvanceTable& table, char32_t character) {
  constexpr char32_t first = 0x20, last = 0x7E;
  if (character >= first && character <= last) return table.begin() + (character - first);
  return std::lower_bound(table.begin(), table.end(), character,
                          [](const AdvanceRow& one, char32_t wanted) { return one.character < wanted; });
}

double advance(std::size_t face, char32_t character) {
  const AdvanceTable table = advance_table();
  const AdvanceRow* row = row_of(table, character);
  if (row == table.end() || row->character != character || row->advance[face] == 0)
    return fallback_width(character);
  return row->advance[face] / 10000.0;
}

} // namespace

const char* font_name(Typeface face) {
  return face == Typeface::serif ? "TeX Gyre Pagella" : "Liberation Sans";
}

const char* font_family(Typeface face) {
  return face == Typeface::serif ? "'TeX Gyre Pagella', Palatino, 'Palatino Linotype', Georgia, serif"
                                 : "'Liberation Sans', Arial, Helvetica, sans-serif";
}

double text_width(Typeface face, bool bold, bool italic, std::string_view text) {
  double width = 0;
  while (!text.empty()) width += advance(column(face, bold, italic), take_character(text));
  return width;
}

std::vector<std::pair<char32_t, double>> advance_widths(Typeface face, bool bold, bool italic) {
  std::vector<std::pair<char32_t, double>> widths;
  for (const AdvanceRow& row : advance_table())
    widths.emplace_back(row.character, advance(column(face, bold, italic), row.character));
  return widths;
}

} // namespace whorl::drawing
