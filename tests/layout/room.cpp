#include "layout/room.hpp"
#include "layout/sign.hpp"

#include "flats.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::layout;

namespace {

/// The ink of every symbol that comes so near, without asking which rings may.
std::vector<Convex> symbols_near(const Figure& figure, const Extents& extents, Point at, double within) {
  std::vector<Convex> near;
  for (const Item& item : figure.items)
    for (const Convex& piece : extent(extents, item.key).ink) {
      Convex outline = stood(item, piece);
      if (distance(outline, Convex{at}) <= within) near.push_back(std::move(outline));
    }
  return near;
}

/// Asks at every seventh stitch, and outside it.
void check_near(const fabric::Fabric& fabric) {
  const Extents extents = test::extents_of(fabric);
  for (const Figure& figure : place(fabric, extents, {}).figures)
    for (std::size_t i = 0; i < figure.items.size(); i += 7)
      for (const double away : {0.0, 3.5}) {
        const Point at = figure.items[i].foot + away * figure.items[i].up;
        const std::vector<Convex> found = ink_near(figure, extents, at, 3);
        const std::vector<Convex> all = symbols_near(figure, extents, at, 3);
        if (found.size() < all.size() || !std::equal(all.begin(), all.end(), found.begin()))
          FAIL("at stitch " << figure.items[i].first << " of a " << name(figure.form));
      }
}

} // namespace

TEST_CASE("no symbol near a point of a disc or a strip is missed") {
  for (std::uint64_t seed = 1; seed <= 10; ++seed) check_near(test::random_ball(seed));
}

TEST_CASE("no symbol near a point of a flat piece is missed") {
  for (std::uint64_t seed = 1; seed <= 10; ++seed) check_near(test::random_flat(seed));
}
