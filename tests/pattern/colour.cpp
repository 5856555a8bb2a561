#include "pattern/colour.hpp"

#include "pattern/read.hpp"

#include <catch2/catch.hpp>

#include <sstream>

using namespace whorl;
using namespace whorl::pattern;

namespace {

const words::Vocabulary& english() { return *words::find_vocabulary("en-US"); }

void tell(const Tree& tree, NodeId id, std::string& text) {
  for (; id != no_node; id = tree.nodes[id].next) {
    const Node& node = tree.nodes[id];
    const bool stitch = node.kind == NodeKind::work && node.work.act == Act::stitch;
    if (stitch || node.kind == NodeKind::yarn)
      text += (node.work.yarn == 0 ? std::string("-") : tree.yarns[node.work.yarn - 1U]) + " ";
    tell(tree, node.child, text);
  }
}

/// In which yarn the pieces of a round of six stitches are worked: "white brown ".
std::string yarns_of(const std::string& work, const std::string& materials = "") {
  const Tree tree =
      read(Source("Slug\n\n" + materials + "Rnd 1: 6 sc in MR (6)\nRnd 2: " + work + "\n"), english()).tree;
  std::string text;
  tell(tree, tree.nodes[tree.rounds.back().body].child, text);
  return text;
}

} // namespace

TEST_CASE("a colour or letter before a piece holds until another is told") {
  CHECK(yarns_of("(white) 3 sc, (brown) 2 sc, sc (6)") == "white brown brown ");
  CHECK(yarns_of("white: 3sc, brown: 3sc (6)") == "white brown ");
  CHECK(yarns_of("[A] 3 sc, [B] 3 sc (6)") == "A B ");
  CHECK(yarns_of("with A 3 sc, with B 3 sc (6)") == "A B ");
  CHECK(yarns_of("A: 3 sc, B: 3 sc (6)") == "A B ");
  CHECK(yarns_of("sc 2, B sc 3, A sc (6)") == "- B A ");
  CHECK(yarns_of("A 3 sc, B 3 sc (6)") == "A B ");
  CHECK(yarns_of("with C1 3 sc, with C2 3 sc (6)") == "C1 C2 ");
  CHECK(yarns_of("using dark brown, 3 sc, using white, 3 sc (6)") == "dark brown white ");
}

TEST_CASE("what the materials call a yarn is a colour wherever a piece is told to be in it") {
  for (const char* work : {"bark: 3 sc, moss: 2 sc, bark: sc (6)", "bark 3 sc, moss 2 sc, bark 1 sc (6)",
                           "3 sc (bark), 2 sc (moss), sc (bark) (6)", "3 sc bark, 2 sc moss, 1 sc bark (6)"})
    CHECK(yarns_of(work, "Yarn: bark (A), moss (B)\n\n") == "bark moss bark ");
}

TEST_CASE("a colour behind a piece is that of this piece") {
  CHECK(yarns_of("3 sc in white, 3 sc in brown (6)") == "white brown ");
  CHECK(yarns_of("2 sc in white, 4 sc (6)") == "white - ");
}

TEST_CASE("behind a change of yarn within a line the new one holds") {
  CHECK(yarns_of("3 sc, changing to B in last pull-through, 3 sc (6)") == "- B ");
  CHECK(yarns_of("3 sc, [color change to white] 3 sc (6)") == "- white ");
  CHECK(yarns_of("3 sc (change to B), 3 sc (6)") == "- B ");
}

TEST_CASE("a colour at the head of a line holds for all of it") {
  CHECK(yarns_of("In brown, sc around (6)") == "brown ");
  CHECK(yarns_of("(sc, inc) x 3 in brown (9)") == "brown brown ");
}

TEST_CASE("a yarn is told within a repeat") {
  CHECK(yarns_of("(with A sc in next st, with B sc in next st) x 3 (6)") == "A B ");
}

TEST_CASE("a yarn that comes in with the joining slip stitch holds from there on") {
  CHECK(yarns_of("6 sc, sl st to first sc with black (6)") == "- black ");
}

TEST_CASE("a magic circle is no yarn") {
  const Tree tree = read(Source("Slug\n\nRnd 1: 6 sc in MC (6)\n"), english()).tree;
  CHECK(tree.yarns.empty());
}

TEST_CASE("a colour before the work is no word of the pattern's own") {
  CHECK(yarns_of("brown: inc, white: inc x 3, brown: 2sc (10)") == "brown white brown ");
}

TEST_CASE("a yarn may stand between the stitch and its number, and behind a number alone") {
  CHECK(yarns_of("sc B 4, A 2 (6)") == "B A ");
  CHECK(yarns_of("sc white 4, brown 2 (6)") == "white brown ");
  CHECK(yarns_of("4 B, 2 A (6)") == "B A ");
  CHECK(yarns_of("4 B, 2 A") == "B A ");
}
