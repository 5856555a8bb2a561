#pragma once

#include "drawing/marks.hpp"
#include "drawing/scene.hpp"
#include "drawing/symbol.hpp"
#include "drawing/wording.hpp"
#include "fabric/fabric.hpp"
#include "layout/place.hpp"

#include <string>
#include <vector>

namespace whorl::drawing {

/// What stands on the sheet besides the figures, and how large.
struct SheetOptions {
  double stitch = 4.4;      ///< mm per W (3.85-5.0; never under 3.8)
  double least_width = 180; ///< mm; the sheet grows to what it needs
  bool legend = true;
  bool table = true;     ///< of the rounds of each part
  bool side_view = true; ///< of parts that are drawn in several figures
  Style style;
};

/// The texts of a sheet that come from the pattern.
struct SheetText {
  std::string title;
  std::string subtitle;
  std::string terms;                    ///< "US terms"
  std::vector<std::string> part_notes;  ///< per part: behind its name
  std::vector<std::string> round_lines; ///< per round of the text: what stands behind its label, as typed
  std::vector<std::string> closing;     ///< lines at the foot: making-up
  std::string caution;                  ///< about parts that can come off; "": there are none
};

/// Composes the sheet: title, parts, figures with captions, legend of exactly what is on it.
Scene sheet(const pattern::Tree& tree, const fabric::Fabric& fabric, const layout::Placement& placement,
            const std::vector<Mark>& marks, const SheetText& text, const Wording& wording,
            const SheetOptions& options = {});

} // namespace whorl::drawing
