/// Rounds that were printed elsewhere, against the fabric's counts; the source stands beside each
/// (trade-facts.md).

#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "ids.hpp"
#include "sample.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using sample::Maker;
using Counts = std::vector<std::uint32_t>;

namespace {

/// Counts of a tree in which nothing is to be said.
Counts counts_of(const pattern::Tree& tree) {
  const fabric::Worked worked = fabric::work(tree);
  CHECK(worked.findings.empty());
  CHECK(ids::said(fabric::check(tree, worked.fabric)) == std::vector<std::string>{});
  return ids::counts_of(worked.fabric);
}

/// Round r of a flat circle: "(r - 2) plain, inc" as often as the circle was begun with.
Counts flat_circle(const char* kind, std::uint32_t start, std::uint32_t rounds) {
  Maker m;
  m.round({m.ring(), m.work(kind, start)});
  for (std::uint32_t r = 2; r <= rounds; ++r) {
    sample::Nodes pass;
    if (r > 2) pass.push_back(m.work(kind, r - 2));
    pass.push_back(m.work(kind, 1, 2));
    m.round({m.repeat(start, pass)});
  }
  return counts_of(m.tree);
}

Counts multiples(std::uint32_t n, std::uint32_t rounds) {
  Counts counts;
  for (std::uint32_t r = 1; r <= rounds; ++r) counts.push_back(n * r);
  return counts;
}

/// The tam's rounds up to `rounds`: seven in the ring, then one more plain between the increases each round.
Maker tam_crown(std::uint32_t rounds) {
  Maker m;
  m.part("Tam");
  m.round({m.ring(), m.sc(7)});
  m.round({m.around({m.inc(1)})});
  for (std::uint32_t r = 3; r <= rounds; ++r) m.round({m.around({m.sc(r - 2), m.inc(1)})});
  return m;
}

} // namespace

TEST_CASE("A flat circle of single crochet adds six a round") {
  CHECK(flat_circle("sc", 6, 10) == multiples(6, 10)); // 6b: mkcarroll.com, craftymaria, thecrochetbag (6) 2+
}

TEST_CASE("A flat circle of half double crochet adds eight a round") {
  CHECK(flat_circle("hdc", 8, 6) == multiples(8, 6)); // 6b: mkcarroll.com, craftymaria, thecrochetbag 2+
}

TEST_CASE("A flat circle of double crochet adds twelve a round") {
  CHECK(flat_circle("dc", 12, 6) == multiples(12, 6)); // 6b: craftymaria (12)
}

TEST_CASE("The crown of the 1918 tam adds seven a round up to 224") {
  const Counts counts = counts_of(tam_crown(32).tree); // 6c: Handbook 1918 P; numbers derived
  CHECK(counts == multiples(7, 32));
  CHECK(counts.back() == 224);
}

TEST_CASE("The decreases of the 1918 tam are misses and come out even") {
  Maker m =
      tam_crown(32); // 6c: Handbook 1918 P: "7, miss 1" = 196; "6, miss 1" = 168; "2, miss 1" = 112; 112 even
  for (std::uint32_t plain : {7u, 6u, 2u}) m.round({m.around({m.sc(plain), m.skip(1)})});
  m.rounds(36, 45, {m.sc_around()});
  const Counts counts = counts_of(m.tree);
  CHECK(Counts(counts.begin() + 31, counts.begin() + 36) == Counts{224, 196, 168, 112, 112});
  CHECK(counts.back() == 112);
}

TEST_CASE("The button of the 1918 handbook is 8, 16, 24") {
  Maker m; // 6c: Handbook 1918 P: 8; 16; "1, 2 in next" = 24
  m.round({m.ring(), m.sc(8)});
  m.round({m.around({m.inc(1)})});
  m.round({m.around({m.sc(1), m.inc(1)})});
  CHECK(counts_of(m.tree) == Counts{8, 16, 24});
}

