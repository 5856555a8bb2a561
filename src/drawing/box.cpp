#include "drawing/box.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

/// How far letters reach above and below their base line, in ems; with these no script's letters are cut.
constexpr double ascent = 0.76, descent = 0.24;

Box bounds_of(const Stroke& stroke) { return bounds(stroke.path, stroke.width / 2); }

Box bounds_of(const Fill& fill) { return bounds(fill.path); }

Box bounds_of(const Text& text) {
  const double before = text.anchor == Anchor::start ? 0 : text.anchor == Anchor::middle ? 0.5 : 1;
  const double left = text.at.x - before * text.width;
  return {left, text.at.y - ascent * text.size, left + text.width, text.at.y + descent * text.size};
}

/// Where a point of a symbol's definition comes to lie.
Point turned(const Symbol& symbol, Point p) {
  const Point up = symbol.up, right{-up.y, up.x};
  return symbol.at + symbol.scale * (p.x * right + -p.y * up);
}

Box bounds_of(const Symbol& symbol, const SymbolDefinition& definition) {
  const Box box = bounds(definition);
  if (box.empty()) return box;
  Box all;
  for (const Point corner : {Point{box.left, box.top}, Point{box.right, box.top}, Point{box.left, box.bottom},
                             Point{box.right, box.bottom}})
    cover(all, turned(symbol, corner));
  return all;
}

Box bounds_of(const Group& group, const std::vector<SymbolDefinition>& symbols) {
  Box all;
  for (const Item& item : group.items) join(all, bounds(item, symbols));
  return all;
}

} // namespace

void cover(Box& box, Point point, double air) {
  box.left = std::min(box.left, point.x - air);
  box.right = std::max(box.right, point.x + air);
  box.top = std::min(box.top, point.y - air);
  box.bottom = std::max(box.bottom, point.y + air);
}

void join(Box& box, const Box& other) {
  if (other.empty()) return;
  cover(box, {other.left, other.top});
  cover(box, {other.right, other.bottom});
}

Box moved(Box box, Point by) {
  return {box.left + by.x, box.top + by.y, box.right + by.x, box.bottom + by.y};
}

Box bounds(const Path& path, double air) {
  Box box;
  for (const Point point : path.points) cover(box, point, air);
  return box;
}

Box bounds(const SymbolDefinition& symbol) {
  Box box;
  for (const Pen& pen : symbol.pens) join(box, bounds(pen.path, pen.stroke / 2));
  return box;
}

Box bounds(const Item& item, const std::vector<SymbolDefinition>& symbols) {
  if (const auto* stroke = std::get_if<Stroke>(&item)) return bounds_of(*stroke);
  if (const auto* fill = std::get_if<Fill>(&item)) return bounds_of(*fill);
  if (const auto* text = std::get_if<Text>(&item)) return bounds_of(*text);
  if (const auto* symbol = std::get_if<Symbol>(&item))
    return symbol->symbol < symbols.size() ? bounds_of(*symbol, symbols[symbol->symbol]) : Box{};
  return bounds_of(std::get<Group>(item), symbols);
}

} // namespace whorl::drawing
