/// Figures of lace: groups in their spaces, bows, motifs.

#include "layout/lace.hpp"

#include "lace_by_chance.hpp"
#include "typed.hpp"
#include "typed_lace.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

using namespace whorl;
using namespace whorl::layout;

using test::Typed;

namespace {

double length(Point p) { return std::sqrt(p.x * p.x + p.y * p.y); }

/// The items of a figure that show the stitches from `first` on, in the order of work.
std::vector<Item> items_from(const Figure& figure, fabric::StitchId first, std::uint32_t many) {
  std::vector<Item> found;
  for (const Item& item : figure.items)
    if (item.first >= first && item.first < first + many) found.push_back(item);
  std::sort(found.begin(), found.end(), [](const Item& a, const Item& b) { return a.first < b.first; });
  return found;
}

Point head(const Item& item) { return item.foot + item.height * item.up; }

/// Places of a round as points: heads, and for a space its chains.
struct Places {
  std::vector<std::pair<fabric::Place, Point>> points;

  double nearest(const fabric::Place& to, Point foot, bool own) const {
    double least = 1e9;
    for (const auto& [place, at] : points)
      if ((place.what == to.what && place.of == to.of) == own) least = std::min(least, length(at - foot));
    return least;
  }
};

bool is_join(const fabric::Fabric& fabric, fabric::StitchId stitch) {
  return (fabric.stitches[stitch].flags & fabric::joins) != 0;
}

Places places_of(const Typed& typed, const Figure& figure, std::uint32_t round) {
  Places places;
  const fabric::Round& it = typed.fabric.rounds[round];
  for (const Item& item : items_from(figure, it.first_stitch, it.count))
    for (std::uint32_t j = 0; j < item.count; ++j)
      if ((typed.fabric.stitches[item.first + j].flags & fabric::counts) != 0)
        places.points.push_back({{item.first + j, fabric::On::top}, figure.tips[item.first_tip + j]});
  for (std::uint32_t arch = 0; arch < typed.fabric.arches.size(); ++arch)
    for (const Item& item :
         items_from(figure, typed.fabric.arches[arch].first_chain, typed.fabric.arches[arch].count))
      if (typed.fabric.stitches[item.first].round == round)
        places.points.push_back({{arch, fabric::On::space}, item.foot + item.height / 2 * item.up});
  return places;
}

/// Feet that go into one place of the ring inside; what takes several places together apart.
struct Group {
  fabric::Place into;
  std::vector<Point> feet;
};

std::vector<Group> groups_of(const Typed& typed, const Figure& figure, const Ring& ring) {
  std::vector<Group> groups;
  for (std::uint32_t k = 0; k < ring.items; ++k) {
    const Item& item = figure.items[ring.first_item + k];
    if (is_join(typed.fabric, item.first)) continue;
    const fabric::Leg* legs = typed.fabric.legs.data() + typed.fabric.stitches[item.first].first_leg;
    const bool together = item.feet > 1 && !(legs[0].into == legs[item.feet - 1].into);
    for (std::uint32_t foot = 0; foot < item.feet && !together; ++foot) {
      if (groups.empty() || !(groups.back().into == legs[foot].into)) groups.push_back({legs[foot].into, {}});
      groups.back().feet.push_back(figure.feet[item.first_foot + foot]);
    }
  }
  return groups;
}

/// The chain and the dot at the start of a round of stitches push its first and last a little aside.
constexpr double beside_start = 0.2;

/// How many places have their feet nearer than any other place of their round has, and how many not. Of more
/// than three feet in one place their middle is asked.
struct Nearness {
  int near = 0, not_near = 0;
  std::string which;
};

Nearness nearness_of(const Typed& typed, const Figure& figure) {
  Nearness found;
  for (std::size_t i = 1; i < figure.rings.size(); ++i) {
    const Places places = places_of(typed, figure, figure.rings[i - 1].round);
    const double over = works_in_spaces(typed.fabric, figure.rings[i].round) ? 0 : beside_start;
    for (Group& group : groups_of(typed, figure, figure.rings[i])) {
      if (places.nearest(group.into, {}, true) > 1e8) continue; // in a ring, or further down
      if (group.feet.size() > 3) {
        Point middle;
        for (const Point foot : group.feet)
          middle = middle + (1.0 / static_cast<double>(group.feet.size())) * foot;
        group.feet = {middle};
      }
      for (const Point foot : group.feet) {
        const bool near =
            places.nearest(group.into, foot, true) < places.nearest(group.into, foot, false) + over;
        ++(near ? found.near : found.not_near);
        if (!near) found.which += " " + fabric::id_of(typed.fabric, group.into);
      }
    }
  }
  return found;
}

std::string lace_by_chance(std::uint64_t seed) {
  test::Dice dice{seed * 7919 + 1};
  return "Fernlace\n\n" + test::LaceByChance<test::Dice>(dice).rounds();
}

const std::string mandala = "Mandala\n\nRnd 1: MR, ch 3 (counts as dc), 11 dc in ring, join\n";

} // namespace

