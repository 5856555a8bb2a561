#pragma once

#include "fabric/fabric.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// How wide a round lies, in hundredths of a stitch. A stitch is as wide as another; but a chain of a space
/// may replace a stitch or hang in a bow, and the heads of a shell may crowd: a round with these is as wide
/// as it is pulled.
struct Width {
  std::uint64_t least = 0, greatest = 0;
  bool operator==(const Width&) const = default;
};

/// That of a round of plain stitches.
Width width_of(std::uint32_t stitches);

/// Those of some rounds.
std::vector<Width> widths_of(const fabric::Fabric& fabric, const std::vector<std::uint32_t>& rounds);

/// Whether it depends on the pull.
bool is_lace(const Width& width);

/// Whether a round is narrower or wider than another, however both are pulled.
bool is_narrower(const Width& one, const Width& other);
bool is_wider(const Width& one, const Width& other);

/// As many stitches as are as wide as it mostly lies.
std::uint32_t stitches_wide(const Width& width);

} // namespace whorl::layout
