#pragma once

#include "whorl_paint.hpp"

#include <string>

namespace whorl::cli {

/// What a file is to hold, by its ending; "-" is SVG.
enum class Format { svg, png, pdf, json, unknown };
Format format_of(const std::string& path);

/// What to say of a name that tells no format.
std::string unknown_format(const std::string& path);

/// The bytes of a painting; fonts that are missing are said, "" with `problem` where there are none.
std::string bytes_of(const Painting& painting, std::string& problem);

/// A chart, or moves, as the bytes of a file.
template <class Drawn>
std::string bytes_of(const Drawn& drawn, Format format, double dots_per_inch, std::string& problem) {
  if (format == Format::svg) return drawn.svg();
  if (format == Format::json) return drawn.json();
  return bytes_of(format == Format::png ? png(drawn, dots_per_inch) : pdf(drawn), problem);
}

} // namespace whorl::cli
