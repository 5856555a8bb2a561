#pragma once

#include <cairo.h>

#include <string>

namespace whorl::paint {

/// A drawn surface as a PNG of 8 bits a colour, with transparency if it is ARGB32 (whose dots are changed by
/// it), without a time; empty if it cannot be coded.
std::string coded_as_png(cairo_surface_t* surface, double dots_per_inch);

} // namespace whorl::paint
