#include "stitch/moves.hpp"

#include "stitch/kind.hpp"

#include <catch2/catch.hpp>

using namespace whorl::stitch;
using Stages = std::vector<int>;

namespace {

Stages stages(std::string_view row) {
  const auto moves = parse_moves(row);
  REQUIRE(moves);
  const auto loops = loops_on_hook(*moves);
  REQUIRE(loops);
  return *loops;
}

/// Loops on the hook of a standard kind, stage by stage.
Stages stages_of(std::string_view name) {
  const auto kind = find_kind(standard_kinds(), name);
  REQUIRE(kind);
  return stages(standard_kinds()[*kind].moves);
}

Stages stages_of_together(std::string_view base, int n) {
  const auto kind = together(standard_kinds()[*find_kind(standard_kinds(), base)], n);
  REQUIRE(kind);
  return stages(kind->moves);
}

} // namespace

TEST_CASE("A row of moves is read and shown as the same row") {
  const auto moves = parse_moves("(o i d p2)2 p3");
  REQUIRE(moves);
  CHECK(show(*moves) == "o i d p2 o i d p2 p3");
  CHECK(parse_moves(show(*moves)) == moves);
}

TEST_CASE("Blanks between moves do not matter") {
  CHECK(parse_moves(" (oidp2)2p3 ") == parse_moves("( o i d p2 )2 p3"));
}

TEST_CASE("A row that is not well formed is not read") {
  for (const char* row :
       {"", "  ", "q", "i d p", "p0", "p2 (", "(i d", "i d)2", "(i d)", "()2", "i d p1000", "I D P2"}) {
    CAPTURE(row);
    CHECK_FALSE(parse_moves(row));
  }
}

TEST_CASE("Brackets in brackets do not grow without bound") {
  CHECK(parse_moves("((i d)10 p*)10"));
  CHECK_FALSE(parse_moves("((((((c)999)999)999)999)999)999"));
  CHECK_FALSE(parse_moves("((((((c)9)9)9)9)9)9"));
}

TEST_CASE("A move that needs more loops than there are is refused") {
  CHECK_FALSE(loops_on_hook(*parse_moves("i d p3")));
  CHECK_FALSE(loops_on_hook(*parse_moves("x x")));
  CHECK_FALSE(loops_on_hook(*parse_moves("e")));
  CHECK_FALSE(loops_on_hook(*parse_moves("x c")));
}

TEST_CASE("Every standard kind comes down to one loop") {
  for (const StitchKind& kind : standard_kinds()) {
    CAPTURE(kind.name);
    const auto moves = parse_moves(kind.moves);
    REQUIRE(moves);
    CHECK(loops_at_end(*moves) == 1);
  }
}

// Loops on the hook: trade-facts.md 6a, source behind each.

TEST_CASE("A chain keeps one loop on the hook") {
  CHECK(stages_of("ch") == Stages{1});
} // Dillmont, Handbook 1918 P

TEST_CASE("A slip stitch is drawn through the work and the loop") {
  CHECK(stages_of("sl st") == Stages{1}); // Beeton ill. 219 P
}

TEST_CASE("A single crochet has 2, 1 loops") {
  CHECK(stages_of("sc") == Stages{2, 1});
} // Handbook (its "double") P

TEST_CASE("A half double crochet has 3 loops, then 1") {
  CHECK(stages_of("hdc") == Stages{3, 1}); // Handbook, Beeton ill. 225, Dillmont fig. 415 P
}

TEST_CASE("A double crochet has 3, 2, 1 loops") { CHECK(stages_of("dc") == Stages{3, 2, 1}); } // Handbook P

TEST_CASE("A treble has 4, 3, 2, 1 loops") { CHECK(stages_of("tr") == Stages{4, 3, 2, 1}); } // Handbook P

TEST_CASE("A double treble has 5, 4, 3, 2, 1 loops") {
  CHECK(stages_of("dtr") == Stages{5, 4, 3, 2, 1});
} // Handbook P

