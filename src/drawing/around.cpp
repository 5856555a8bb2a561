#include "drawing/around.hpp"

#include "layout/direction.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

constexpr double rise = 0.76, drop = 0.24; ///< of letters above and below their base line, in ems

Box letters_of(const Text& text) {
  const double before = text.anchor == Anchor::start ? 0 : text.anchor == Anchor::middle ? 0.5 : 1;
  const double left = text.at.x - before * text.width;
  return {left, text.at.y - rise * text.size, left + text.width, text.at.y + drop * text.size};
}

double to_line(Point p, Point from, Point to) {
  const Point way = to - from;
  const double length = layout::dot(way, way);
  const double t = length > 0 ? std::clamp(layout::dot(p - from, way) / length, 0.0, 1.0) : 0;
  return layout::length(p - (from + t * way));
}

double to_box(Point p, const Box& box) {
  const double x = std::max({box.left - p.x, 0.0, p.x - box.right});
  const double y = std::max({box.top - p.y, 0.0, p.y - box.bottom});
  return std::sqrt(x * x + y * y);
}

/// Looked at in short steps; ink is never so fine that a step misses it.
double to_box(Point from, Point to, const Box& box) {
  constexpr double step = 0.1;
  const int steps = 1 + static_cast<int>(layout::length(to - from) / step);
  double least = HUGE_VAL;
  for (int i = 0; i <= steps; ++i)
    least = std::min(least, to_box(from + (static_cast<double>(i) / steps) * (to - from), box));
  return least;
}

bool meet(const Box& a, const Box& b, double air) {
  return a.left < b.right + air && b.left < a.right + air && a.top < b.bottom + air && b.top < a.bottom + air;
}

Point along(Point a, Point b, Point c, Point d, double t) {
  const double s = 1 - t;
  return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
}

} // namespace

void Around::add(const Path& path, double reach) {
  const Point* next = path.points.data();
  Point first, last;
  for (const Verb verb : path.verbs) {
    if (verb == Verb::move) first = last = *next++;
    if (verb == Verb::line) {
      lines_.push_back({last, *next, reach});
      last = *next++;
    }
    if (verb == Verb::curve) {
      constexpr int chords = 8;
      Point before = last;
      for (int i = 1; i <= chords; ++i) {
        const Point on = along(last, next[0], next[1], next[2], i / double(chords));
        lines_.push_back({before, on, reach});
        before = on;
      }
      last = next[2];
      next += 3;
    }
    if (verb == Verb::close) {
      lines_.push_back({last, first, reach});
      last = first;
    }
  }
}

void Around::add(const Symbol& symbol, const SymbolDefinition& definition) {
  const Point right{-symbol.up.y, symbol.up.x};
  for (Pen pen : definition.pens) {
    for (Point& p : pen.path.points) p = symbol.at + symbol.scale * (p.x * right + -p.y * symbol.up);
    add(pen.path, symbol.scale * pen.stroke / 2);
  }
}

void Around::add(const Text& text) { boxes_.push_back(letters_of(text)); }
void Around::add(Point middle, double radius) { lines_.push_back({middle, middle, radius}); }

bool Around::is_free(Point point, double air) const {
  return std::none_of(
             lines_.begin(), lines_.end(),
             [&](const Line& line) { return to_line(point, line.from, line.to) < line.reach + air; }) &&
         std::none_of(boxes_.begin(), boxes_.end(), [&](const Box& box) { return to_box(point, box) < air; });
}

bool Around::is_free(const Text& text, double air) const {
  const Box letters = letters_of(text);
  return std::none_of(
             lines_.begin(), lines_.end(),
             [&](const Line& line) { return to_box(line.from, line.to, letters) < line.reach + air; }) &&
         std::none_of(boxes_.begin(), boxes_.end(), [&](const Box& box) { return meet(letters, box, air); });
}

} // namespace whorl::drawing
