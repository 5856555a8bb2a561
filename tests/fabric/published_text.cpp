/// Printed rules of circles, balls and foundations, typed as patterns, read and counted; the source stands
/// beside each (trade-facts.md).

#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "ids.hpp"
#include "pattern/read.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <string>

using namespace whorl;
using Counts = std::vector<std::uint32_t>;

namespace {

/// What the fabric counts of a text in which nothing is to be said but notes.
Counts counts_of(const std::string& text) {
  INFO(text);
  const pattern::Source source(text);
  pattern::Read read = pattern::read(source, *words::find_vocabulary("en-US"));
  fabric::Worked worked = fabric::work(read.tree);
  std::vector<pattern::Finding> all = read.findings;
  const std::vector<pattern::Finding> checked = fabric::check(read.tree, worked.fabric);
  all.insert(all.end(), worked.findings.begin(), worked.findings.end());
  all.insert(all.end(), checked.begin(), checked.end());
  for (const pattern::Finding& finding : all) {
    CAPTURE(finding.message);
    CHECK(finding.severity == pattern::Severity::note);
  }
  if (worked.fabric.parts.empty()) return {};
  return ids::counts_of(worked.fabric);
}

std::string number(std::uint32_t n) { return std::to_string(n); }

/// "Rnd 4: (2 sc, inc) x 6 (24)" and the rounds before it: round r has "(r - 2) plain, inc" n times.
std::string circle(const std::string& stitch, std::uint32_t n, std::uint32_t rounds) {
  std::string text =
      "Moss mat\n\nRnd 1: " + number(n) + " " + stitch + " in magic ring (" + number(n) + ")\n";
  for (std::uint32_t r = 2; r <= rounds; ++r) {
    const std::string plain = r == 2 ? "" : number(r - 2) + " " + stitch + ", ";
    text += "Rnd " + number(r) + ": (" + plain + "2 " + stitch + " in next st) x " + number(n) + " (" +
            number(n * r) + ")\n";
  }
  return text;
}

Counts multiples(std::uint32_t n, std::uint32_t rounds) {
  Counts counts;
  for (std::uint32_t r = 1; r <= rounds; ++r) counts.push_back(n * r);
  return counts;
}

/// 6d, derived: n rounds at equal polar angle, s_i = round(2 n sin(pi (2i-1) / (2n))).
Counts ideal_ball(int n) {
  const double pi = std::acos(-1.0);
  Counts counts;
  for (int i = 1; i <= n; ++i)
    counts.push_back(static_cast<std::uint32_t>(std::lround(2 * n * std::sin(pi * (2 * i - 1) / (2 * n)))));
  return counts;
}

/// A ball that adds six a round up to `widest`, works `even` rounds and takes six off a round.
std::string usual_ball(std::uint32_t widest, std::uint32_t even) {
  std::string text = circle("sc", 6, widest / 6);
  std::uint32_t round = widest / 6;
  if (even > 0)
    text += "Rnds " + number(round + 1) + "-" + number(round + even) + ": sc in each st around (" +
            number(widest) + ")\n";
  round += even;
  for (std::uint32_t left = widest - 6; left >= 6; left -= 6) {
    const std::uint32_t plain = left / 6 - 1;
    text += "Rnd " + number(++round) + ": (" + (plain > 0 ? number(plain) + " sc, " : "") + "dec) x 6 (" +
            number(left) + ")\n";
  }
  return text;
}

} // namespace

TEST_CASE("A typed circle of single crochet adds 6, 7 or 8 a round") {
  CHECK(counts_of(circle("sc", 6, 8)) ==
        multiples(6, 8)); // 6b: mkcarroll.com, craftymaria, thecrochetbag (6) 2+
  CHECK(counts_of(circle("sc", 7, 8)) == multiples(7, 8)); // 6b: 7 in the 1918 Tam, Handbook P
  CHECK(counts_of(circle("sc", 8, 8)) == multiples(8, 8)); // 6b: 8 in its button, Handbook P
}

TEST_CASE("A typed circle of half double crochet adds 8 or 10 a round") {
  CHECK(counts_of(circle("hdc", 8, 6)) ==
        multiples(8, 6)); // 6b: mkcarroll.com, craftymaria, thecrochetbag 2+
  CHECK(counts_of(circle("hdc", 10, 6)) == multiples(10, 6)); // 6b: crochetrebellion (10)
}