TEST_CASE("A triple treble goes from 6 loops down to 1") {
  CHECK(stages_of("trtr") == Stages{6, 5, 4, 3, 2, 1}); // Handbook rule P
}

TEST_CASE("An extended single crochet has 2, 2, 1 loops") {
  CHECK(stages_of("esc") == Stages{2, 2, 1}); // trantor.is Glossary (a US crochet book) S
}

TEST_CASE("Two single crochets together have 2, 3, 1 loops") {
  CHECK(stages_of("sc2tog") == Stages{2, 3, 1}); // trantor.is Glossary S
}

TEST_CASE("Three single crochets together have 2, 3, 4, 1 loops") {
  CHECK(stages_of("sc3tog") == Stages{2, 3, 4, 1}); // trantor.is Glossary S
}

TEST_CASE("Two double crochets together have 3, 2, 4, 3, 1 loops") {
  CHECK(stages_of("dc2tog") == Stages{3, 2, 4, 3, 1}); // crochet.com; crochetparfait S
}

TEST_CASE("Four double crochets have 5 loops before they are closed") {
  const Stages loops = stages_of_together("dc", 4); // 4-dc cluster: 5 loops, dummies.com S
  CHECK(loops[loops.size() - 2] == 5);
  CHECK(loops.back() == 1);
}

TEST_CASE("Three partial double crochets leave 2, 3, 4 loops") {
  const Stages loops = stages_of_together("dc", 3); // Beeton ill. 232 P
  CHECK(Stages{loops[1], loops[3], loops[5]} == Stages{2, 3, 4});
}

TEST_CASE("A bobble of five has 6 loops before it is closed") {
  const Stages loops = stages_of("bo"); // squishyandco.com, crochetpedia.com S
  CHECK(loops[loops.size() - 2] == 6);
}

TEST_CASE("Six partial double crochets leave 7 loops") {
  const Stages loops = stages("(o i d p2)6 p7"); // Dillmont fig. 430 P
  CHECK(loops[loops.size() - 2] == 7);
}

TEST_CASE("A puff of five has 11 loops before it is closed") {
  CHECK(stages("(o i d)5 p*") == Stages{3, 5, 7, 9, 11, 1}); // irarott.com (k=5, so 11) S
}

TEST_CASE("A bean of two has 5 loops before it is closed") {
  CHECK(stages("(o i d)2 p*") == Stages{3, 5, 1}); // Handbook "bean" k=2: 5 P
}

TEST_CASE("A popcorn is complete stitches and ends with one loop") {
  // cherryheartcrochet.co.uk, newstitchaday.com S: five complete dc, then the dropped loop is drawn through
  CHECK(stages_of("pc") == Stages{3, 2, 1, 3, 2, 1, 3, 2, 1, 3, 2, 1, 3, 2, 1});
}

TEST_CASE("A shell of n is n complete double crochets") {
  const Stages loops = stages("(o i d p2 p2)7"); // Dillmont fig. 433 (seven trebles) P
  CHECK(loops.size() == 21);
  CHECK(loops.back() == 1);
}

TEST_CASE("A picot of three chains ends with one loop") {
  CHECK(stages("c c c i* p1") == Stages{1, 1, 1, 1}); // crochetpedia.com; ronique.net guide 5 S
}

TEST_CASE("An invisible decrease has 3 loops, then 2, then 1") {
  const Stages loops = stages_of("invdec"); // 53stitches.com, theodoreandrose.com, hobbycraft.co.uk S, 2+
  CHECK(Stages(loops.begin() + 1, loops.end()) == Stages{3, 2, 1});
}

TEST_CASE("With k wraps there are k + 2 loops after drawing up and k + 1 pulls") {
  const char* names[] = {"dc", "tr", "dtr", "trtr"}; // trade-facts.md 6a, derived
  for (int k = 1; k <= 4; ++k) {
    const Stages loops = stages_of(names[k - 1]);
    CHECK(loops.front() == k + 2);
    CHECK(static_cast<int>(loops.size()) == 1 + (k + 1));
  }
}
