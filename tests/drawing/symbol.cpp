#include "drawing/symbol.hpp"

#include "drawing/outline.hpp"
#include "layout/sign.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace whorl;
using namespace whorl::drawing;
using layout::SymbolKey;

namespace {

stitch::StitchKind kind(std::string_view name) {
  const auto& kinds = stitch::standard_kinds();
  const auto found = stitch::find_kind(kinds, name);
  REQUIRE(found);
  return kinds[*found];
}

stitch::StitchKind own(std::string moves) {
  stitch::StitchKind made;
  made.name = "acorn stitch";
  made.moves = std::move(moves);
  made.own = true;
  return made;
}

Composed composed(std::string_view name, std::uint16_t in_one = 1, std::uint8_t loops = stitch::both) {
  return compose(kind(name), SymbolKey{0, in_one, loops}, built_in_marks());
}

/// The marks with a pen width of their own each, by which they are told apart in what is composed of them.
std::vector<Mark> numbered_marks() {
  std::vector<Mark> marks = built_in_marks();
  for (std::size_t i = 0; i < marks.size(); ++i)
    for (Pen& pen : marks[i].pens) pen.stroke = static_cast<double>(i + 1) / 1000;
  return marks;
}

/// How often a mark stands in a stitch.
long count(const stitch::StitchKind& stitch, std::uint16_t in_one, std::string_view mark,
           std::uint8_t loops = stitch::both) {
  const std::vector<Mark> marks = numbered_marks();
  const double width = find_mark(marks, mark)->pens[0].stroke;
  const std::vector<Pen> pens = compose(stitch, SymbolKey{0, in_one, loops}, marks).pens;
  return std::count_if(pens.begin(), pens.end(), [width](const Pen& pen) { return pen.stroke == width; });
}

double turn(Point a, Point b, Point c) { return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x); }

bool is_convex(const layout::Convex& piece) {
  for (std::size_t i = 0; i < piece.size(); ++i)
    if (turn(piece[i], piece[(i + 1) % piece.size()], piece[(i + 2) % piece.size()]) <= 0) return false;
  return piece.size() >= 3;
}

bool holds(const layout::Convex& piece, Point point) {
  for (std::size_t i = 0; i < piece.size(); ++i)
    if (turn(piece[i], piece[(i + 1) % piece.size()], point) < -1e-12) return false;
  return true;
}

bool is_covered(const std::vector<layout::Convex>& ink, Point point) {
  return std::any_of(ink.begin(), ink.end(),
                     [point](const layout::Convex& piece) { return holds(piece, point); });
}

/// Eight points about one, as far away as the pen reaches.
std::vector<Point> rim(Point at, double radius) {
  const double s = std::sqrt(0.5) * radius;
  return {at + Point{radius, 0},  at + Point{s, s},   at + Point{0, radius},  at + Point{-s, s},
          at + Point{-radius, 0}, at + Point{-s, -s}, at + Point{0, -radius}, at + Point{s, -s}};
}

std::vector<SymbolKey> ways_of_working() {
  std::vector<SymbolKey> keys;
  for (const std::uint16_t in_one : {1, 2, 3, 5})
    for (const std::uint8_t loops : {stitch::both, stitch::back, stitch::front, stitch::third})
      keys.push_back({0, in_one, loops});
  return keys;
}

double tilt_to_mirror(const std::vector<Pen>& pens) {
  double worst = 0;
  std::vector<Point> all;
  for (const Pen& pen : pens) all.insert(all.end(), pen.path.points.begin(), pen.path.points.end());
  for (const Point& p : all) {
    double nearest = 1e9;
    for (const Point& q : all) nearest = std::min(nearest, std::hypot(p.x + q.x, p.y - q.y));
    worst = std::max(worst, nearest);
  }
  return worst;
}

} // namespace

// Slashes, bars and crosses: trade-facts 1a, CYC key through the course and the rule of cozycrochet.ca.
TEST_CASE("a tall stitch has a slash for each wrap from the double crochet up") {
  CHECK(count(kind("hdc"), 1, "slash") == 0);
  CHECK(count(kind("dc"), 1, "slash") == 1);
  CHECK(count(kind("tr"), 1, "slash") == 2);
  CHECK(count(kind("dtr"), 1, "slash") == 3);
  CHECK(count(kind("trtr"), 1, "slash") == 4);
}

TEST_CASE("a tall stitch has one stem and one bar") {
  for (const char* name : {"hdc", "dc", "tr", "dtr"}) {
    INFO(name);
    CHECK(count(kind(name), 1, "stem") == 1);
    CHECK(count(kind(name), 1, "bar") == 1);
  }
}

TEST_CASE("a single crochet is a cross and nothing else") {
  CHECK(composed("sc").pens.size() == find_mark(built_in_marks(), "cross")->pens.size());
}

TEST_CASE("a single crochet can be a plus") {
  const Style plus{Style::Single::plus};
  CHECK(compose(kind("sc"), {}, built_in_marks(), plus).pens[0].path.points ==
        find_mark(built_in_marks(), "plus")->pens[0].path.points);
}

