#pragma once

#include "drawing/sheet.hpp"

namespace whorl::drawing {

/// What a sheet is composed from: the pattern, its fabric, where everything stands, and the words.
struct Copy {
  const pattern::Tree& tree;
  const fabric::Fabric& fabric;
  const layout::Placement& placement;
  const SheetText& text;
  const Wording& wording;
  const SheetOptions& options;
};

} // namespace whorl::drawing
