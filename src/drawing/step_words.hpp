#pragma once

#include "drawing/step_areas.hpp"

namespace whorl::drawing {

/// "Round 5", "Row 2"; of a start the name of its part.
std::string step_number(const Copy& copy, const Step& step);

/// What the author wrote of it, or how its part starts.
std::string step_line(const Copy& copy, const Step& step);

/// The words under the picture of a step.
Group draw_step_words(const Copy& copy, const Step& step, const StepAreas& areas);

} // namespace whorl::drawing
