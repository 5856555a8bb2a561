#include "layout/clear_labels.hpp"

#include "layout/obstacles.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double least_air = 0.075;
constexpr std::uint32_t beside_gutter = 2; ///< symbols at each end of a ring that a label may come near to

/// An upright rectangle.
struct Bounds {
  Point low{1e9, 1e9}, high{-1e9, -1e9};

  void add(Point p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  bool is_apart(const Bounds& other) const {
    return low.x > other.high.x + least_air || other.low.x > high.x + least_air ||
           low.y > other.high.y + least_air || other.low.y > high.y + least_air;
  }
};

/// Outlines that stand together.
struct Inks {
  std::vector<Convex> outlines;
  Bounds bounds; ///< of them all

  void add(Convex outline) {
    for (const Point p : outline) bounds.add(p);
    outlines.push_back(std::move(outline));
  }
};

bool are_apart(const Inks& some, const Inks& others) {
  return some.bounds.is_apart(others.bounds) ||
         air_between(some.outlines, others.outlines, least_air) >= least_air;
}

/// The signs that stand in the gutter at one ring, and those beside it.
struct Gutter {
  Inks within, beside;
};

bool is_leaning(const Figure& figure) {
  return std::any_of(figure.rings.begin(), figure.rings.end(),
                     [](const Ring& ring) { return ring.turned != 0; });
}

std::vector<Gutter> gutters_of(const Figure& figure) {
  std::vector<Gutter> gutters(figure.rings.size());
  for (const Label& label : figure.labels) gutters[label.ring].within.add(label.box);
  for (const Pointer& pointer : figure.pointers) gutters[pointer.ring].within.add(outline_of(pointer));
  for (const Placed& sign : figure.placed)
    for (Convex& outline : outlines_of(sign))
      (sign.sign == Sign::flag || sign.sign == Sign::attach ? gutters[sign.ring].within
                                                            : gutters[sign.ring].beside)
          .add(std::move(outline));
  return gutters;
}

/// Symbols at the ends of rings against what stands in the gutter. Most are seen to be apart by how far a
/// symbol's ink reaches from its foot or by the rectangle round it, which its neighbours have as well; only
/// of the others the ink itself is looked at.
class RingEnds {
public:
  RingEnds(const Figure& figure, const Extents& extents) : figure_(figure), extents_(extents) {}

  bool is_apart(std::size_t ring, const Inks& within) {
    const Ring& of = figure_.rings[ring];
    for (std::uint32_t i = 0; i < of.items; ++i)
      if ((i < beside_gutter || i + beside_gutter >= of.items) &&
          !is_apart(figure_.items[of.first_item + i], within))
        return false;
    return true;
  }

private:
  bool is_apart(const Item& item, const Inks& within) {
    look_at(item.key);
    const std::vector<Convex>& inks = within.outlines;
    const bool is_near =
        is_drawn_higher(item) ||
        (!is_out_of_reach(item, within) && std::any_of(inks.begin(), inks.end(), [&](const Convex& ink) {
          return !is_apart_from_bounds(item, ink);
        }));
    return !is_near || air_between(ink_of(extents_, item), inks, least_air) >= least_air;
  }

  void look_at(const SymbolKey& key) {
    if (shape_ != nullptr && key == key_) return;
    key_ = key, shape_ = &extent(extents_, key), bounds_ = {};
    for (const Convex& piece : shape_->ink)
      for (const Point p : piece) bounds_.add(p);
    const double across = std::max(-bounds_.low.x, bounds_.high.x),
                 along = std::max(-bounds_.low.y, bounds_.high.y);
    reach_ = std::sqrt(across * across + along * along);
  }

  bool is_drawn_higher(const Item& item) const { return shape_->stretches && item.height > shape_->height; }

  bool is_out_of_reach(const Item& item, const Inks& within) const {
    const Point foot = item.foot, reach{reach_, reach_};
    return within.bounds.is_apart({foot - reach, foot + reach});
  }

  bool is_apart_from_bounds(const Item& item, const Convex& ink) const {
    Bounds seen;
    for (const Point p : ink) seen.add(seen_by(item, p));
    return seen.is_apart(bounds_);
  }

  const Figure& figure_;
  const Extents& extents_;
  SymbolKey key_;
  const SymbolExtent* shape_ = nullptr;
  Bounds bounds_;    ///< of its ink
  double reach_ = 0; ///< of its ink, from its foot
};

} // namespace

bool labels_are_clear(const Figure& figure, const Extents& extents) {
  if (!is_leaning(figure)) return true;
  const std::vector<Gutter> gutters = gutters_of(figure);
  RingEnds ends(figure, extents);
  for (std::size_t i = 0; i < gutters.size(); ++i) {
    const Gutter& own = gutters[i];
    if (!are_apart(own.within, own.beside) || !ends.is_apart(i, own.within)) return false;
    if (i == 0) continue;
    const Gutter& inside = gutters[i - 1];
    if (!are_apart(own.within, inside.within) || !are_apart(own.within, inside.beside) ||
        !are_apart(own.beside, inside.within))
      return false;
    if (!ends.is_apart(i - 1, own.within) || !ends.is_apart(i, inside.within)) return false;
  }
  return true;
}

} // namespace whorl::layout
