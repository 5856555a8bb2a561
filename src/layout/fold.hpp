#pragma once

#include "fabric/fabric.hpp"
#include "layout/owner.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// Rounds that one ring stands for, indices into Fabric::rounds.
struct Fold {
  std::uint32_t first = 0, last = 0;
  bool operator==(const Fold&) const = default;
};

/// Gathers three or more consecutive rounds that are alike, plain and even, with nothing placed, changed or
/// used in or between them, into one ring; every other round is a ring of its own. Of rows an odd number is
/// gathered: the first and the last run the same way.
class Folding {
public:
  explicit Folding(const fabric::Fabric& fabric);

  /// The rings of these rounds, which are consecutive and of one part.
  std::vector<Fold> fold(const std::vector<std::uint32_t>& rounds) const;

  /// Whether a round may be one of a fold.
  bool is_plain(std::uint32_t round) const;

  /// Whether two rounds that may be folded look the same.
  bool are_alike(std::uint32_t round, std::uint32_t next) const;

  /// The loops in which later parts are begun, in order of stitches.
  const std::vector<Kept>& kept_loops() const { return loops_; }

private:
  const fabric::Fabric& fabric_;
  std::vector<Kept> loops_;
  std::vector<char> kept_; ///< rounds with something placed in them, or loops that another part uses
};

} // namespace whorl::layout