TEST_CASE("a single crochet increase is two bare legs from one foot") {
  CHECK(count(kind("sc"), 2, "leg") == 2);
  CHECK(composed("sc", 2).pens.size() == 2);
  CHECK(composed("sc", 2).extent.feet == std::vector<Point>{{0, 0}, {0, 0}});
}

TEST_CASE("a single crochet decrease is two bare legs with one head") {
  CHECK(composed("sc2tog").pens.size() == 2);
  CHECK(composed("sc2tog").extent.feet.size() == 2);
  CHECK(composed("sc2tog").extent.tips.size() == 1);
}

TEST_CASE("a decrease is the increase turned over") {
  const auto up = composed("sc", 2).pens, down = composed("sc2tog").pens;
  const Point apex = up[0].path.points[0], tip = down[0].path.points[1];
  CHECK(apex.y + tip.y == Approx(0.8));
  CHECK(up[1].path.points[1].x == Approx(down[1].path.points[0].x));
}

// N symbols that share a base: trade-facts 1b, ronique.net guide 4.
TEST_CASE("each stitch of a tall increase keeps its bar and slashes") {
  CHECK(count(kind("tr"), 2, "bar") == 2);
  CHECK(count(kind("tr"), 2, "slash") == 4);
  CHECK(count(kind("dc"), 5, "stem") == 5);
}

// N symbols that share a head: trade-facts 1b, kayliebooks.com.
TEST_CASE("a tall decrease has all its legs under one bar") {
  CHECK(count(kind("dc3tog"), 1, "stem") == 3);
  CHECK(count(kind("dc3tog"), 1, "slash") == 3);
  CHECK(count(kind("dc3tog"), 1, "bar") == 1);
}

TEST_CASE("a bobble is five bowed legs, each with its slash, under one bar") {
  CHECK(count(kind("bo"), 1, "bow") == 5);
  CHECK(count(kind("bo"), 1, "slash") == 5);
  CHECK(count(kind("bo"), 1, "bar") == 1);
}

TEST_CASE("a puff has no slashes") {
  CHECK(count(kind("puff"), 1, "bow") == 3);
  CHECK(count(kind("puff"), 1, "slash") == 0);
}

TEST_CASE("a popcorn is closed by an oval, not by a bar") {
  CHECK(count(kind("pc"), 1, "oval") == 1);
  CHECK(count(kind("pc"), 1, "bar") == 0);
}

TEST_CASE("a stitch that the designer invents is drawn from its moves") {
  CHECK(count(own("(o i d p2)4 p5"), 1, "bow") == 4);
  CHECK(count(own("(o i d p2)4 p5"), 1, "slash") == 4);
}

TEST_CASE("an extended stitch has a tie under its bar for the pull-through of one") {
  CHECK(count(kind("ehdc"), 1, "tie") == 1);
  CHECK(count(kind("hdc"), 1, "tie") == 0);
}

TEST_CASE("an extended single crochet carries its cross on a stem") {
  CHECK(count(kind("esc"), 1, "stem") == 1);
  CHECK(count(kind("esc"), 1, "cross") == count(kind("sc"), 1, "cross"));
}

TEST_CASE("a slip stitch is a dot and a chain an oval") {
  CHECK(count(kind("sl st"), 1, "dot") == 1);
  CHECK(count(kind("ch"), 1, "oval") == 1);
}

// An arch for the back loop, a cup for the front: trade-facts 1a, CYC.
TEST_CASE("a back loop is marked by a cap and a front loop by a cup") {
  CHECK(count(kind("sc"), 1, "cap", stitch::back) == 1);
  CHECK(count(kind("sc"), 1, "cup", stitch::front) == 1);
  CHECK(count(kind("sc"), 1, "cap", stitch::both) == 0);
}

TEST_CASE("an increase in the back loop has one arc and a decrease one at each foot") {
  CHECK(count(kind("sc"), 2, "cap", stitch::back) == 1);
  CHECK(count(kind("sc2tog"), 1, "cap", stitch::back) == 2);
}

TEST_CASE("an invisible decrease carries no arcs for the loops it takes anyway") {
  CHECK(count(kind("invdec"), 1, "cup", stitch::front) == 0);
}

TEST_CASE("increases and decreases are the same on both sides of their axis") {
  for (const char* name : {"sc", "hdc", "dc", "tr", "dtr"}) {
    INFO(name);
    CHECK(tilt_to_mirror(composed(name, 2).pens) < 1e-12);
  }
  for (const char* name : {"sc2tog", "hdc2tog", "dc2tog", "tr2tog", "dtr2tog", "sc3tog"}) {
    INFO(name);
    CHECK(tilt_to_mirror(composed(name).pens) < 1e-12);
  }
}

TEST_CASE("the legs of a stem of any height keep their bar and slashes in size") {
  const auto low = compose(kind("dc"), {}, built_in_marks()).pens;
  const auto high = compose(kind("dc"), {}, built_in_marks(), {}, 3.0).pens;
  const auto width = [](const Pen& pen) { return pen.path.points[1].x - pen.path.points[0].x; };
  CHECK(high[0].path.points[1].y == Approx(3.0));
  CHECK(width(high[1]) == Approx(width(low[1])));
  CHECK(width(high[2]) == Approx(width(low[2])));
}

