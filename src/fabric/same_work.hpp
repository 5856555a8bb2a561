#pragma once

#include "fabric/fabric.hpp"

#include <string>
#include <string_view>

namespace whorl::fabric {

/// What differs first between two stretches of work, in a few words for whoever looks for the fault; "": it is the
/// same work: kinds by their names, legs in the same places and loops, yarns, what counts, what joins.
using Difference = std::string_view;

/// Whether two rounds are the same work. Parts and rounds go by their numbers, stitches by their
/// positions, so that rounds which stand elsewhere in the one fabric can be compared.
Difference same_round(const Fabric& a, std::uint32_t round_a, const Fabric& b, std::uint32_t round_b);

/// The rounds that one entry of the text gave, in order, in both fabrics.
Difference same_entry(const Fabric& a, std::uint32_t entry_a, const Fabric& b, std::uint32_t entry_b);

/// Whether two fabrics are the same work from the first stitch to the last, with their parts, ends and eyes.
Difference same_work(const Fabric& a, const Fabric& b);

} // namespace whorl::fabric
