#pragma once
/// Room `layout`: the fabric comes in; where every symbol, label and line stands comes out, figure by figure,
/// in W (the slot of one sc), y upward, the figure's centre at (0, 0). It knows no colours, pens or paper;
/// how large symbols are is handed in as `Extents`.

#include "fabric/fabric.hpp"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::layout {

/// A point or a direction, in W.
struct Point {
  double x = 0;
  double y = 0;
  bool operator==(const Point&) const = default;
};
inline Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
inline Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
inline Point operator*(double k, Point p) { return {k * p.x, k * p.y}; }

/// A convex outline, anticlockwise.
using Convex = std::vector<Point>;

/// What a symbol stands on: a top, the post of a stitch that the hook goes round from this side (the right
/// side of the piece being seen), or what is further down.
enum class Base : std::uint8_t { top, front_post, back_post, below };

/// Which symbol: a kind, how many of it stand in one place (inc: 2), the loops marked beneath it, and its
/// base.
struct SymbolKey {
  stitch::KindId kind = 0;
  std::uint16_t in_one = 1;
  std::uint8_t loops = stitch::both;
  Base base = Base::top;
  std::uint8_t down = 0; ///< below: how many rounds
  bool operator==(const SymbolKey&) const = default;
};

/// What layout knows of a symbol. Origin: its foot (the innermost point, loop marks left out), y toward its
/// head.
struct SymbolExtent {
  double slot = 1;         ///< room along the ring; 1 for each head or foot, the larger of both
  double height = 0.8;     ///< foot to head
  double width = 0.6;      ///< ink width
  bool floats = false;     ///< keeps its size in the middle of a taller ring (sc, V, inverted V)
  bool on_heads = false;   ///< stands on the heads of its ring (a picot)
  bool stretches = false;  ///< a stem: it may be drawn higher than it is
  double below = 0;        ///< how far loop marks reach beneath the foot
  std::vector<Point> feet; ///< where each leg stands
  std::vector<Point> tips; ///< the head of each stitch it stands for
  std::vector<Convex> ink; ///< pen width included
};

/// Type faces of labels. Sizes are in W, widths in ems.
enum class Face : std::uint8_t { regular, bold, italic };

/// Advance widths of one face, in ems.
struct Widths {
  std::vector<std::pair<char32_t, double>> advance; ///< sorted
  double fallback = 0.6;
};

/// Everything that layout is told about symbols and labels.
struct Extents {
  std::vector<std::pair<SymbolKey, SymbolExtent>> symbols;
  Widths regular, bold, italic;
};

/// The extent of a symbol; one must have been given.
const SymbolExtent& extent(const Extents& extents, const SymbolKey& key);

/// Width of a text, in ems.
double text_width(const Widths& widths, std::string_view text);
double text_width(const Extents& extents, Face face, std::string_view text);

} // namespace whorl::layout
