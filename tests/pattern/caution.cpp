#include "pattern/caution.hpp"

#include "pattern/read.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using Texts = std::vector<std::string>;

namespace {

struct Found {
  Texts what;
  Texts typed;
  std::vector<std::uint32_t> lines;
};

Found found_in(const std::string& text) {
  const pattern::Source source(text);
  const pattern::Read read = pattern::read(source, *words::find_vocabulary("en-US"));
  Found found;
  for (const pattern::Caution& caution : pattern::cautions(source, read.tree)) {
    found.what.push_back(caution.what);
    found.typed.emplace_back(source.at(caution.span));
    found.lines.push_back(source.position(caution.span.begin).line);
  }
  return found;
}

/// What is found in one line of a small beetle.
Texts in_line(const std::string& line) {
  return found_in("Beetle\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n" + line + "\n").what;
}

} // namespace

TEST_CASE("Each sort of thing of the rules calls for a caution") {
  // trade-rules.md, Safety
  const std::vector<std::pair<const char*, const char*>> all = {
      {"Insert 6 mm safety eyes now.", "safety eyes"},
      {"Sew on two buttons.", "buttons"},
      {"Thread on a bead for each spot.", "beads"},
      {"Put a jingle bell into the belly.", "bells"},
      {"Glue a magnet into each foot.", "magnets"},
      {"Bend a piece of wire for the feelers.", "wire"},
      {"Fill the base with poly pellets.", "pellets"},
      {"Sew the pom-pom to the hat.", "pompoms"},
      {"Knot a cord through the top.", "cords"},
      {"Sew the hanging loop to the back.", "loops"},
      {"Tie it to a hanger.", "hangers"},
      {"Add a key ring.", "key rings"}};
  for (const auto& [line, what] : all) {
    CAPTURE(line);
    CHECK(in_line(line) == Texts{what});
  }
}

TEST_CASE("Capitals, hyphens and glued sizes do not hide a thing") {
  CHECK(in_line("ATTACH THE SAFETY-EYES.") == Texts{"safety eyes"});
  CHECK(in_line("- 2 x 8mm safety eyes (black)") == Texts{"safety eyes"});
  CHECK(in_line("Keyring: one.") == Texts{"key rings"});
}

TEST_CASE("Things are found in the materials, between rounds and at the end, each with its place") {
  const Found found =
      found_in("Fox\n\nMaterials: brown yarn, two safety eyes, a bell\n\nRnd 1: 6 sc in MR (6)\n"
               "Insert the safety eyes.\nRnd 2: inc x 6 (12)\nSew a button to the chest.\n");
  CHECK(found.what == Texts{"safety eyes", "bells", "safety eyes", "buttons"});
  CHECK(found.typed == Texts{"safety eyes", "bell", "safety eyes", "button"});
  CHECK(found.lines == std::vector<std::uint32_t>{3, 3, 6, 8});
}

TEST_CASE("Loops of crochet are no loops to hang a toy by") {
  CHECK(in_line("Rnd 3: BLO sc around (12)").empty());
  CHECK(in_line("Rnd 3: in back loops only, sc in each st around (12)").empty());
  CHECK(in_line("Begin with a magic loop.").empty());
  CHECK(in_line("Work the frill into the free loops of Rnd 2.").empty());
}

TEST_CASE("Words that only sound like such a thing are none") {
  CHECK(in_line("Work a bead stitch in every second stitch.").empty());
  CHECK(in_line("Corduroy, buttonhole thread and beadwork scissors.").empty());
  CHECK(in_line("The skirt is bell-shaped like a bluebell.").empty());
  CHECK(in_line("Keep the wire cutters away.").empty());
}

TEST_CASE("A button nose is a button") { CHECK(in_line("Sew on a button nose.") == Texts{"buttons"}); }

TEST_CASE("A thing that is ruled out calls for nothing") {
  CHECK(in_line("Embroider the eyes instead of safety eyes.").empty());
  CHECK(in_line("For babies use no buttons.").empty());
}

TEST_CASE("Eyes that are placed with no word of what they are count as safety eyes") {
  CHECK(in_line("Place the eyes between rounds 1 and 2.") == Texts{"safety eyes"});
}

TEST_CASE("Eyes that are sewn in yarn call for nothing") {
  CHECK(in_line("Embroider the eyes between rounds 1 and 2.").empty());
}

TEST_CASE("A toy's own name is no thing") {
  CHECK(found_in("Button the beetle\n\nRnd 1: 6 sc in MR (6)\n").what.empty());
}

TEST_CASE("A plain ball needs no caution") { CHECK(in_line("Stuff it firmly and close.").empty()); }

TEST_CASE("A caution is no finding") {
  const pattern::Source source(
      "Fox\nUS terms\n\nMaterials: safety eyes, wire, bells\n\nRnd 1: 6 sc in MR (6)\n");
  CHECK(pattern::read(source, *words::find_vocabulary("en-US")).findings.empty());
}

TEST_CASE("UK patterns have the same cautions") {
  CHECK(found_in("Fox\nUK terms\n\nMaterials: two safety eyes\n\nRnd 1: 6 dc in magic ring (6)\n").what ==
        Texts{"safety eyes"});
}
