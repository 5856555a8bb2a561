#include "drawing/flow.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

/// Base line to the upper and lower edge of a line, and air between two lines, in ems of its largest letters.
constexpr double above = 0.74, below = 0.26, between = 0.28;

} // namespace

void Flow::put(std::string_view text, const Lettering& set, double gap) {
  if (text.empty()) return;
  const double x = at_start() ? left_ : x_ + gap;
  if (x + width_of(text, set) <= right_) return place(std::string(text), set, x, Anchor::start);
  if (!at_start()) begin_line();
  const std::vector<std::string> lines = wrap(text, set, right_ - left_);
  for (std::size_t i = 0; i < lines.size(); ++i) {
    if (i > 0) begin_line();
    place(lines[i], set, left_, Anchor::start);
  }
}

void Flow::put_right(std::string_view text, const Lettering& set, double gap) {
  if (text.empty()) return;
  const double width = width_of(text, set);
  if (!at_start() && x_ + gap + width > right_) begin_line();
  if (width > right_ - left_) return put(text, set, gap);
  place(std::string(text), set, right_, Anchor::end);
  x_ = right_;
}

double Flow::bottom() const {
  double y = top_;
  for (std::size_t i = 0; i < lines_.size(); ++i)
    y += lines_[i].size * (above + below + (i + 1 < lines_.size() ? between : 0));
  return y;
}

double Flow::base() const { return bottom() - below * lines_.back().size; }

std::vector<Item> Flow::take() {
  std::vector<Item> items;
  double y = top_;
  for (std::size_t line = 0; line < lines_.size(); ++line) {
    const std::size_t end = line + 1 < lines_.size() ? lines_[line + 1].first : texts_.size();
    for (std::size_t i = lines_[line].first; i < end; ++i) {
      texts_[i].at.y = y + above * lines_[line].size;
      items.push_back(texts_[i]);
    }
    y += lines_[line].size * (above + below + between);
  }
  return items;
}

void Flow::begin_line() {
  lines_.push_back({texts_.size(), 0});
  x_ = left_;
}

void Flow::place(const std::string& text, const Lettering& set, double x, Anchor anchor) {
  texts_.push_back(written(text, set, {x, 0}, anchor));
  lines_.back().size = std::max(lines_.back().size, set.size);
  x_ = x + texts_.back().width;
}

} // namespace whorl::drawing
