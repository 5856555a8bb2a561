#include "writing/telling.hpp"

#include "writing/wording.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using Lines = std::vector<std::string>;

namespace {

const std::string tall = "Fern\n\nRnd 1: 12 dc in magic ring (12)\nRnd 2: dc in each st around (12)\n";
const std::string nut = "Hazelnut\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n"
                        "Rnd 3: (sc, inc) x 6 (18)\nRnd 4: (sc, dec) x 6 (12)\n";

pattern::Tree tree_with(const char* kind) {
  pattern::Tree tree;
  tree.kinds = stitch::standard_kinds();
  const auto found = stitch::find_kind(tree.kinds, kind);
  REQUIRE(found);
  return tree;
}

writing::ToldStitch tell_kind(const pattern::Tree& tree, const writing::Used& used) {
  return writing::tell(used, tree, wording::terms_of(tree), wording::english());
}

writing::ToldStitch tell_kind(const char* kind) {
  const pattern::Tree tree = tree_with(kind);
  return tell_kind(tree, {*stitch::find_kind(tree.kinds, kind)});
}

Lines sentences(const writing::ToldStitch& told) {
  Lines lines;
  for (const writing::ToldMove& move : told.moves) lines.push_back(move.sentence);
  return lines;
}

} // namespace

TEST_CASE("A double crochet is told with the loops on the hook") {
  CHECK(wording::sentences(tall, "dc") ==
        Lines{"Yarn over: 2 loops on the hook.", "Insert the hook into the next stitch.",
              "Yarn over and draw up a loop: 3 loops on the hook.",
              "Yarn over and draw through 2 loops: 2 loops on the hook.",
              "Yarn over and draw through both loops: 1 loop on the hook."});
}

TEST_CASE("A slip stitch is drawn through the stitch and the loop") {
  CHECK(sentences(tell_kind("sl st")) ==
        Lines{"Insert the hook into the next stitch.",
              "Yarn over and draw through the stitch and the loop on the hook: 1 loop on the hook."});
}

TEST_CASE("A chain is one move") {
  CHECK(sentences(tell_kind("ch")) ==
        Lines{"Yarn over and draw through the loop on the hook: 1 loop on the hook."});
}

TEST_CASE("A treble begins with two wraps") {
  CHECK(sentences(tell_kind("tr")).front() == "Yarn over twice: 3 loops on the hook.");
}

TEST_CASE("A decrease says where its second leg goes") {
  CHECK(sentences(tell_kind("sc2tog")) ==
        Lines{"Insert the hook into the next stitch.", "Yarn over and draw up a loop: 2 loops on the hook.",
              "Insert the hook into the next stitch.", "Yarn over and draw up a loop: 3 loops on the hook.",
              "Yarn over and draw through all 3 loops: 1 loop on the hook."});
}

TEST_CASE("An invisible decrease takes front loops") {
  CHECK(sentences(tell_kind("invdec")) ==
        Lines{"Insert the hook through the front loop of the next stitch: 2 loops on the hook.",
              "Insert the hook through the front loop of the next stitch: 3 loops on the hook.",
              "Yarn over and draw through 2 loops: 2 loops on the hook.",
              "Yarn over and draw through both loops: 1 loop on the hook."});
}

TEST_CASE("A bobble tells its passes as a repeat") {
  const Lines lines = sentences(tell_kind("bo"));
  REQUIRE(lines.size() == 6);
  CHECK(lines[4] ==
        "Repeat moves 1–4 four more times into the same stitch: 3, 4, 5, 6 loops on the hook, one "
        "time after the other.");
  CHECK(lines[5] == "Yarn over and draw through all 6 loops: 1 loop on the hook.");
}

TEST_CASE("A popcorn drops its loop and draws it through the first stitch") {
  const Lines lines = sentences(tell_kind("pc"));
  REQUIRE(lines.size() == 9);
  CHECK(lines[5] ==
        "Repeat moves 1–5 four more times into the same stitch: 1 loop on the hook after each time.");
  CHECK(lines[6] == "Take the hook out of the last loop and let it wait: no loop on the hook.");
  CHECK(lines[7] == "Insert the hook into the top of the first stitch of the group.");
  CHECK(lines[8] == "Catch the loop that waits and draw it through: 1 loop on the hook.");
}

TEST_CASE("An increase goes back into the same stitch") {
  const Lines lines = wording::sentences(nut, "inc");
  REQUIRE(lines.size() == 6);
  CHECK(lines[0] == "Insert the hook into the next stitch.");
  CHECK(lines[3] == "Insert the hook into the same stitch.");
}

