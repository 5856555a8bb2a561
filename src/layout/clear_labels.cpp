#include "layout/clear_labels.hpp"

#include "layout/obstacles.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <algorithm>

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

using Inks = std::vector<Convex>;

bool are_apart(const Inks& some, const Inks& others) {
  return air_between(some, others, least_air) >= least_air;
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

/// Symbols at the ends of rings against what stands in the gutter. Most are seen to be apart by the rectangle
/// round a symbol's ink, which its neighbours have as well; only of the others the ink itself is looked at.
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
    const bool is_near = is_drawn_higher(item) ||
                         std::any_of(within.begin(), within.end(),
                                     [&](const Convex& ink) { return !is_apart_from_bounds(item, ink); });
    return !is_near || are_apart(ink_of(extents_, item), within);
  }

  void look_at(const SymbolKey& key) {
    if (shape_ != nullptr && key == key_) return;
    key_ = key, shape_ = &extent(extents_, key), bounds_ = {};
    for (const Convex& piece : shape_->ink)
      for (const Point p : piece) bounds_.add(p);
  }

  bool is_drawn_higher(const Item& item) const { return shape_->stretches && item.height > shape_->height; }

  bool is_apart_from_bounds(const Item& item, const Convex& ink) const {
    Bounds seen;
    for (const Point p : ink) seen.add(seen_by(item, p));
    return seen.is_apart(bounds_);
  }

  const Figure& figure_;
  const Extents& extents_;
  SymbolKey key_;
  const SymbolExtent* shape_ = nullptr;
  Bounds bounds_; ///< of its ink
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
