#include "pattern/own_stitch.hpp"

#include "stitch/moves.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

namespace {

const words::Vocabulary& english() { return *words::find_vocabulary("en-US"); }

stitch::StitchKind kind_of(std::string_view name, std::string_view text, const char* language = "en-US") {
  const auto own =
      own_stitch(name, family_of(name), text, *words::find_vocabulary(language), stitch::standard_kinds());
  return own ? own->kind : stitch::StitchKind{};
}

int loops_left(std::string_view name, std::string_view text) {
  const auto own = own_stitch(name, family_of(name), text, english(), stitch::standard_kinds());
  return own ? own->left : -1;
}

/// Two rows of moves are the same moves.
bool same_moves(const std::string& a, const std::string& b) {
  return stitch::parse_moves(a) && stitch::parse_moves(a) == stitch::parse_moves(b);
}

} // namespace

TEST_CASE("a stitch told move by move is its moves") {
  CHECK(told_moves("insert hook, pull up a loop, yo, pull through 2 loops").moves == "i d p2");
  CHECK(told_moves("Yarn over, insert hook, yo and pull up a loop, yo and draw through all three loops")
            .moves == "o i d p3");
  CHECK(told_moves("hook in, draw up a loop, yrh and draw through both loops").moves == "i d p2");
}

TEST_CASE("moves in brackets are told so many times") {
  CHECK(told_moves(
            "[yo, insert hook, pull up a loop] 3 times in one stitch, yo and pull through all loops on hook")
            .moves == "(o i d)3 p*");
}

TEST_CASE("inserting the hook is one move, however it is said") {
  CHECK(told_moves(
            "[Yo, insert your hook in next st and draw up a lp, yo and draw through 2 lps on hook] 4 times "
            "all in same st, yo and draw through all 5 lps on hook")
            .left == 1);
}

TEST_CASE("moves tell how many loops are left") {
  CHECK(told_moves("yo, insert hook, pull up a loop, yo, pull through 2 loops").left == 2);
  CHECK(told_moves("insert hook, pull up a loop, yo, pull through 4 loops").left == 0);
}

TEST_CASE("words without an insertion tell no moves") {
  CHECK(told_moves("leave 5 loops on the hook").moves.empty());
}

TEST_CASE("a bobble has as many legs as are said") {
  CHECK(same_moves(kind_of("bobble", "4 dc in same st, joined").moves, "(o i d p2)4 p5"));
  CHECK(same_moves(
      kind_of("bobble", "[Yarn over, insert hook, pull up a loop, yarn over, pull through 2 loops] 4 times "
                        "in the same stitch, yarn over, pull through all 5 loops.")
          .moves,
      "(o i d p2)4 p5"));
}

TEST_CASE("a bobble is of the stitches that the pattern's terms name") {
  CHECK(same_moves(
      kind_of("MB (make bobble)", "4 tr into same st leaving last loop of each on hook", "en-GB").moves,
      "(o i d p2)4 p5"));
}

TEST_CASE("a bobble takes one place and makes one stitch") {
  const stitch::StitchKind bobble = kind_of("bobble", "3 dc in same st, closed together");
  CHECK(bobble.takes == 1);
  CHECK(bobble.makes == 1);
  CHECK(bobble.own);
}

TEST_CASE("a popcorn is of so many whole stitches, joined by the first") {
  CHECK(kind_of("popcorn", "4 dc in one stitch, drop the loop").moves == "(o i d p2 p2)4 x i* e");
}

TEST_CASE("a puff is of so many loops") {
  CHECK(same_moves(
      kind_of("puff", "[yo, insert hook, pull up a long loop] 4 times in one stitch, yo, pull through all "
                      "loops on hook")
          .moves,
      "(o i d)4 p*"));
}

TEST_CASE("a stitch whose words do not say how many is the usual one") {
  CHECK(kind_of("bobble", "like a little ball").moves == "(o i d p2)5 p6");
}

