#pragma once

#include <cstdint>

namespace whorl::drawing {

/// A character's advance in the eight faces, in ten-thousandths of an em; 0 where a face lacks it.
/// Order: sans regular, bold, italic, bold italic; serif likewise.
struct AdvanceRow {
  char32_t character;
  std::uint16_t advance[8];
};

/// A run of rows, sorted by character.
struct AdvanceTable {
  const AdvanceRow* first;
  const AdvanceRow* last;
  const AdvanceRow* begin() const { return first; }
  const AdvanceRow* end() const { return last; }
};

/// Advance widths of Liberation Sans 2.1.5 and TeX Gyre Pagella 2.501.
AdvanceTable advance_table();

} // namespace whorl::drawing