TEST_CASE("A front post stitch goes round the post") {
  const pattern::Tree tree = tree_with("dc");
  const writing::ToldStitch told =
      tell_kind(tree, {*stitch::find_kind(tree.kinds, "dc"), 1, pattern::Into::front_post});
  CHECK(told.name == "FPdc");
  CHECK(told.title == "front post double crochet");
  CHECK(sentences(told)[1] ==
        "Insert the hook from the front, behind the post of the next stitch and out to the front again.");
}

TEST_CASE("After the hook is round the post, a post stitch is the plain stitch") {
  // trade-facts.md 6a, FP / BP: learntocrochetcalgary.ca (CYC afghan article) S
  const pattern::Tree tree = tree_with("tr");
  const stitch::KindId kind = *stitch::find_kind(tree.kinds, "tr");
  const Lines plain = sentences(tell_kind(tree, {kind}));
  for (const pattern::Into into : {pattern::Into::front_post, pattern::Into::back_post}) {
    const Lines post = sentences(tell_kind(tree, {kind, 1, into}));
    REQUIRE(post.size() == plain.size());
    for (std::size_t i = 0; i < plain.size(); ++i) CHECK((post[i] == plain[i]) == (i != 1));
  }
}

TEST_CASE("A stitch of the pattern's own is told from its row") {
  pattern::Tree tree = tree_with("sc");
  stitch::StitchKind moss;
  moss.name = "moss bump";
  moss.moves = "(o i d)2 p4 p2";
  moss.own = true;
  tree.kinds.push_back(moss);
  const auto kind = static_cast<stitch::KindId>(tree.kinds.size() - 1);
  const writing::ToldStitch told = tell_kind(tree, {kind});
  CHECK(told.name == "moss bump");
  CHECK(sentences(told)[6] == "Yarn over and draw through 4 loops: 2 loops on the hook.");
}

TEST_CASE("A row that does not come out is told to be broken") {
  pattern::Tree tree = tree_with("sc");
  tree.kinds.front().moves = "i d p7";
  const writing::ToldStitch told = tell_kind(tree, {0});
  CHECK(told.moves.empty());
  CHECK(writing::as_text(told, wording::english()).find("do not come out") != std::string::npos);
}

TEST_CASE("What a stitch uses and makes, its height and its turning chain are said") {
  CHECK(tell_kind("dc").facts ==
        Lines{"Uses 1 stitch, makes 1 stitch.", "As high as 3 chains.", "Turning chain: 3.",
              "It counts as the first stitch unless the pattern says otherwise.",
              "Into a starting chain: the first goes into the 4th chain from the hook."});
  CHECK(tell_kind("sc2tog").facts == Lines{"Uses 2 stitches, makes 1 stitch.", "As high as 1 chain."});
  CHECK(tell_kind("ch").facts == Lines{"Uses no stitch and counts as none."});
}

TEST_CASE("A pattern in UK terms is told in UK terms") {
  const std::string text = "Fern\nUK terms\n\nRnd 1: 12 tr in magic ring (12)\nRnd 2: (tr, tr2tog) x 4 (8)\n";
  const std::vector<writing::ToldStitch> told = wording::told(text);
  REQUIRE(told.size() == 2);
  CHECK(told[0].name == "tr");
  CHECK(told[0].title == "treble crochet");
  CHECK(told[0].moves.front().sentence == "Yarn over hook: 2 loops on the hook.");
  CHECK(told[0].moves.size() == 5);
  CHECK(told[1].name == "tr2tog");
  CHECK(told[1].title == "treble crochet 2 together");
}

TEST_CASE("The text is a heading, the facts and numbered moves") {
  CHECK(
      writing::as_text(tell_kind("sc"), wording::english()) ==
      "single crochet (sc)\n"
      "Uses 1 stitch, makes 1 stitch. As high as 1 chain. Turning chain: 1. It does not count as a stitch "
      "unless the pattern says so. Into a starting chain: the first goes into the 2nd chain from the hook.\n"
      "\n"
      "   1. Insert the hook into the next stitch.\n"
      "   2. Yarn over and draw up a loop: 2 loops on the hook.\n"
      "   3. Yarn over and draw through both loops: 1 loop on the hook.\n");
}

TEST_CASE("No standard stitch lacks a word") {
  for (const stitch::StitchKind& kind : stitch::standard_kinds()) {
    const std::string text = writing::as_text(tell_kind(kind.name.c_str()), wording::english());
    CAPTURE(text);
    for (const char* id : {"move-", "loops-", "amount-", "height-", "turning-", "stitch-", "{"})
      CHECK(text.find(id) == std::string::npos);
  }
}
