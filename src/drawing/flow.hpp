#pragma once

#include "drawing/lettering.hpp"

#include <string_view>
#include <vector>

namespace whorl::drawing {

/// Texts of different lettering set one after the other between two edges; what does not fit goes to the next
/// line.
class Flow {
public:
  /// `top`: upper edge of the first line.
  Flow(double left, double right, double top) : left_(left), right_(right), top_(top), x_(left) {}

  /// Sets a text `gap` behind what stands before it.
  void put(std::string_view text, const Lettering& set, double gap);

  /// Sets a text against the right edge, in this line if there is room with `gap` before it.
  void put_right(std::string_view text, const Lettering& set, double gap);

  /// Later lines begin here.
  void indent(double left) { left_ = left; }

  double x() const { return x_; }
  /// Base line of the last line.
  double base() const;
  /// Lower edge of what has been set.
  double bottom() const;
  std::vector<Item> take();

private:
  struct Line {
    std::size_t first = 0; ///< of its items
    double size = 0;       ///< its largest
  };

  void begin_line();
  void place(const std::string& text, const Lettering& set, double x, Anchor anchor);
  bool at_start() const { return texts_.size() == lines_.back().first; }

  double left_, right_, top_, x_;
  std::vector<Text> texts_;
  std::vector<Line> lines_{Line{}};
};

} // namespace whorl::drawing
