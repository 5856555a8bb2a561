#include "pattern/tree.hpp"

#include <catch2/catch.hpp>

using namespace whorl::pattern;

namespace {

Tree acorn() {
  Tree tree;
  tree.title = "Acorn";
  tree.kinds.resize(1);
  tree.kinds[0].name = "sc";
  tree.parts = {Part{"Nut", "", 1, 0, {}}, Part{"Cap", "make 2", 2, 1, {}}};
  Node repeat;
  repeat.kind = NodeKind::repeat;
  repeat.work.to_end = true;
  repeat.child = 1;
  Node work;
  work.kind = NodeKind::work;
  work.work.in_one = 2;
  work.work.loops = whorl::stitch::back;
  tree.nodes = {repeat, work};
  RoundText nut;
  nut.from = nut.to = 1;
  RoundText cap;
  cap.part = 1;
  cap.from = 6, cap.to = 8;
  cap.body = 0;
  cap.effect.pass_uses = 1, cap.effect.pass_makes = 2;
  cap.stated.push_back({12, Unit::any, whorl::stitch::no_kind, {}});
  tree.rounds = {nut, cap};
  Placing stuff;
  stuff.what = What::stuff;
  stuff.after_round = 1;
  stuff.text = "Stuff.";
  tree.placings = {stuff};
  return tree;
}

} // namespace

TEST_CASE("the rounds of a part end where those of the next begin") {
  CHECK(end_round(acorn(), 0) == 1);
  CHECK(end_round(acorn(), 1) == 2);
}

TEST_CASE("a tree is shown as its author built it, one node a line") {
  CHECK(show(acorn()) == "title Acorn\n"
                         "part Nut x 1\n"
                         "  round 1: uses 0, makes 0\n"
                         "  stuff: Stuff.\n"
                         "part Cap x 2 (make 2)\n"
                         "  round 6-8: uses 0, makes 0, a pass 1 to 2, stated 12\n"
                         "    repeat to the end\n"
                         "      sc (2 in one) in back x 1\n");
}
