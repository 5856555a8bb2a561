#include "told.hpp"

#include "stitch/kind.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl;
using namespace whorl::pattern;

namespace {

struct Own {
  stitch::StitchKind kind;
  std::string said;
  bool read = false;
};

/// What a sentence makes of a name that round 3 uses.
Own own(const std::string& sentence, const std::string& name, const std::string& work) {
  const Read read = read_text("Pine cone\n\nTerms: US\n" + sentence +
                              "\n\nCone\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: " + work + "\n");
  Own own;
  const auto id = stitch::find_kind(read.tree.kinds, name);
  if (id) own.kind = read.tree.kinds[*id];
  own.read = read.tree.rounds.back().read;
  for (const Finding& finding : read.findings)
    if (finding.severity != Severity::note) own.said += finding.message;
  return own;
}

} // namespace

TEST_CASE("a stitch explained in moves is called by its abbreviation and made so") {
  const Own thorn = own("Thorn stitch (thorn): Insert hook in next st, yo, pull up a loop, ch 3, yo and pull "
                        "through both loops.",
                        "thorn", "(sc, thorn) x 6 (12)");
  CHECK(thorn.read);
  CHECK(thorn.said.empty());
  CHECK(thorn.kind.own);
  CHECK(thorn.kind.title == "thorn stitch");
  CHECK(stitch::shape_of(thorn.kind).stems == 3);
}

TEST_CASE("a stitch explained over two stitches uses two") {
  const Own knot =
      own("Special stitch: Knot stitch (kn) - insert hook, pull up a loop, insert hook in the next "
          "stitch, pull up a loop, yo, pull through all three loops.",
          "kn", "(2 sc, kn) x 3 (9)");
  CHECK(knot.said.empty());
  CHECK(knot.kind.takes == 2);
}

TEST_CASE("an explanation that does not come down to one loop says what is missing") {
  const Own bud =
      own("Bud stitch (bud): yo, insert hook in next st, pull up a loop, yo, pull through 2 loops, (yo, "
          "insert hook in same st, pull up a loop, yo, pull through 2 loops) twice.",
          "bud", "(sc, bud) x 6 (12)");
  CHECK(bud.read);
  CHECK(bud.said ==
        "after these moves 4 loops are on the hook, and a stitch ends with one: `yo, pull through all 4 "
        "loops` is missing at their end");
}

TEST_CASE("a bobble explained between stars is whole") {
  CHECK(own("Bobble stitch (bo): *yo, insert hook, pull up a loop, yo, pull through 2 loops* 5 times in the "
            "same "
            "stitch, yo, pull through all 6 loops on hook.",
            "bo", "(sc, bo) x 6 (12)")
            .said.empty());
}
