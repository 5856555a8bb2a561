#include "layout/clear_labels.hpp"

#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double least_air = 0.075;
constexpr std::uint32_t beside_gutter = 2; ///< symbols at each end of a ring that a label may come near to

/// An outline and the upright rectangle round it.
struct Piece {
  explicit Piece(Convex ink) : outline(std::move(ink)) {
    for (const Point p : outline) {
      low = {std::min(low.x, p.x), std::min(low.y, p.y)};
      high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
  }

  bool is_apart(const Piece& other) const {
    return low.x > other.high.x + least_air || other.low.x > high.x + least_air ||
           low.y > other.high.y + least_air || other.low.y > high.y + least_air ||
           distance(outline, other.outline) >= least_air;
  }

  Convex outline;
  Point low{1e9, 1e9}, high{-1e9, -1e9};
};

/// What stands in the gutter at one ring, and beside it.
struct Gutter {
  std::vector<Piece> within, beside;
};

bool is_leaning(const Figure& figure) {
  return std::any_of(figure.rings.begin(), figure.rings.end(),
                     [](const Ring& ring) { return ring.turned != 0; });
}

void add_ends(const Figure& figure, const Extents& extents, const Ring& ring, Gutter& gutter) {
  for (std::uint32_t i = 0; i < ring.items; ++i) {
    if (i >= beside_gutter && i + beside_gutter < ring.items) continue;
    for (Convex& piece : ink_of(extents, figure.items[ring.first_item + i]))
      gutter.beside.emplace_back(std::move(piece));
  }
}

std::vector<Gutter> gutters_of(const Figure& figure, const Extents& extents) {
  std::vector<Gutter> gutters(figure.rings.size());
  for (std::size_t i = 0; i < gutters.size(); ++i) add_ends(figure, extents, figure.rings[i], gutters[i]);
  for (const Label& label : figure.labels) gutters[label.ring].within.emplace_back(label.box);
  for (const Pointer& pointer : figure.pointers)
    gutters[pointer.ring].within.emplace_back(outline_of(pointer));
  for (const Placed& sign : figure.placed)
    for (const Convex& outline : outlines_of(sign))
      (sign.sign == Sign::flag || sign.sign == Sign::attach ? gutters[sign.ring].within
                                                            : gutters[sign.ring].beside)
          .emplace_back(outline);
  return gutters;
}

bool are_apart(const std::vector<Piece>& some, const std::vector<Piece>& others) {
  for (const Piece& one : some)
    for (const Piece& other : others)
      if (!one.is_apart(other)) return false;
  return true;
}

} // namespace

bool labels_are_clear(const Figure& figure, const Extents& extents) {
  if (!is_leaning(figure)) return true;
  const std::vector<Gutter> gutters = gutters_of(figure, extents);
  for (std::size_t i = 0; i < gutters.size(); ++i) {
    if (!are_apart(gutters[i].within, gutters[i].beside)) return false;
    if (i == 0) continue;
    const Gutter &own = gutters[i], &inside = gutters[i - 1];
    if (!are_apart(own.within, inside.within) || !are_apart(own.within, inside.beside) ||
        !are_apart(own.beside, inside.within))
      return false;
  }
  return true;
}

} // namespace whorl::layout
