#pragma once

#include "stitch/kind.hpp"

#include <optional>

namespace whorl::stitch {

/// Whether a turning or starting chain stands for the first stitch of its row.
enum class ChainCounts : std::uint8_t { no, writers_differ, yes };

/// How a row of a stitch begins.
struct Turning {
  int chains = 0;                       ///< of the turning chain
  ChainCounts counts = ChainCounts::no; ///< unless the pattern says otherwise
  int first_chain = 2;                  ///< the first stitch into a starting chain: which chain from the hook
  bool operator==(const Turning&) const = default;
};

/// How a row of a plain stitch begins: as many chains as it is high. None for stitches of which no such rule
/// is printed (several legs, extended, her own).
std::optional<Turning> turning_of(const StitchKind& kind);

} // namespace whorl::stitch