TEST_CASE("single crochets keep their height whatever is asked") {
  CHECK(compose(kind("sc"), {}, built_in_marks(), {}, 2.0).extent.height == 0.8);
  CHECK(compose(kind("sc"), {0, 2}, built_in_marks(), {}, 2.0).extent.height == 0.8);
  CHECK(composed("sc2tog").extent.floats);
  CHECK_FALSE(composed("hdc").extent.floats);
}

TEST_CASE("a stitch has a slot for each head or foot") {
  CHECK(composed("sc").extent.slot == 1);
  CHECK(composed("sc", 3).extent.slot == 3);
  CHECK(composed("dc2tog").extent.slot == 2);
}

TEST_CASE("a stitch has a tip for every stitch it stands for") {
  for (const std::uint16_t n : {1, 2, 3, 4, 5, 9}) {
    CHECK(composed("sc", n).extent.tips.size() == n);
    CHECK(composed("dc", n).extent.tips.size() == n);
    CHECK(composed("bo", n).extent.tips.size() == n);
  }
}

TEST_CASE("loop marks reach below the foot, nothing else is told of as below") {
  CHECK(composed("sc").extent.below == 0);
  CHECK(composed("sc", 2).extent.below == 0);
  CHECK(composed("sc", 1, stitch::back).extent.below > 0.2);
}

TEST_CASE("a loop mark stands clear of the stitch above it") {
  for (const char* name : {"sc", "dc", "sc2tog", "bo"}) {
    const auto bare = composed(name).extent.ink, marked = composed(name, 1, stitch::front).extent.ink;
    double low = 0, top = -9;
    for (const auto& piece : bare)
      for (const Point& p : piece) low = std::min(low, p.y);
    for (std::size_t i = bare.size(); i < marked.size(); ++i)
      for (const Point& p : marked[i]) top = std::max(top, p.y);
    INFO(name);
    CHECK(low - top > 0.02);
  }
}

TEST_CASE("ink comes in convex pieces, anticlockwise") {
  for (const stitch::StitchKind& one : stitch::standard_kinds())
    for (const SymbolKey& key : ways_of_working())
      for (const layout::Convex& piece : compose(one, key, built_in_marks()).extent.ink) {
        INFO(one.name);
        CHECK(is_convex(piece));
      }
}

TEST_CASE("the pieces hold all ink, pens with their width") {
  for (const stitch::StitchKind& one : stitch::standard_kinds())
    for (const SymbolKey& key : ways_of_working()) {
      const Composed symbol = compose(one, key, built_in_marks());
      std::size_t bare = 0;
      for (const Pen& pen : symbol.pens)
        for (const auto& run : flatten(pen.path))
          for (const Point& at : run)
            for (const Point& edge : rim(at, pen.stroke / 2))
              bare += is_covered(symbol.extent.ink, edge) ? 0U : 1U;
      INFO(one.name << " " << key.in_one << " " << int(key.loops));
      CHECK(bare == 0);
    }
}

TEST_CASE("the width of a symbol is that of its ink") {
  for (const stitch::StitchKind& one : stitch::standard_kinds()) {
    const layout::SymbolExtent extent = compose(one, {}, built_in_marks()).extent;
    double reach = 0;
    for (const layout::Convex& piece : extent.ink)
      for (const Point& p : piece) reach = std::max(reach, std::abs(p.x));
    CHECK(extent.width == Approx(2 * reach));
  }
}

TEST_CASE("no tall stitch is drawn wider than the slots it has") {
  for (const stitch::StitchKind& one : stitch::standard_kinds())
    for (const std::uint16_t n : {1, 2, 3, 4, 5}) {
      const layout::SymbolExtent extent = compose(one, {0, n}, built_in_marks()).extent;
      INFO(one.name << " " << n);
      CHECK(extent.width <= extent.slot + 0.1);
    }
}

TEST_CASE("in millimetres a symbol grows with the scale and turns its y downward") {
  const std::vector<Pen> pens = in_millimetres(composed("hdc").pens, 5);
  CHECK(pens[0].stroke == Approx(0.5));
  CHECK(pens[0].path.points[1].y == Approx(-7.0));
}

TEST_CASE("the chains of a picot stand apart, and from its dot") {
  const Composed picot = compose(stitch::picot(3), SymbolKey{}, built_in_marks());
  REQUIRE(picot.pens.size() == 4);
  for (std::size_t i = 0; i < picot.pens.size(); ++i)
    for (std::size_t k = i + 1; k < picot.pens.size(); ++k) {
      std::vector<layout::Convex> one, other;
      append_ink(one, picot.pens[i]);
      append_ink(other, picot.pens[k]);
      for (const layout::Convex& a : one)
        for (const layout::Convex& b : other) CHECK(layout::distance(a, b) > 0.05);
    }
}
