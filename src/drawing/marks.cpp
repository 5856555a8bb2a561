#include "drawing/marks.hpp"

#include <algorithm>

namespace whorl::drawing {

const Mark* find_mark(const std::vector<Mark>& marks, std::string_view name) {
  const auto found =
      std::find_if(marks.begin(), marks.end(), [name](const Mark& mark) { return mark.name == name; });
  return found == marks.end() ? nullptr : &*found;
}

Point anchor(const Mark& mark, std::string_view name) {
  for (const auto& [label, point] : mark.anchors)
    if (label == name) return point;
  return {};
}

} // namespace whorl::drawing
