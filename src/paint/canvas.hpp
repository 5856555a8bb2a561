#pragma once

#include "drawing/scene.hpp"
#include "paint/lettering.hpp"

#include <cairo.h>

#include <string>
#include <vector>

namespace whorl::paint {

/// How a scene reaches a canvas.
struct Manner {
  double units_per_mm = 1;
  Letters letters = Letters::as_text;
  bool paper = true;               ///< false: what is not inked stays clear
  double top = -1e9, bottom = 1e9; ///< what lies above or below (mm) is not looked at
};

/// Draws the scene. Gives back the fonts and texts that are missing, as `Painted` does.
std::vector<std::string> draw(cairo_t* canvas, const drawing::Scene& scene, const Manner& manner);

} // namespace whorl::paint
