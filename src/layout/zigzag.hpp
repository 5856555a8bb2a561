#pragma once

#include "layout/straight.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace whorl::layout {

/// The rows of a ripple go up and down: several in one stitch make a peak, several together a valley, and all
/// rows have theirs over those of the row beneath. Stitches are counted from one end of the first row.
struct Zigzag {
  struct Corner {
    double at = 0; ///< in stitches
    bool peak = false;
    bool operator==(const Corner&) const = default;
  };
  std::vector<Corner> corners; ///< of every row, peaks and valleys in turn
  std::uint32_t stitches = 0;  ///< of every row
  double shift = 1;            ///< so many stitches nearer to a valley than what it goes into each stitch is
  bool mirrored = false;       ///< they are counted from the right
};

/// That of rows which begin on this chain, if they have one.
std::optional<Zigzag> zigzag_of(const fabric::Fabric& fabric, std::uint32_t chain,
                                const std::vector<std::uint32_t>& rows);

/// More room than other rows have between them, that feet stand by their places.
inline constexpr double zigzag_room = 0.3;

/// Stands every stitch of a laid line in its place of the ripple.
void stand_on_zigzag(const fabric::Fabric& fabric, const Zigzag& zigzag, Course& course);

/// Bends lines and their stitches, which stand straight: each slope is turned, no symbol changes.
void bend_lines(const Zigzag& zigzag, Straight& drawn);

/// How much higher than its ring says a line of a bent figure is at a place aside.
double rise_at(const Zigzag& zigzag, const Straight& drawn, double x);

/// Bends what lies along whole lines: grounds, and the breaks of folded lines.
void bend_grounds(const Zigzag& zigzag, Straight& drawn);

} // namespace whorl::layout
