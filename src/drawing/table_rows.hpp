#pragma once

#include "drawing/copy.hpp"
#include "drawing/left_free.hpp"
#include "drawing/lettering.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace whorl::drawing {

/// A row of a part's table: a round, or the alike rounds that one ring shows.
struct TableRow {
  std::uint32_t round = 0, last_round = 0; ///< in Fabric::rounds
  std::uint8_t ink = 0;                    ///< of its ring
  std::string number;                      ///< "7–9"
  std::string line;                        ///< what the author wrote, as typed
  std::vector<Word> words;                 ///< of it, measured
  std::string stitches;                    ///< "36", "25 (!)"
  std::string change;                      ///< "start", "+6", "even BLO"
  bool even = false;                       ///< as many stitches as before
  std::string left;                        ///< loops it leaves free: "36 front (B)"
};

/// The row of a ring's round or rounds; what they leave free is not told.
TableRow table_row(const Copy& copy, const layout::Ring& ring);

/// The worked rounds of a part in order; every figure is the fabric's. `left`: of every
/// round of the fabric.
std::vector<TableRow> table_rows(const Copy& copy, std::uint32_t part, const std::vector<LeftFree>& left);

} // namespace whorl::drawing
