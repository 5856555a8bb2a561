#pragma once

#include "drawing/box.hpp"
#include "drawing/copy.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace whorl::drawing {

/// One picture of a pattern that is taught round by round: a round, or the start of a part.
struct Step {
  std::size_t figure = 0;            ///< of the placement
  std::uint32_t ring = fabric::none; ///< in Figure::rings; none: the start
};

/// The steps of all parts in the order in which they are worked: for each part its start, if its first figure
/// shows one, and every round.
std::vector<Step> steps_of(const Copy& copy);

/// "cap-start", "cap-5": what a step shows, for the name of its file.
std::string step_id(const Copy& copy, const Step& step);

/// How large a step's picture is, in mm.
struct StepPage {
  double width = 192, height = 108;
  bool paper = true;   ///< white under it
  bool words = true;   ///< with the line of the pattern and its count
  bool picture = true; ///< with what is drawn; false: the words alone, to lie over it
};

/// A step: what is done in grey, its round in full ink, what it is worked into lit, the next round faint; one
/// repeat close up with the names of its stitches and the places that they go into; under a line its number,
/// its line of the pattern as the author wrote it, and its count. The figure stands in the same place in all
/// steps of it. `copy.options.stitch` is not looked at.
Scene step_picture(const Copy& copy, const std::vector<Mark>& marks, const Step& step, const StepPage& page);

} // namespace whorl::drawing
