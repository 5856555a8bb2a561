#include "pattern/technique.hpp"

#include "pattern/read.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using Texts = std::vector<std::string>;

namespace {

const std::string rounds = "Rnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 (18)\n"
                           "Rnd 4: sc in each st around (18)\nRnd 5: (sc, dec) x 6 (12)\n";

std::string said(const pattern::Technique& technique, const pattern::Tree& tree) {
  std::string text(pattern::word_of(technique.how));
  if (technique.of == pattern::Of::increases) text += " of increases";
  if (technique.of == pattern::Of::decreases) text += " of decreases";
  if (technique.kind != stitch::no_kind) text += " of " + tree.kinds[technique.kind].name;
  if (technique.part != pattern::every_part) text += " in " + tree.parts[technique.part].name;
  if (technique.from > 0) text += " from " + std::to_string(technique.from);
  if (technique.to > 0) text += " to " + std::to_string(technique.to);
  return text;
}

Texts told(const std::string& text) {
  const pattern::Source source(text);
  const pattern::Read read = pattern::read(source, *words::find_vocabulary("en-US"));
  Texts all;
  for (const pattern::Technique& technique : read.tree.techniques) all.push_back(said(technique, read.tree));
  for (const pattern::Finding& finding : read.findings)
    if (finding.severity != pattern::Severity::note) all.push_back("! " + finding.message);
  return all;
}

/// Said before the parts of a small toad.
Texts before(const std::string& line) {
  return told("Toad\n\n" + line + "\n\nHead\n" + rounds + "\nBody\n" + rounds);
}

/// Said below the heading of its body.
Texts below(const std::string& line) {
  return told("Toad\n\nHead\n" + rounds + "\nBody\n" + line + "\n" + rounds);
}

/// Said between two of its rounds.
Texts between(const std::string& line) {
  return told("Toad\n\nHead\n" + rounds + "\nBody\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n" + line +
              "\nRnd 3: 12 sc (12)\nRnd 4: 12 sc (12)\n");
}

} // namespace

TEST_CASE("A technique before the parts holds for the whole pattern") {
  CHECK(before("Use yarn under (X-shaped sc) throughout.") == Texts{"yarn-under"});
  CHECK(before("I work yarn under.") == Texts{"yarn-under"});
  CHECK(before("The toy is worked inside out.") == Texts{"inside-out"});
  CHECK(before("Crochet over the wire.") == Texts{"over-wire"});
  CHECK(before("Work tightly, so that no stuffing shows.") == Texts{"tightly"});
  CHECK(before("Yarn: any, two strands held together") == Texts{"two-strands"});
  CHECK(before("Technique: yarn under") == Texts{"yarn-under"});
  CHECK(before("Note: work with the wrong side facing out.") == Texts{"inside-out"});
}

TEST_CASE("A technique is told of a stitch, of increases or of decreases") {
  CHECK(before("All sc are worked yarn under.") == Texts{"yarn-under of sc"});
  CHECK(before("sc = yarn-under single crochet") == Texts{"yarn-under of sc"});
  CHECK(before("sc - single crochet (yarn under)") == Texts{"yarn-under of sc"});
  CHECK(before("Single crochets are worked as \"X\" (yarn under).") == Texts{"yarn-under of sc"});
  CHECK(before("Use yarn over for the increases.") == Texts{"yarn-over of increases"});
  CHECK(before("The decreases are worked yarn under.") == Texts{"yarn-under of decreases"});
  CHECK(before("sc: insert hook, yarn under, pull up a loop, yarn over, pull through 2") ==
        Texts{"yarn-under of sc"});
}

TEST_CASE("A technique is told of parts by their names") {
  CHECK(before("The head is worked with yarn over, the body yarn under.") ==
        Texts{"yarn-over in Head", "yarn-under in Body"});
  CHECK(before("Use yarn under for the head and yarn over for the body.") ==
        Texts{"yarn-under in Head", "yarn-over in Body"});
  CHECK(before("Work the body inside out (wrong side facing).") == Texts{"inside-out in Body"});
  CHECK(before("The body is worked with a double strand.") == Texts{"two-strands in Body"});
}

TEST_CASE("Below a part's heading it holds for the part") {
  CHECK(below("Worked inside out.") == Texts{"inside-out in Body"});
  CHECK(below("In this part work yarn under.") == Texts{"yarn-under in Body"});
  CHECK(below("Always work yarn under.") == Texts{"yarn-under"});
  CHECK(below("All sc yarn under.") == Texts{"yarn-under of sc in Body"});
}

TEST_CASE("Between rounds it holds from the next on, and in a round for it") {
  CHECK(between("From here on work yarn under.") == Texts{"yarn-under in Body from 3"});
  CHECK(below("From round 3 on work yarn under.") == Texts{"yarn-under in Body from 3"});
  CHECK(below("Rounds 2-4 are worked yarn under.") == Texts{"yarn-under in Body from 2 to 4"});
  CHECK(told("Toad\n\nBody\nRnd 1: 6 sc in MR (6)\nRnd 2: 6 sc, yarn under (6)\n") ==
        Texts{"yarn-under of sc in Body from 2 to 2"});
}

TEST_CASE("What is left to choose, called off or done to the finished piece is no technique") {
  CHECK(before("You can work yarn over or yarn under.") == Texts{});
  CHECK(before("If you work yarn under, use a larger hook.") == Texts{});
  CHECK(before("Use yarn under, not yarn over.") == Texts{"yarn-under"});
  CHECK(before("Work yarn under instead of yarn over.") == Texts{"yarn-under"});
  CHECK(before("Do not use yarn under.") == Texts{});
  CHECK(between("Turn the body inside out.") == Texts{});
  CHECK(between("Turn inside out and stuff.") == Texts{});
  CHECK(between("Embroider the mouth with a double strand.") == Texts{});
  CHECK(before("dc: yarn over, insert hook, pull up a loop, (yarn over, pull through 2) twice") == Texts{});
  CHECK(before("Rnds are worked in a spiral.") == Texts{});
}

TEST_CASE("An abbreviation may stand for a stitch worked yarn under") {
  CHECK(told("Toad\n\nxsc = yarn under single crochet\n\nRnd 1: 6 xsc in MR (6)\nRnd 2: 2 xsc in each st "
             "(12)\n") == Texts{"yarn-under of sc"});
}

TEST_CASE("What is told of sc holds for sc worked together") {
  const auto& kinds = stitch::standard_kinds();
  pattern::Technique technique;
  technique.of = pattern::Of::kind;
  technique.kind = *stitch::find_kind(kinds, "sc");
  for (const char* name : {"sc", "sc2tog", "sc3tog", "invdec"})
    CHECK(pattern::concerns(technique, *stitch::find_kind(kinds, name), 1, kinds));
  for (const char* name : {"dc", "dc2tog", "hdc", "ch", "esc"})
    CHECK_FALSE(pattern::concerns(technique, *stitch::find_kind(kinds, name), 1, kinds));
}
