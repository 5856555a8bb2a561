#pragma once

#include "fabric/fabric.hpp"

#include <vector>

namespace whorl::fabric {

/// Whether later stitches can be worked into the top of this one: chains and joins have none, but for a chain
/// that counts.
bool has_top(const Fabric& fabric, StitchId stitch);

/// The tops of a round, in the order in which they were made.
std::vector<Place> tops_of(const Fabric& fabric, std::uint32_t round);

/// The loops that a round's own part left free on its stitches by working into the others: all with the
/// loops asked for; 0 asks for whichever are free. Empty where it worked into both, or not at all.
std::vector<Place> loops_left(const Fabric& fabric, std::uint32_t round, std::uint8_t loops);

/// Whether loops of a round lie behind stitches that its own part works into the others: out of reach.
bool hides_loops(const Fabric& fabric, std::uint32_t round);

/// The places that `round` left unworked; if there are none, those of its own stitches that were left.
/// `of_it` says which.
std::vector<Place> left_unworked(const Fabric& fabric, std::uint32_t round, bool& of_it);

/// Those of the places whose loops nothing is worked into; all of them if there is none.
std::vector<Place> still_free(const Fabric& fabric, const std::vector<Place>& places);

/// Whether something is worked into each of the places.
bool all_taken(const Fabric& fabric, const std::vector<Place>& places);

/// The places that the last round which left any unworked left free: where rows are repeated, those of the
/// repeat. `places` if there are none.
std::vector<Place> last_unworked(const Fabric& fabric, const std::vector<Place>& places);

/// Of places left unworked in several gaps of the same length (two armholes), those of the first gap where no
/// more are `wanted`; else all.
std::vector<Place> first_gap(std::vector<Place> places, std::uint32_t wanted);

/// "front loops", "back loops", "loops".
const char* name_of_loops(std::uint8_t loops);

} // namespace whorl::fabric