TEST_CASE("feet of lace are nearer to their own place than to any other of that round") {
  for (const std::string& text : test::lace()) {
    const Typed typed(text);
    for (const Figure& figure : typed.figures) {
      const Nearness found = nearness_of(typed, figure);
      INFO(text << found.which);
      CHECK(found.near > 0);
      CHECK(found.not_near == 0);
    }
  }
}

TEST_CASE("of feet of random lace 98 in 100 are nearer to their own place than to any other of that round") {
  Nearness all;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    const Typed typed(lace_by_chance(seed));
    for (const Figure& figure : typed.figures) {
      if (figure.form != Form::disc && figure.form != Form::motif) continue;
      const Nearness found = nearness_of(typed, figure);
      all.near += found.near, all.not_near += found.not_near;
    }
  }
  INFO(all.not_near << " of " << all.near + all.not_near);
  CHECK(50 * all.not_near <= all.near);
}

TEST_CASE("nothing touches in random lace") {
  for (std::uint64_t seed = 101; seed <= 160; ++seed) {
    const std::string text = lace_by_chance(seed);
    INFO(seed << '\n' << text);
    const Typed typed(text);
    for (const Figure& figure : typed.figures) {
      const test::Nearest nearest = test::nearest(test::patches_of(figure, typed.extents));
      INFO(nearest.one << " and " << nearest.other);
      CHECK(nearest.air > 0.025); // chains of a run abut
    }
  }
}

TEST_CASE("stitches in one space fan out of it") {
  const Typed typed(mandala + "Rnd 2: ch 1, (sc in next st, ch 2, skip 1) 6 times, join\n"
                              "Rnd 3: ch 1, (3 dc in next ch-2 sp, ch 1) 6 times, join\n");
  const Figure& figure = typed.figures.at(0);
  const fabric::Round& round = typed.fabric.rounds[2];
  std::vector<Item> group;
  for (const Item& item : items_from(figure, round.first_stitch, round.count))
    if (item.feet == 1 && group.size() < 3 && !is_join(typed.fabric, item.first)) group.push_back(item);
  REQUIRE(group.size() == 3);
  CHECK(length(group[0].foot - group[2].foot) < 0.6 * length(head(group[0]) - head(group[2])));
  CHECK(length(group[0].foot - group[1].foot) == Approx(length(group[1].foot - group[2].foot)).margin(0.02));
}

TEST_CASE("a group with chains in it stands in its space as one without does") {
  const Typed typed(
      mandala + "Rnd 2: ch 1, (sc in next st, ch 2, skip 1) 6 times, join\n"
                "Rnd 3: ch 1, (3 dc in next ch-2 sp, (3 dc, ch 2, 3 dc) in next ch-2 sp) 3 times, join\n");
  const Figure& figure = typed.figures.at(0);
  const fabric::Round& round = typed.fabric.rounds[2];
  std::vector<Item> stitches;
  for (const Item& item : items_from(figure, round.first_stitch, round.count))
    if (item.feet == 1 && !is_join(typed.fabric, item.first)) stitches.push_back(item);
  REQUIRE(stitches.size() == 27);
  for (std::size_t i = 0; i < 27; i += 9) {
    const double three = length(stitches[i].foot - stitches[i + 2].foot),
                 six = length(stitches[i + 3].foot - stitches[i + 8].foot);
    CHECK(six < three + 1.0);
  }
}

TEST_CASE("four chains and more bow outward, fewer lie straight") {
  for (const int chains : {3, 5}) {
    const Typed typed(mandala + "Rnd 2: ch 1, (sc in next st, ch " + std::to_string(chains) +
                      ", skip 1) 6 times, join\nRnd 3: ch 1, (sc in next ch sp, ch 3) 6 times, join\n");
    const fabric::Arch& arch = typed.fabric.arches.front();
    const std::vector<Item> bow = items_from(typed.figures.at(0), arch.first_chain, arch.count);
    REQUIRE(bow.size() == static_cast<std::size_t>(chains));
    const Point first = bow.front().foot, last = bow.back().foot, middle = bow[bow.size() / 2].foot;
    const double out = length(middle) - length(0.5 * (first + last));
    CHECK((chains < 4 ? std::abs(out) < 0.02 : out > 0.15));
  }
}

