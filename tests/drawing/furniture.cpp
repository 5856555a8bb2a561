#include "drawing/furniture.hpp"

#include "drawing/sheets.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::drawing;
using sheets::Made;
using sheets::made;

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

TEST_CASE("The caution never says that anything is safe") {
  const std::string words = say(sheets::english(), "caution");
  CHECK(words.find("safe") == std::string::npos);
  CHECK(words.find("Safe") == std::string::npos);
}

TEST_CASE("The caution stands on the sheet with its sign") {
  SheetText text;
  text.caution = "Buttons: small parts can come off.";
  const Made it = made(sample::acorn(), text);
  CHECK(sheets::words_of(it.scene, "caution").find("small parts can come off") != std::string::npos);
  bool sign = false;
  for (const sheets::Found& found : sheets::items_of(it.scene))
    if (const auto* symbol = std::get_if<Symbol>(found.item))
      sign = sign || it.scene.symbols[symbol->symbol].id == "mark_warning";
  CHECK(sign);
}

TEST_CASE("Without a caution there is no room for one") {
  CHECK(sheets::groups_of(made(sample::acorn()).scene, "caution").empty());
}

TEST_CASE("Making-up stands at the foot of the sheet") {
  SheetText text;
  text.closing = {"Sew the cap over the nut."};
  CHECK(sheets::words_of(made(sample::acorn(), text).scene, "closing") ==
        "Putting together Sew the cap over the nut. ");
}

TEST_CASE("Several yarns stand in the title's line before the terms") {
  SheetText text;
  text.yarns = "yarn 1 moss, yarn 2 cream";
  text.terms = "US terms";
  const std::string words = sheets::words_of(made(sample::acorn(), text).scene, "title");
  CHECK(words.find("yarn 1 moss, yarn 2 cream \u00b7 US terms") != std::string::npos);
}
