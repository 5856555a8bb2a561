#pragma once

#include "layout/label.hpp"
#include "layout/oval_ring.hpp"
#include "layout/stadium.hpp"

#include <vector>

namespace whorl::layout {

/// Whether a round begins round the side of the end.
bool is_aside(const Lap& lap);

/// The label of a ring as it stands where the ring begins: its lines, and its signs. Over the near end it is
/// one line beside the pointer; round the side of the end, where lines would run into those of the next
/// rings, number and count stand one above the other.
struct StandingLabel {
  std::vector<Label> lines;
  std::vector<Placed> signs;
};
StandingLabel stand_label(const OvalRing& ring, const Stadium& stadium, std::uint32_t number);

/// The pointer beside it; a joined round has none.
Pointer pointer_of(const OvalRing& ring, const Stadium& stadium, std::uint32_t number);

/// What a label and its pointer cover.
std::vector<Convex> label_ink(const OvalRing& ring, const Stadium& stadium);

} // namespace whorl::layout
