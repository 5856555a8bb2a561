#include "drawing/furniture.hpp"

#include "drawing/sheets.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::drawing;
using sheets::Made;
using sheets::made;

namespace {

pattern::Tree with_header(const std::string& value) {
  pattern::Tree tree = sample::ball({6, 12});
  tree.headers.push_back({"Materials", value, {}});
  return tree;
}

bool warns(const pattern::Tree& tree) { return needs_caution(made(tree).copy()); }

} // namespace

TEST_CASE("Parts have letters, after Z two of them") {
  CHECK(part_letter(0) == "A");
  CHECK(part_letter(25) == "Z");
  CHECK(part_letter(26) == "AA");
  CHECK(part_letter(27) == "AB");
  CHECK(part_letter(52) == "BA");
}

TEST_CASE("A part's head says its name and how many to make") {
  CHECK(sheets::words_of(made(sample::acorn()).scene, "part") == "Nut make 1 A Cap make 1 B ");
}

TEST_CASE("A note that only repeats how many to make is left out") {
  SheetText text;
  text.part_notes = {"Make 1", "in moss"};
  CHECK(sheets::words_of(made(sample::acorn(), text).scene, "part") == "Nut make 1 A Cap make 1 in moss B ");
}

TEST_CASE("A pattern without part names has no part heads") {
  sample::Maker m;
  sample::add_rounds(m, {6, 12});
  CHECK(sheets::groups_of(made(m.tree).scene, "part").empty());
}

TEST_CASE("Small parts among the materials call for the caution") {
  CHECK(warns(with_header("two safety eyes 8 mm")));
  CHECK(warns(with_header("a Button, felt")));
  CHECK(warns(with_header("fishing pellets, 20 g")));
}

TEST_CASE("Words that only contain such a word do not") {
  CHECK_FALSE(warns(with_header("corduroy, buttonhole thread and beadwork scissors")));
}

TEST_CASE("Placed eyes call for the caution") {
  sample::Maker m;
  sample::add_rounds(m, {6, 12});
  m.place(pattern::What::eye).text = "Place the eyes between rounds 1 and 2.";
  CHECK(warns(m.tree));
}

TEST_CASE("Embroidered eyes do not") {
  sample::Maker m;
  sample::add_rounds(m, {6, 12});
  m.place(pattern::What::eye).text = "Embroider the eyes between rounds 1 and 2.";
  CHECK_FALSE(warns(m.tree));
}

TEST_CASE("A plain ball needs no caution") { CHECK_FALSE(warns(sample::ball({6, 12}))); }

TEST_CASE("The caution never says that anything is safe") {
  const std::string words = say(sheets::english(), "caution");
  CHECK(words.find("safe") == std::string::npos);
  CHECK(words.find("Safe") == std::string::npos);
}

TEST_CASE("The caution stands on the sheet with its sign") {
  const Made it = made(with_header("two buttons"));
  CHECK(sheets::words_of(it.scene, "caution").find("small parts can come off") != std::string::npos);
  bool sign = false;
  for (const sheets::Found& found : sheets::items_of(it.scene))
    if (const auto* symbol = std::get_if<Symbol>(found.item))
      sign = sign || it.scene.symbols[symbol->symbol].id == "mark_warning";
  CHECK(sign);
}

TEST_CASE("Making-up stands at the foot of the sheet") {
  SheetText text;
  text.closing = {"Sew the cap over the nut."};
  CHECK(sheets::words_of(made(sample::acorn(), text).scene, "closing") == "Sew the cap over the nut. ");
}
