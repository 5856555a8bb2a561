#include "ink.hpp"

#include "layout/cut.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout::test {
namespace {

double dot(Point a, Point b) { return a.x * b.x + a.y * b.y; }

/// A thin quadrangle round a straight piece.
Convex thin(Point a, Point b, double width) {
  const Point d = b - a;
  const double length = std::max(1e-9, std::sqrt(dot(d, d)));
  const Point n{-d.y / length * width / 2, d.x / length * width / 2};
  return {a - n, b - n, b + n, a + n};
}

std::vector<Point> flattened(const Stroke& stroke) {
  if (!stroke.curved) return stroke.points;
  std::vector<Point> line{stroke.points.front()};
  for (std::size_t i = 0; i + 3 < stroke.points.size(); i += 3)
    for (int k = 1; k <= 6; ++k) {
      const double t = k / 6.0, u = 1 - t;
      line.push_back(u * u * u * stroke.points[i] + 3 * u * u * t * stroke.points[i + 1] +
                     3 * u * t * t * stroke.points[i + 2] + t * t * t * stroke.points[i + 3]);
    }
  return line;
}

/// The item, from 1, whose leg a line leads on; 0: it is no such line.
std::size_t item_led(const Figure& figure, const Stroke& stroke) {
  if (stroke.line != Line::stem || stroke.curved) return 0;
  for (std::size_t i = 0; i < figure.items.size(); ++i) {
    const Item& item = figure.items[i];
    for (std::uint32_t k = 0; k < item.feet; ++k)
      if (figure.feet[item.first_foot + k] == stroke.points.back()) return i + 1;
  }
  return 0;
}

struct Box {
  double left = 1e18, right = -1e18, low = 1e18, high = -1e18;
};

Box box_of(const Convex& outline) {
  Box box;
  for (const Point p : outline) {
    box.left = std::min(box.left, p.x), box.right = std::max(box.right, p.x);
    box.low = std::min(box.low, p.y), box.high = std::max(box.high, p.y);
  }
  return box;
}

double apart(const Box& a, const Box& b) {
  return std::max({a.left - b.right, b.left - a.right, a.low - b.high, b.low - a.high});
}

} // namespace

std::vector<Patch> patches_of(const Figure& figure, const Extents& extents) {
  std::vector<Patch> patches;
  std::size_t owner = 0;
  for (const Item& item : figure.items) {
    ++owner;
    for (const Convex& piece : ink_of(extents, item))
      patches.push_back({piece, owner, "stitch " + std::to_string(item.first)});
  }
  for (const Label& label : figure.labels) {
    // the two lines of one label belong together, but not to its neighbours
    patches.push_back({label.box, ++owner, "label of ring " + std::to_string(label.ring)});
  }
  for (const Pointer& p : figure.pointers) {
    const Point n{-p.direction.y, p.direction.x}, back = p.tip - p.length * p.direction;
    patches.push_back({{p.tip, back + p.length / 2 * n, back - p.length / 2 * n}, ++owner, "pointer"});
  }
  for (const Stroke& stroke : figure.strokes) {
    if (stroke.line != Line::direction || stroke.curved) ++owner;
    const std::size_t led = item_led(figure, stroke);
    const std::vector<Point> line = flattened(stroke);
    for (std::size_t i = 0; i + 1 < line.size(); ++i)
      patches.push_back({thin(line[i], line[i + 1], 0.05), led > 0 ? led : owner, "line"});
  }
  if (!(figure.cut == Cut{})) patches.push_back({outline_of(figure.cut), ++owner, "cut"});
  for (const Placed& placed : figure.placed) {
    ++owner;
    for (const Convex& outline : outlines_of(placed))
      patches.push_back(
          {outline, owner, "sign " + placed.text.text + " of ring " + std::to_string(placed.ring)});
  }
  return patches;
}

Nearest nearest(const std::vector<Patch>& patches) {
  Nearest found;
  std::vector<Box> boxes;
  for (const Patch& patch : patches) boxes.push_back(box_of(patch.outline));
  for (std::size_t i = 0; i < patches.size(); ++i)
    for (std::size_t j = i + 1; j < patches.size(); ++j) {
      if (patches[i].owner == patches[j].owner || apart(boxes[i], boxes[j]) >= found.air) continue;
      const double air = distance(patches[i].outline, patches[j].outline);
      if (air < found.air) found = {air, patches[i].what, patches[j].what};
    }
  return found;
}

} // namespace whorl::layout::test