TEST_CASE("A typed circle of double crochet adds 10, 12 or 14 a round") {
  CHECK(counts_of(circle("dc", 10, 6)) == multiples(10, 6)); // 6b: mkcarroll (10-12)
  CHECK(counts_of(circle("dc", 12, 6)) == multiples(12, 6)); // 6b: craftymaria (12)
  CHECK(counts_of(circle("dc", 14, 6)) == multiples(14, 6)); // 6b: crochetrebellion (12-14)
}

TEST_CASE("A typed circle of treble adds 12 or 14 a round") {
  CHECK(counts_of(circle("tr", 12, 5)) == multiples(12, 5)); // 6b: mkcarroll.com
  CHECK(counts_of(circle("tr", 14, 5)) == multiples(14, 5)); // 6b: mkcarroll.com
}

TEST_CASE("A UK circle of treble adds twelve a round") {
  // 6b: trantor.is GS.xhtml (UK treble circle, 12 a round)
  std::string text = circle("tr", 12, 5);
  CHECK(counts_of(text.insert(text.find('\n'), "\nUK terms")) == multiples(12, 5));
}

TEST_CASE("The ideal ball of ten rounds") {
  const Counts ideal{3, 9, 14, 18, 20, 20, 18, 14, 9, 3}; // 6d: formula that follows (derived)
  CHECK(ideal_ball(10) == ideal);
  CHECK(counts_of("Dewdrop\n\n"
                  "Rnd 1: 3 sc in MR (3)\n"
                  "Rnd 2: 3 sc in each st around (9)\n"
                  "Rnd 3: (inc, sc) x 4, inc (14)\n"
                  "Rnd 4: (2 sc, inc) x 4, 2 sc (18)\n"
                  "Rnd 5: (8 sc, inc) x 2 (20)\n"
                  "Rnd 6: sc in each st around (20)\n"
                  "Rnd 7: (8 sc, dec) x 2 (18)\n"
                  "Rnd 8: (2 sc, dec) x 4, 2 sc (14)\n"
                  "Rnd 9: (dec, sc) x 4, dec (9)\n"
                  "Rnd 10: sc3tog x 3 (3)\n") == ideal);
}

TEST_CASE("The ideal ball of twelve rounds") {
  const Counts ideal{3, 9, 15, 19, 22, 24, 24, 22, 19, 15, 9, 3}; // 6d: formula that follows (derived)
  CHECK(ideal_ball(12) == ideal);
  CHECK(counts_of("Dewdrop\n\n"
                  "Rnd 1: 3 sc in MR (3)\n"
                  "Rnd 2: 3 sc in each st around (9)\n"
                  "Rnd 3: (2 inc, sc) x 3 (15)\n"
                  "Rnd 4: (2 sc, inc) x 4, 3 sc (19)\n"
                  "Rnd 5: (5 sc, inc) x 3, sc (22)\n"
                  "Rnd 6: (10 sc, inc) x 2 (24)\n"
                  "Rnd 7: sc in each st around (24)\n"
                  "Rnd 8: (10 sc, dec) x 2 (22)\n"
                  "Rnd 9: (5 sc, dec) x 3, sc (19)\n"
                  "Rnd 10: (2 sc, dec) x 4, 3 sc (15)\n"
                  "Rnd 11: (2 dec, sc) x 3 (9)\n"
                  "Rnd 12: sc3tog x 3 (3)\n") == ideal);
}

TEST_CASE("The usual ball adds six to the widest round, works even and takes six off") {
  // 6d: mspremiseconclusion 2010 S; tacomagic S; Priscilla 1908 p. 39 ball cover (course S)
  CHECK(counts_of(usual_ball(24, 3)) == Counts{6, 12, 18, 24, 24, 24, 24, 18, 12, 6});
}

TEST_CASE("A ball of square stitches is twice as wide as it has rounds") {
  const Counts counts = counts_of(usual_ball(36, 7)); // 6d: tacomagic.wordpress.com 2011 S
  CHECK(*std::max_element(counts.begin(), counts.end()) == 2 * counts.size());
}

