#pragma once
/// Flat pieces built directly: a starting chain and turned rows on it.

#include "balls.hpp"

namespace whorl::layout::test {

/// Grows a flat piece row by row.
class Flat {
public:
  Flat();

  /// Begins a part on so many chains.
  Flat& begin(const std::string& name, std::uint32_t chains);
  /// The next row, back along the one before, whose first `skipped` stitches it leaves out; `chains` turn it,
  /// and count as its first stitch if said.
  Flat& row(const Steps& steps, std::uint32_t chains = 1, bool counting = false, std::uint32_t skipped = 0);

  /// Stitches that the next row can be worked into.
  std::uint32_t open() const { return static_cast<std::uint32_t>(open_.size()); }

  fabric::Fabric fabric;

private:
  void stitch(const std::string& kind, std::uint8_t flags);

  std::vector<fabric::StitchId> open_; ///< in the order in which the next row meets them
};

/// A flat piece at random: increases and decreases at the edges and within, short rows, tall rows.
fabric::Fabric random_flat(std::uint64_t seed);

/// A tube at random: even rounds with increases and decreases, bobbles, loop marks and folds.
fabric::Fabric random_tube(std::uint64_t seed);

} // namespace whorl::layout::test
