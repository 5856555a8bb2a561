#include "stitch/kind.hpp"

#include "stitch/moves.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace whorl::stitch;

namespace {

StitchKind kind_of(std::string_view name) {
  const auto kind = find_kind(standard_kinds(), name);
  REQUIRE(kind);
  return standard_kinds()[*kind];
}

Shape shape(std::string_view name) { return shape_of(kind_of(name)); }

Shape shape_of_row(const char* moves) {
  StitchKind kind;
  kind.moves = moves;
  return shape_of(kind);
}

} // namespace

TEST_CASE("Every standard kind has a name and a title of its own") {
  std::set<std::string> names, titles;
  for (const StitchKind& kind : standard_kinds()) {
    names.insert(kind.name);
    titles.insert(kind.title);
  }
  CHECK(names.size() == standard_kinds().size());
  CHECK(titles.size() == standard_kinds().size());
}

TEST_CASE("A name that no row has is not found") { CHECK_FALSE(find_kind(standard_kinds(), "moss")); }

TEST_CASE("Heights follow the ladder of turning chains") {
  // 1918 Handbook, section A Lesson in Crochet (P); dummies.com table 0-1-2-3-4-5 (S)
  const char* ladder[] = {"sl st", "sc", "hdc", "dc", "tr", "dtr"};
  for (int chains = 0; chains < 6; ++chains) CHECK(shape(ladder[chains]).height == chains);
}

TEST_CASE("A triple treble is six chains high") { CHECK(shape("trtr").height == 6); } // crochetforall.com (S)

TEST_CASE("Stitches together are as high as one of them") {
  for (const char* base : {"sc", "hdc", "dc", "tr", "dtr", "esc", "ehdc"}) {
    CAPTURE(base);
    CHECK(shape(std::string(base) + "2tog").height == shape(base).height);
    CHECK(shape(std::string(base) + "3tog").height == shape(base).height);
  }
}

TEST_CASE("A puff is two chains high and a bobble three") {
  CHECK(shape("puff").height == 2);
  CHECK(shape("bo").height == 3);
}

TEST_CASE("An invisible decrease is as high as a single crochet") { CHECK(shape("invdec").height == 1); }

TEST_CASE("Slashes are the wraps from the double crochet upward") {
  // CYC via course: dc one, tr two, dtr three; hdc exception: no slash (trade-facts.md 1a)
  CHECK(shape("hdc").slashes == std::vector<int>{0});
  CHECK(shape("dc").slashes == std::vector<int>{1});
  CHECK(shape("tr").slashes == std::vector<int>{2});
  CHECK(shape("dtr").slashes == std::vector<int>{3});
}

TEST_CASE("A triple treble has four slashes") {
  CHECK(shape("trtr").slashes == std::vector<int>{4}); // derived from cozycrochet.ca rule
}

TEST_CASE("Every leg of double crochets together has its slash") {
  CHECK(shape("dc2tog").slashes == std::vector<int>{1, 1});
  CHECK(shape("dc3tog").slashes == std::vector<int>{1, 1, 1});
  CHECK(shape("tr2tog").slashes == std::vector<int>{2, 2});
}

TEST_CASE("The lines of a puff and of half doubles together have no slashes") {
  CHECK(shape("puff").slashes == std::vector<int>{0, 0, 0});
  CHECK(shape("hdc2tog").slashes == std::vector<int>{0, 0});
}

TEST_CASE("Complete half doubles in a popcorn have no slashes") {
  CHECK(shape_of_row("(o i d p3)4 x i* e").slashes == std::vector<int>{0, 0, 0, 0});
}

TEST_CASE("Every double crochet of a popcorn has its slash") {
  CHECK(shape("pc").slashes == std::vector<int>(5, 1));
}

TEST_CASE("A cross has no wrap and a bar has one") {
  // CYC via course: sc plus or saltire, no top bar; hdc T
  CHECK((shape("sc").cross && !shape("sc").bar));
  CHECK((shape("hdc").bar && !shape("hdc").cross));
  CHECK((shape("sc2tog").cross && !shape("sc2tog").bar));
}

TEST_CASE("Neither a chain nor a slip stitch has a cross or a bar") {
  for (const char* name : {"ch", "sl st"}) CHECK_FALSE((shape(name).cross || shape(name).bar));
}

TEST_CASE("A chain has no leg") { CHECK(shape("ch").legs == 0); }

TEST_CASE("An invisible decrease is a cross on two front loops") {
  CHECK(shape("invdec").cross);
  CHECK(shape("invdec").legs == 2);
  CHECK(shape("invdec").front_loops_only);
}

TEST_CASE("A decrease has its feet apart, a bobble joined") {
  CHECK_FALSE(shape("sc2tog").feet_joined);
  CHECK_FALSE(shape("invdec").feet_joined);
  CHECK(shape("bo").feet_joined);
  CHECK(shape("puff").feet_joined);
}

TEST_CASE("A popcorn is capped by an oval, a bobble closed by a bar") {
  CHECK(shape("pc").close == Close::oval); // techinfus.com S
  CHECK(shape("bo").close == Close::bar);
}

TEST_CASE("An extended stitch stands on a stem") {
  CHECK(shape("esc").stems == 1);
  CHECK(shape("sc").stems == 0);
  CHECK(shape("sl st").stems == 0);
}

TEST_CASE("An extended stitch is a chain higher than the plain one") {
  CHECK(shape("esc").height == 2);
  CHECK(shape("edc").height == 4);
}

TEST_CASE("N together use N and make one") {
  // Stitch arithmetic, trade-facts.md 6a
  for (int n : {2, 3, 5}) {
    const auto kind = together(kind_of("dc"), n);
    REQUIRE(kind);
    CHECK(kind->takes == n);
    CHECK(kind->makes == 1);
    CHECK(shape_of(*kind).legs == n);
  }
}

TEST_CASE("A bobble, puff or popcorn uses one and makes one") {
  for (const char* name : {"bo", "puff", "pc"}) { // stitch arithmetic, trade-facts.md 6a
    CHECK(kind_of(name).takes == 1);
    CHECK(kind_of(name).makes == 1);
  }
}

TEST_CASE("Neither a chain nor a slip stitch counts as a stitch") {
  for (const StitchKind& kind : standard_kinds())
    CHECK(kind.counts == (kind.name != "ch" && kind.name != "sl st"));
}

TEST_CASE("Stitches together are named and made from the plain one") {
  const auto kind = together(kind_of("hdc"), 4);
  REQUIRE(kind);
  CHECK(kind->name == "hdc4tog");
  CHECK(kind->title == "half double crochet 4 together");
  CHECK(loops_at_end(*parse_moves(kind->moves)) == 1);
}

TEST_CASE("What is not closed by a pull through all cannot be worked together") {
  for (const char* name : {"ch", "sl st", "pc", "bo", "invdec", "sc2tog"}) {
    CAPTURE(name);
    CHECK_FALSE(together(kind_of(name), 2));
  }
}

TEST_CASE("Only 2 to 20 stitches are worked together") {
  CHECK_FALSE(together(kind_of("sc"), 1));
  CHECK(together(kind_of("sc"), 20));
  CHECK_FALSE(together(kind_of("sc"), 21));
}

TEST_CASE("A row that cannot be read has an empty shape") {
  StitchKind kind;
  kind.moves = "?";
  CHECK(shape_of(kind) == Shape{});
}