TEST_CASE("The button of the 1918 handbook closes by missing every other stitch") {
  Maker m; // 6c: Handbook 1918 P: close with "miss 1, 1"
  m.round({m.ring(), m.sc(24)});
  m.round({m.around({m.skip(1), m.sc(1)})});
  CHECK(counts_of(m.tree) == Counts{24, 12});
}

TEST_CASE("A hexagon of single crochet adds twelve a round") {
  Maker m; // 6c: Dillmont fig. 442 P: ch 6 ring; 12; 3-in-1 at six corners: 24; 36 (derived)
  m.round({m.ch(6), m.join(), m.sc(12)});
  m.round({m.repeat(6, {m.sc(1), m.work("sc", 1, 3)})});
  m.round({m.repeat(6, {m.sc(3), m.work("sc", 1, 3)})});
  CHECK(counts_of(m.tree) == Counts{12, 24, 36});
}

TEST_CASE("A square of single crochet adds eight a round") {
  Maker m; // 6c: Dillmont fig. 441 P: ch 4 ring; 12; then 3-in-1 at four corners (adds 8 a round, derived)
  m.round({m.ch(4), m.join(), m.sc(12)});
  m.round({m.repeat(4, {m.sc(2), m.work("sc", 1, 3)})});
  CHECK(counts_of(m.tree) == Counts{12, 20});
}

TEST_CASE("The ghost keeps its counts") {
  const Counts counts{6,  12, 18, 24, 30, 36, 42,
                      48, 48, 48, 54, 54, 60, 66}; // 6c: hookok.com S (rest derived)
  CHECK(counts_of(sample::ball(counts)) == counts);
}

TEST_CASE("A hyperbolic row of 30 with every fifth doubled is 36") {
  Maker m; // 6b: Henderson & Taimina: 30 with N=5 gives 36
  m.round({m.ring(), m.sc(30)});
  m.round({m.around({m.sc(4), m.inc(1)})});
  CHECK(counts_of(m.tree).back() == 36);
}

TEST_CASE("A hyperbolic row of 40 with every fourth doubled is 50") {
  Maker m; // 6b: Henderson & Taimina: 40 with N=4 gives 50
  m.round({m.ring(), m.sc(40)});
  m.round({m.around({m.sc(3), m.inc(1)})});
  CHECK(counts_of(m.tree).back() == 50);
}

TEST_CASE("Stars repeated twice more are three in all") {
  Maker m; // 5: 1918 Handbook P: "repeat from * twice" = three in all
  m.round({m.ring(), m.sc(6)});
  m.round({m.repeat(3, {m.sc(1), m.inc(1)})});
  CHECK(counts_of(m.tree).back() == 9);
}

TEST_CASE("Two double crochets together in the same stitch are no decrease") {
  Maker m; // 6a, stitch arithmetic: hopecornerfarm.com S
  stitch::StitchKind cluster = *stitch::together(m.tree.kinds[*stitch::find_kind(m.tree.kinds, "dc")], 2);
  cluster.name = "cluster";
  cluster.takes = 1;
  m.tree.kinds.push_back(cluster);
  m.round({m.ring(), m.sc(6)});
  m.round({m.to_end(m.work("cluster", 1))});
  CHECK(counts_of(m.tree).back() == 6);
}

TEST_CASE("N together use N and make one") {
  Maker m; // 6a, stitch arithmetic
  m.round({m.ring(), m.sc(12)});
  m.round({m.to_end(m.work("sc3tog", 1))});
  m.round({m.to_end(m.work("dc2tog", 1))});
  CHECK(counts_of(m.tree) == Counts{12, 4, 2});
}

TEST_CASE("A shell uses one and makes as many as it has") {
  Maker m; // 6a, stitch arithmetic; Dillmont fig. 433 (seven trebles) P
  m.round({m.ring(), m.sc(4)});
  m.round({m.around({m.skip(1), m.work("dc", 1, 7)})});
  CHECK(counts_of(m.tree) == Counts{4, 14});
}
