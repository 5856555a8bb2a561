#pragma once

#include <string>

namespace whorl::cli {

/// What a file is to hold, by its ending; "-" is SVG.
enum class Format { svg, png, pdf, json, unknown };
Format format_of(const std::string& path);

} // namespace whorl::cli
