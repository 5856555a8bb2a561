#include "layout/extents.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

/// The code point that begins at `at`, which is moved past it; a stray byte counts as itself.
char32_t next_code_point(std::string_view text, std::size_t& at) {
  const auto lead = static_cast<unsigned char>(text[at++]);
  const int more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : lead >= 0xC0 ? 1 : 0;
  char32_t point = more == 0 ? lead : lead & (0x3FU >> more);
  for (int i = 0; i < more && at < text.size(); ++i)
    point = (point << 6U) | (static_cast<unsigned char>(text[at++]) & 0x3FU);
  return point;
}

constexpr char32_t first_wide = 0x2E80; ///< from here on letters are as wide as the font is high
constexpr double wide = 1;

double advance_of(const Widths& widths, char32_t point) {
  const auto found =
      std::lower_bound(widths.advance.begin(), widths.advance.end(), point,
                       [](const std::pair<char32_t, double>& one, char32_t p) { return one.first < p; });
  if (found != widths.advance.end() && found->first == point) return found->second;
  return point >= first_wide ? wide : widths.fallback;
}

/// A plain cross, for a symbol of which nothing was said.
SymbolExtent cross_extent() {
  SymbolExtent cross;
  cross.floats = true;
  cross.feet = {{0, 0}};
  cross.tips = {{0, 0.8}};
  cross.ink = {{{-0.35, 0.05}, {0.35, 0.05}, {0.35, 0.75}, {-0.35, 0.75}}};
  return cross;
}

} // namespace

const SymbolExtent& extent(const Extents& extents, const SymbolKey& key) {
  static const SymbolExtent unknown = cross_extent();
  for (const auto& [one, size] : extents.symbols)
    if (one == key) return size;
  return unknown;
}

double text_width(const Widths& widths, std::string_view text) {
  double sum = 0;
  for (std::size_t at = 0; at < text.size();) sum += advance_of(widths, next_code_point(text, at));
  return sum;
}

double text_width(const Extents& extents, Face face, std::string_view text) {
  switch (face) {
  case Face::bold:
    return text_width(extents.bold, text);
  case Face::italic:
    return text_width(extents.italic, text);
  case Face::regular:
    break;
  }
  return text_width(extents.regular, text);
}

} // namespace whorl::layout