TEST_CASE("the chains of a space lie in line with the heads beside them") {
  const Typed typed(mandala + "Rnd 2: ch 1, (dc in next st, ch 1, skip 1) 6 times, join\n"
                              "Rnd 3: ch 1, (sc in next ch sp, ch 3) 6 times, join\n");
  const Figure& figure = typed.figures.at(0);
  const fabric::Arch& arch = typed.fabric.arches.front();
  const Item chain = items_from(figure, arch.first_chain, 1).front(),
             dc = items_from(figure, arch.first_chain - 1, 1).front();
  CHECK(length(head(chain)) == Approx(length(head(dc))).margin(0.2));
}

TEST_CASE("groups with chains in them are the corners of a motif") {
  for (const std::string& text : test::lace()) {
    const Typed typed(text);
    const bool square = text.find("square") != std::string::npos,
               hexagon = text.find("hexagon") != std::string::npos;
    INFO(text);
    REQUIRE(typed.figures.size() == 1);
    CHECK((typed.figures.front().form == Form::motif) == (square || hexagon));
    CHECK(typed.figures.front().corners == (square ? 4 : hexagon ? 6 : 0));
  }
}

TEST_CASE("every stitch of lace is drawn once") {
  for (const std::string& text : test::lace()) {
    const Typed typed(text);
    std::vector<int> shown(typed.fabric.stitches.size(), 0);
    for (const Figure& figure : typed.figures)
      for (const Item& item : figure.items)
        for (std::uint32_t j = 0; j < item.count; ++j) ++shown[item.first + j];
    INFO(text);
    for (fabric::StitchId stitch = 0; stitch < shown.size(); ++stitch)
      if (typed.fabric.rounds[typed.fabric.stitches[stitch].round].kind == pattern::RoundKind::round)
        CHECK(shown[stitch] == 1);
  }
}

TEST_CASE("lace is drawn the same twice") {
  const Typed typed(test::lace().front());
  CHECK(show(typed.fabric, place(typed.fabric, typed.extents, {})) ==
        show(typed.fabric, place(typed.fabric, typed.extents, {})));
}

TEST_CASE("a point is found again on the contour of a motif") {
  for (const int corners : {0, 3, 4, 6})
    for (const Way way : {Way::anticlockwise, Way::clockwise})
      for (double at = 0.01; at < 1; at += 0.037) {
        const Rounded contour{corners, way};
        const Spotted spot = spot_of(contour, point_on(contour, 3.5, at));
        INFO(corners << " corners at " << at);
        CHECK(spot.r == Approx(3.5));
        CHECK(spot.at == Approx(at));
      }
}

TEST_CASE("a place carried to another contour of a motif keeps its distance from the middle of its side") {
  const Rounded square{4, Way::anticlockwise};
  const double aside = 1.1, inner = 4, outer = 7;
  const double carried_to = carried(square, inner, aside / length_of(square, inner), outer);
  CHECK(carried_to * length_of(square, outer) == Approx(aside));
  CHECK(carried(square, outer, carried_to, inner) * length_of(square, inner) == Approx(aside));
  CHECK(carried(square, inner, 0.125, outer) == Approx(0.125));
}

TEST_CASE("a curve round a motif runs on its contour") {
  for (const int corners : {3, 4, 6}) {
    const Rounded contour{corners, Way::anticlockwise};
    const std::vector<Point> points = curve_round(contour, 5);
    CHECK(length(points.front() - points.back()) < 1e-9);
    for (std::size_t i = 0; i + 3 < points.size(); i += 3) {
      const Point middle = 0.125 * (points[i] + points[i + 3]) + 0.375 * (points[i + 1] + points[i + 2]);
      CHECK(spot_of(contour, middle).r == Approx(5).epsilon(0.001));
    }
  }
}

TEST_CASE("the ground of a motif's round lies under its stitches") {
  const Typed typed(
      "Leaf square\n\nYarn: white and grey\n\nRnd 1: MR, ch 3 (counts as dc), 2 dc in ring, "
      "(ch 2, 3 dc in ring) 3 times, ch 2, join\nChange to grey.\nRnd 2: ch 1, [(3 dc, ch 2, 3 dc) in "
      "next ch-2 sp, ch 1] 4 times, join\n");
  const Figure& figure = typed.figures.at(0);
  REQUIRE(figure.form == Form::motif);
  REQUIRE(figure.grounds.size() == 1);
  const Ring& ring = figure.rings[figure.grounds.front().ring];
  const Rounded contour{4, Way::anticlockwise};
  double low = 1e9, high = 0;
  for (const Point p : figure.grounds.front().outline) {
    const double r = spot_of(contour, p).r;
    low = std::min(low, r), high = std::max(high, r);
  }
  CHECK(low < ring.inner);
  CHECK(high > ring.middle);
}
