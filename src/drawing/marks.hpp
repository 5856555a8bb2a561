#pragma once

#include "drawing/scene.hpp"

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace whorl::drawing {

/// One mark of `symbols/`: paths in W, y upward, and its named anchors ("foot", "top").
struct Mark {
  std::string name;                                     ///< "cross", "bar", "arc" …
  std::vector<Pen> pens;                                ///< W, y upward
  std::vector<std::pair<std::string, Point>> anchors;
};

/// The marks built into the program, sorted by name.
const std::vector<Mark>& built_in_marks();

const Mark* find_mark(const std::vector<Mark>& marks, std::string_view name);
Point anchor(const Mark& mark, std::string_view name);

} // namespace whorl::drawing
