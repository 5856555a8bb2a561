#include "layout/footprint.hpp"

#include "typed.hpp"

#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using namespace whorl::layout;
using test::Typed;

namespace {

const std::string snout =
    "Fox cub\n\nSNOUT\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n\nHEAD\nRnd 1: 6 sc in MR (6)\n"
    "Rnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 (18)\nRnd 4: (2 sc, inc) x 6 (24)\n"
    "Rnd 5: (3 sc, inc) x 6 (30)\nRnd 6: (4 sc, inc) x 6 (36)\n";
const std::string grown = snout + "Sew the snout between rounds 2 and 6.\n";
const std::string even = snout + "Rnds 7-16: sc around (36)\nSew the snout between rounds 9 and 13.\n";
const std::string closing =
    snout + "Rnd 7: (4 sc, dec) x 6 (30)\nRnd 8: (3 sc, dec) x 6 (24)\nRnd 9: (2 sc, dec) x 6 (18)\n"
            "Rnd 10: (sc, dec) x 6 (12)\nRnd 11: dec x 6 (6)\nCut the yarn and close.\n"
            "Sew the snout over rounds 8 to 9.\n";

std::vector<Stroke> footprints(const Figure& figure) {
  std::vector<Stroke> found;
  for (const Stroke& stroke : figure.strokes)
    if (stroke.line == Line::footprint) found.push_back(stroke);
  return found;
}

/// The figure of a part that has a footprint.
const Figure* figure_with(const Typed& typed) {
  for (const Figure& figure : typed.figures)
    if (!footprints(figure).empty()) return &figure;
  return nullptr;
}

/// The outline in one piece: of a strip the box of its pieces.
Stroke whole(const Figure& figure) {
  std::vector<Stroke> pieces = footprints(figure);
  if (figure.form != Form::strip) return pieces.front();
  Point low = pieces.front().points.front(), high = low;
  for (const Stroke& piece : pieces)
    for (const Point p : piece.points) {
      low = {std::min(low.x, p.x), std::min(low.y, p.y)};
      high = {std::max(high.x, p.x), std::max(high.y, p.y)};
    }
  return {Line::footprint, {low, {high.x, low.y}, high, {low.x, high.y}}, false, 0};
}

/// Whether a point lies inside an outline: a ray from it crosses that an odd number of times.
bool inside(const std::vector<Point>& outline, Point p) {
  bool in = false;
  for (std::size_t i = 0, j = outline.size() - 1; i < outline.size(); j = i++) {
    const Point a = outline[i], b = outline[j];
    if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) in = !in;
  }
  return in;
}

/// The numbers of the rounds with stitches inside an outline.
std::vector<int> rounds_inside(const Typed& typed, const Figure& figure, const Stroke& outline) {
  std::vector<int> rounds;
  for (const Ring& ring : figure.rings)
    for (std::uint32_t i = ring.first_item; !ring.echo && i < ring.first_item + ring.items; ++i) {
      const Item& item = figure.items[i];
      const Point middle = item.foot + (item.height / 2) * item.up;
      const int number = typed.fabric.rounds[ring.round].number;
      if (inside(outline.points, middle) && (rounds.empty() || rounds.back() != number))
        rounds.push_back(number);
    }
  std::sort(rounds.begin(), rounds.end());
  return rounds;
}

/// The least air between an outline and a stitch.
double air(const Typed& typed, const Figure& figure, const Stroke& outline) {
  double least = 1e9;
  for (const Item& item : figure.items)
    for (const Convex& ink : ink_of(typed.extents, item))
      for (std::size_t i = 1; i < outline.points.size(); ++i) {
        const Point a = outline.points[i - 1], b = outline.points[i];
        least = std::min(least, distance(ink, {a, b, 0.5 * (a + b) + Point{1e-4, 1e-4}}));
      }
  return least;
}

} // namespace

TEST_CASE("a footprint surrounds the stitches of its rounds, in discs outward and inward and in strips") {
  const struct {
    const std::string& text;
    Form form;
    std::vector<int> rounds;
  } cases[] = {{grown, Form::disc, {3, 4, 5}},
               {even, Form::strip, {10, 11, 12}},
               {closing, Form::disc_inward, {8, 9}}};
  for (const auto& one : cases)
    for (const Hand hand : {Hand::right, Hand::left}) {
      const Typed typed(one.text, hand);
      const Figure* figure = figure_with(typed);
      REQUIRE(figure != nullptr);
      CHECK(figure->form == one.form);
      for (const Stroke& piece : footprints(*figure)) CHECK(air(typed, *figure, piece) > 0.03);
      CHECK(rounds_inside(typed, *figure, whole(*figure)) == one.rounds);
    }
}

TEST_CASE("its name stands outside the figure, once") {
  const Typed typed(even);
  const Figure* figure = figure_with(typed);
  REQUIRE(figure != nullptr);
  std::vector<std::string> names;
  for (const Placed& placed : figure->placed)
    if (placed.sign == Sign::sewn) names.push_back(placed.text.text);
  CHECK(names == std::vector<std::string>{"SNOUT"});
}

TEST_CASE("rounds that are covered are not folded") {
  const Typed typed(even);
  const Figure* figure = figure_with(typed);
  REQUIRE(figure != nullptr);
  for (const Ring& ring : figure->rings)
    if (ring.round != ring.last_round) {
      CHECK(
          (typed.fabric.rounds[ring.last_round].number < 10 || typed.fabric.rounds[ring.round].number > 12));
    }
}