TEST_CASE("A tube has no increase") {
  // 6d: Beeton pp. 266-268; Handbook rows 36-45
  CHECK(counts_of("Stem\n\nRnd 1: 8 sc in MR (8)\nRnds 2-9: sc in each st around (8)\n") == Counts(9, 8));
}

TEST_CASE("Fifteen chains give fourteen single crochets") {
  // 3: foundation arithmetic, Leinhauser S
  CHECK(counts_of("Bark strip\n\nRow 1: Ch 15; sc in 2nd ch from hook and in each ch across (14)\n").back() ==
        14);
}

TEST_CASE("Seventeen chains give fifteen double crochets, three chains counted as one") {
  // 3: foundation arithmetic, Leinhauser S
  CHECK(counts_of("Bark strip\n\nRow 1: Ch 17; dc in 4th ch from hook and in each ch across (15)\n").back() ==
        15);
}

TEST_CASE("A foundation for n single crochets has one chain more, for n doubles two") {
  for (const std::uint32_t n : {6u, 9u, 20u}) { // 3: formulae (derived)
    CHECK(counts_of("Bark strip\n\nRow 1: Ch " + number(n + 1) +
                    "; sc in 2nd ch from hook and in each ch across (" + number(n) + ")\n")
              .back() == n);
    CHECK(counts_of("Bark strip\n\nRow 1: Ch " + number(n + 2) +
                    "; dc in 4th ch from hook and in each ch across (" + number(n) + ")\n")
              .back() == n);
  }
}

TEST_CASE("The typed hexagon adds twelve a round") {
  // 6c: Dillmont fig. 442 P: ch 6 ring; 12; then 3-in-1 at six corners: 24; 36 (derived)
  CHECK(counts_of("Honeycomb\n\nCh 6, join with sl st to form a ring.\nRnd 1: 12 sc in ring (12)\n"
                  "Rnd 2: (sc, 3 sc in next st) x 6 (24)\nRnd 3: (3 sc, 3 sc in next st) x 6 (36)\n") ==
        Counts{12, 24, 36});
}

TEST_CASE("The typed square adds eight a round") {
  // 6c: Dillmont fig. 441 P: ch 4 ring; 12; then 3-in-1 at four corners (adds 8 a round, derived)
  CHECK(counts_of("Pond\n\nCh 4, join with sl st to form a ring.\nRnd 1: 12 sc in ring (12)\n"
                  "Rnd 2: (2 sc, 3 sc in next st) x 4 (20)\nRnd 3: (4 sc, 3 sc in next st) x 4 (28)\n") ==
        Counts{12, 20, 28});
}

TEST_CASE("A hat's crown begins with three chains that count and fifteen doubles") {
  // 6c: Fryer 1918 pp. 206-207 via course S: ch 3 + 15 = 16 in ring, chain counted
  CHECK(
      counts_of(
          "Cap\n\nRnd 1: Ch 3 (counts as dc), 15 dc in magic ring, join with sl st to top of ch 3 (16)\n") ==
      Counts{16});
}

TEST_CASE("A hood begins with three chains for a stitch and nineteen doubles") {
  // 6c: Handbook 1918 P: ch 3 for a stitch + 19 in ring = 20
  CHECK(
      counts_of(
          "Hood\n\nRnd 1: Ch 3 (counts as dc), 19 dc in magic ring, join with sl st to top of ch 3 (20)\n") ==
      Counts{20});
}

TEST_CASE("Decreases, clusters and shells use and make as printed") {
  // 6a, stitch arithmetic: Ntog uses N, makes 1; bobble, puff, popcorn use 1, make 1; inc uses 1, makes 2
  CHECK(counts_of(
            "Cone\n\nRnd 1: 12 sc in MR (12)\nRnd 2: sc2tog x 6 (6)\nRnd 3: bo x 6 (6)\nRnd 4: puff x 6 (6)\n"
            "Rnd 5: pc x 6 (6)\nRnd 6: inc x 6 (12)\nRnd 7: sc3tog x 4 (4)\nRnd 8: 5 dc in each st around "
            "(20)\n") == Counts{12, 6, 6, 6, 6, 12, 4, 20});
}