TEST_CASE("a loop stitch takes one and makes one") {
  const stitch::StitchKind loop = kind_of("loop stitch", "wrap the yarn over your finger, grab both strands");
  CHECK(loop.takes == 1);
  CHECK(loop.makes == 1);
  CHECK(stitch::loops_at_end(*stitch::parse_moves(loop.moves)) == 1);
}

TEST_CASE("a picot is counted as nothing") {
  const stitch::StitchKind picot = kind_of("picot", "ch 4, sl st in first ch");
  CHECK(picot.makes == 0);
  CHECK_FALSE(picot.counts);
  CHECK(same_moves(picot.moves, "c c c c i* p1"));
}

TEST_CASE("a stitch of a name of her own is what its moves are") {
  const stitch::StitchKind own =
      kind_of("moss st", "insert hook, pull up a loop, yo, pull through 1 loop, yo, pull "
                         "through 2 loops");
  CHECK(own.name == "moss st");
  CHECK(same_moves(own.moves, "i d p1 p2"));
}

TEST_CASE("words that leave loops on the hook are told") {
  CHECK(loops_left("puff", "yo, insert hook, pull up a loop, yo, pull through 2 loops") == 2);
}

TEST_CASE("words that explain no stitch are none") {
  CHECK_FALSE(own_stitch("moss", Family::none, "green yarn", english(), stitch::standard_kinds()));
}

TEST_CASE("a group between stars is told so many times") {
  CHECK(same_moves(
      told_moves("*yo, insert hook, pull up a loop, yo, pull through 2 loops* 5 times in the same stitch, "
                 "yo, pull through all 6 loops on hook")
          .moves,
      "(o i d p2)5 p6"));
}

TEST_CASE("a number of times directly behind a yarn over is of it alone") {
  CHECK(told_moves("yo twice, insert hook, pull up a loop, (yo, pull through 2 loops) 3 times").moves ==
        "o o i d (p2)3");
  CHECK(told_moves("yarn over 3 times, insert hook, pull up a loop, (yo, pull through 2) 4 times").left == 1);
}

TEST_CASE("a chain in the middle of a stitch lengthens it, one behind it is no move of it") {
  CHECK(told_moves("insert hook, pull up a loop, ch 1, yo, pull through 2 loops").moves == "i d p1 p2");
  CHECK(told_moves("insert hook, pull up a loop, yo, pull through 2 loops, ch 1").moves == "i d p2");
}

TEST_CASE("yarn under is a yarn over as far as loops go") {
  CHECK(told_moves("insert hook, yarn under, pull up a loop, yarn over, pull through 2").moves == "i d p2");
}

TEST_CASE("insertions into the next stitch take as many stitches") {
  const ToldMoves apart = told_moves("insert hook, pull up a loop, insert hook in the next stitch, pull up a "
                                     "loop, yo, pull through all three loops");
  CHECK((apart.places == 2 && apart.legs == 2));
  const ToldMoves group =
      told_moves("(yo, insert hook in next st, pull up a loop) 3 times, yo, pull through all 7 loops");
  CHECK((group.places == 3 && group.legs == 3));
  const ToldMoves same = told_moves(
      "(yo, insert hook in next st, pull up a loop) 3 times in the same st, yo, pull through all 7 loops");
  CHECK((same.places == 1 && same.legs == 3));
}

TEST_CASE("a stitch told in moves uses the stitches that it goes into") {
  CHECK(
      kind_of("Knot",
              "insert hook, pull up a loop, insert hook in the next stitch, pull up a loop, yo, pull through "
              "all three loops")
          .takes == 2);
  CHECK(kind_of("Puff", "(yo, insert hook in next st, pull up a loop) 3 times, yo, pull through all 7 loops")
            .takes == 1);
}

TEST_CASE("moves that leave loops on the hook are closed through all of them") {
  CHECK(loops_left("Bud", "(yo, insert hook, pull up a loop, yo, pull through 2 loops) 3 times") == 4);
  const auto moves = stitch::parse_moves(
      kind_of("Bud", "(yo, insert hook, pull up a loop, yo, pull through 2 loops) 3 times").moves);
  REQUIRE(moves);
  CHECK(stitch::loops_at_end(*moves) == 1);
}
