#pragma once

#include "drawing/box.hpp"
#include "drawing/steps.hpp"

namespace whorl::drawing {

/// Where what stands in the picture of a step.
struct StepAreas {
  Box figure, close_up, words;
  bool narrow = false; ///< the line of the pattern has lines of its own under the number
};

/// The same for all steps of a figure, whose box is in W: its close-up beside it, or under it where both are
/// larger so.
StepAreas areas_of(const StepPage& page, const Box& figure);

/// Whether the words of a close-up stand beside it.
bool is_broad(const Box& close_up);

/// Where the figure stands in all its steps.
Frame frame_of(const Box& figure, const Box& area);

} // namespace whorl::drawing
