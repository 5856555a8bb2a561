#pragma once

#include "drawing/box.hpp"
#include "drawing/steps.hpp"

namespace whorl::drawing {

/// Where what stands in the picture of a step.
struct StepAreas {
  Box figure, close_up, words;
  double scale = 0; ///< of all figures, mm per W
  bool narrow = false; ///< the line of the pattern has lines of its own under the number
};

/// The same for all steps of some figures, whose boxes are in W: a figure's close-up beside it, or under it
/// where both are larger so.
StepAreas areas_of(const StepPage& page, const std::vector<Box>& figures);

/// Whether the words of a close-up stand beside it.
bool is_broad(const Box& close_up);

/// Where the figure stands in all its steps.
Frame frame_of(const Box& figure, const StepAreas& areas);

} // namespace whorl::drawing
