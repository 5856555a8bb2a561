#pragma once

#include "drawing/scene.hpp"

#include <string>
#include <string_view>

namespace whorl::drawing {

/// What an SVG carries beside the picture.
struct SvgOptions {
  std::string prefix;              ///< before every id
  const fabric::Fabric* fabric = nullptr;   ///< gives the stitches their ids and data-; may be absent
  const pattern::Source* source = nullptr;  ///< gives the place in the text
};

/// The scene as an SVG document: `<title>`, `<desc>`, symbols once, a named group a round, a `<use>` a stitch.
std::string svg(const Scene& scene, const SvgOptions& options = {});

} // namespace whorl::drawing
