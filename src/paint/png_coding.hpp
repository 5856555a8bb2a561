#pragma once

#include <cairo.h>

#include <cstdint>
#include <string>
#include <vector>

namespace whorl::paint {

/// Rows of a picture, packed by themselves so that several can be packed at a time.
struct Packed {
  std::string bytes;
  std::uint32_t check = 1;  ///< Adler-32 of what was packed …
  std::size_t unpacked = 0; ///< … and its length
};

/// The dots of a surface as a PNG keeps them, 8 bits a colour, with transparency if it is ARGB32; `last`: no
/// stripe comes behind it. No bytes if it cannot be packed.
Packed pack(cairo_surface_t* surface, bool last);

/// What the head of a PNG says.
struct Head {
  std::uint32_t width = 0, height = 0;
  double dots_per_inch = 0;
  bool clear = false; ///< it has transparency
};

/// The PNG of these stripes, from the top down, without a time; empty if it cannot be written.
std::string coded_as_png(const Head& head, std::vector<Packed> stripes);

} // namespace whorl::paint
