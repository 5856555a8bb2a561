#include "drawing/sheets.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <set>

using namespace whorl;
using namespace whorl::drawing;
using sheets::Made;
using sheets::made;

namespace {

std::vector<pattern::Tree> toys() {
  std::vector<pattern::Tree> trees{sheets::gnome(), sheets::beetle(), sample::acorn(), sample::ball({6})};
  for (std::uint32_t seed = 1; seed <= 20; ++seed) trees.push_back(sample::random_ball(seed));
  for (std::uint32_t seed = 1; seed <= 20; ++seed) trees.push_back(sample::random_cone(seed));
  return trees;
}

/// Titles that a sheet may be given.
const std::vector<std::string> odd_titles{
    "",
    "Ei",
    "A hedgehog that sleeps under the leaves of the old oak until the first warm morning of the year",
    "Hedgehoghedgehoghedgehoghedgehoghedgehoghedgehoghedgehoghedgehoghedgehoghedgehoghedgehog",
    "どんぐりと森の小人とてんとう虫とはりねずみときつねの家族とそのおともだちのみんなのあみぐるみ",
    "Жёлудь и гном, ёжик и лиса, мухомор и жук, и все их друзья из осеннего леса",
    "قنفذ الغابة الصغير وأصدقاؤه من الأوراق والفطر والثعلب والخنفساء",
    "x\ty\nz"};

/// Texts outside the figures and what they cover; those within are the layout's.
void check_no_text_overlaps(const Scene& scene) {
  std::vector<std::pair<std::string, Box>> texts;
  for (const sheets::Found& found : sheets::items_of(scene)) {
    const auto* text = std::get_if<Text>(found.item);
    if (text == nullptr || found.within.find("figure") != std::string::npos) continue;
    const Box box = bounds(*found.item, {});
    for (const auto& other : texts) {
      INFO(text->text << " | " << other.first);
      CHECK_FALSE(sheets::overlap(box, other.second));
    }
    texts.emplace_back(text->text, box);
  }
}

} // namespace

TEST_CASE("Everything on a sheet lies within its edges") {
  for (const pattern::Tree& tree : toys()) {
    const Made it = made(tree);
    for (const sheets::Found& found : sheets::items_of(it.scene)) {
      const Box box = bounds(*found.item, it.scene.symbols);
      INFO(tree.title << found.within);
      CHECK((box.left >= 0 && box.top >= 0 && box.right <= it.scene.width && box.bottom <= it.scene.height));
    }
  }
}

TEST_CASE("No text outside the figures lies on another text or on a figure") {
  for (const pattern::Tree& tree : toys()) {
    const Made it = made(tree);
    std::vector<Box> figures, texts;
    for (const Group* figure : sheets::groups_of(it.scene, "figure"))
      figures.push_back(bounds(*figure, it.scene.symbols));
    for (const sheets::Found& found : sheets::items_of(it.scene)) {
      if (!std::holds_alternative<Text>(*found.item) || found.within.find("figure") != std::string::npos)
        continue;
      const Box box = bounds(*found.item, {});
      INFO(tree.title << ": " << std::get<Text>(*found.item).text);
      for (const Box& other : texts) CHECK_FALSE(sheets::overlap(box, other));
      for (const Box& figure : figures) CHECK_FALSE(sheets::overlap(box, figure));
      texts.push_back(box);
    }
  }
}

TEST_CASE("Figures of a sheet keep clear of one another") {
  for (const pattern::Tree& tree : toys()) {
    const Made it = made(tree);
    std::vector<Box> figures;
    for (const Group* figure : sheets::groups_of(it.scene, "figure"))
      figures.push_back(bounds(*figure, it.scene.symbols));
    for (std::size_t i = 0; i < figures.size(); ++i)
      for (std::size_t k = i + 1; k < figures.size(); ++k)
        CHECK_FALSE(sheets::overlap(figures[i], figures[k]));
  }
}

TEST_CASE("A title of any length and script keeps clear of what stands beside it") {
  for (const std::string& title : odd_titles) {
    SheetText text;
    text.title = title;
    text.subtitle = "found under the oak by the path, on a Sunday";
    text.terms = "US terms";
    const Made it = made(sample::ball({6, 12}), text);
    check_no_text_overlaps(it.scene);
  }
}

TEST_CASE("A title that is too long for its line is set smaller or in several lines within the margins") {
  for (const std::string& title : odd_titles) {
    SheetText text;
    text.title = title;
    const Made it = made(sample::ball({6, 12}), text);
    for (const sheets::Found& found : sheets::items_of(it.scene))
      if (found.within == " title") {
        const Box box = bounds(*found.item, {});
        INFO(title);
        CHECK((box.left >= 14.8 && box.right <= it.scene.width - 14.8));
      }
  }
}

TEST_CASE("Notes and closing lines of any length keep clear of everything") {
  SheetText text;
  std::string note;
  for (int i = 0; i < 60; ++i) note += "stuff the feet before closing ";
  text.part_notes = {note, "short", note, note};
  text.closing = {note, "Sew the legs on."};
  check_no_text_overlaps(made(sheets::beetle(), text).scene);
}

TEST_CASE("A sheet without figures has its title and no legend") {
  const Made it = made(pattern::Tree{}, {"Leaf", "", "", "US terms", {}, {}});
  CHECK(sheets::words_of(it.scene, "title") == "Leaf US terms ");
  CHECK(sheets::groups_of(it.scene, "legend").empty());
}

TEST_CASE("A sheet without figures is small") {
  const Made it = made(pattern::Tree{}, {"Leaf", "", "", {}, {}});
  CHECK(it.scene.height < 60);
}

TEST_CASE("Figures are numbered through the sheet") {
  const Made it = made(sheets::beetle());
  std::string numbers;
  for (const sheets::Found& found : sheets::items_of(it.scene))
    if (const auto* text = std::get_if<Text>(found.item))
      if (found.within == " caption" && text->bold) numbers += text->text + " ";
  CHECK(numbers == "Fig. 1 Fig. 2 Fig. 3 Fig. 4 Fig. 5 Fig. 6 Fig. 7 ");
}

TEST_CASE("The frame of a figure says where its stitches stand") {
  const Made it = made(sheets::gnome());
  const std::vector<const Group*> figures = sheets::groups_of(it.scene, "figure");
  for (std::size_t i = 0; i < figures.size(); ++i) {
    const Frame& frame = it.scene.figures[i];
    const layout::Item& first = it.placement.figures[i].items.front();
    bool found = false;
    for (const Item& part : figures[i]->items)
      for (const Item& item : std::get<Group>(part).items)
        if (const auto* symbol = std::get_if<Symbol>(&item))
          found = found || (symbol->origin.stitch == first.first &&
                            std::abs(symbol->at.x - frame.origin.x - frame.scale * first.foot.x) < 1e-9 &&
                            std::abs(symbol->at.y - frame.origin.y + frame.scale * first.foot.y) < 1e-9);
    CHECK(found);
  }
}

TEST_CASE("A sheet grows in width for a figure that is wider") {
  const Made wide = made(sample::ball({6, 12, 18, 24, 30, 36, 42, 48, 54, 60, 66, 72, 78, 84, 90, 96}));
  CHECK(wide.scene.width > 180);
  const Box box = bounds(*sheets::groups_of(wide.scene, "figure").front(), wide.scene.symbols);
  CHECK(box.width() > 150);
}

TEST_CASE("Small parts stand side by side") {
  SheetOptions options;
  options.table = false;
  const Made it = made(sheets::beetle(), {}, options);
  CHECK(it.scene.figures[3].origin.x < it.scene.figures[4].origin.x);
  CHECK(it.scene.figures[5].origin.x < it.scene.figures[6].origin.x);
}

TEST_CASE("Figures one above the other stand on one axis") {
  const Made it = made(sheets::gnome());
  CHECK(std::abs(it.scene.figures[0].origin.x - it.scene.figures[2].origin.x) < 1e-9);
  CHECK(std::abs(it.scene.figures[1].origin.x - it.scene.figures[3].origin.x) < 1e-9);
}

TEST_CASE("White paper lies under everything") {
  const Made it = made(sample::ball({6, 12}));
  const auto* paper = std::get_if<Fill>(&it.scene.items.front());
  REQUIRE(paper != nullptr);
  CHECK(paper->color == ink::paper);
  CHECK(bounds(paper->path).width() == it.scene.width);
  CHECK(bounds(paper->path).height() == it.scene.height);
}

TEST_CASE("No two groups of a sheet have the same id") {
  for (const pattern::Tree& tree : toys()) {
    const Made it = made(tree);
    std::set<std::string> ids;
    for (const Group* group : sheets::groups_of(it.scene, "")) {
      INFO(group->id);
      CHECK((group->id.empty() || ids.insert(group->id).second));
    }
  }
}

TEST_CASE("No two symbols of a sheet have the same id") {
  for (const pattern::Tree& tree : toys()) {
    const Made it = made(tree);
    std::set<std::string> ids;
    for (const SymbolDefinition& symbol : it.scene.symbols) CHECK(ids.insert(symbol.id).second);
  }
}

TEST_CASE("Each ring is a named group of its stitches") {
  const Made it = made(sample::ball({6, 12, 18}));
  const std::vector<const Group*> rounds = sheets::groups_of(it.scene, "round");
  REQUIRE(rounds.size() == 3);
  CHECK(rounds[2]->id == "ball-3");
  CHECK(rounds[2]->title == "Round 3: 18 stitches");
}

TEST_CASE("Rings take the ink that the placement gives them and the repeated round is faint") {
  const Made it = made(sheets::gnome());
  for (const Group* round : sheets::groups_of(it.scene, "round"))
    for (const Item& item : round->items)
      if (const auto* symbol = std::get_if<Symbol>(&item)) {
        const std::uint32_t number = it.fabric.stitches[symbol->origin.stitch].round;
        const bool faint = round->id.find('_') != std::string::npos;
        const bool black = symbol->color == ink::black, second = symbol->color == ink::second;
        INFO(round->title << " " << number);
        CHECK(faint == (symbol->color == ink::faint));
        CHECK((faint || black || second));
      }
}

TEST_CASE("A symbol points back at the words it came from") {
  const Made it = made(sample::ball({6, 12}));
  for (const sheets::Found& found : sheets::items_of(it.scene))
    if (const auto* symbol = std::get_if<Symbol>(found.item))
      if (found.within.find("round") != std::string::npos) {
        const pattern::NodeId node = it.fabric.stitches[symbol->origin.stitch].origin;
        CHECK(symbol->origin.span == it.tree.nodes[node].span);
      }
}

TEST_CASE("The description says parts, figures, rounds and stitches") {
  const Made it = made(sample::ball({6, 12, 18}));
  CHECK(it.scene.description ==
        "A crochet chart in figures; there are 1. Ball, make 1. Fig. 1: rounds 1–3, seen "
        "from the start. Round 1: 6 stitches. Round 2: 12 stitches. Round 3: 18 stitches.");
}

TEST_CASE("Every word of a sheet is in the English wording") {
  for (const pattern::Tree& tree : toys()) {
    const Made it = made(tree);
    for (const Text* text : sheets::texts_of(it.scene)) {
      INFO(text->text);
      // Where an id is English too ("stitches"), the words may be the same.
      const std::string& words = text->text;
      const bool said = std::any_of(sheets::english().begin(), sheets::english().end(),
                                    [&words](const auto& entry) { return entry.second == words; });
      CHECK((said || sheets::english().count(words) == 0));
      CHECK(text->text.find('{') == std::string::npos);
    }
  }
}

TEST_CASE("A sheet is the same each time it is composed") {
  const Made one = made(sheets::gnome()), two = made(sheets::gnome());
  CHECK(one.scene.description == two.scene.description);
  CHECK(one.scene.height == two.scene.height);
}

TEST_CASE("The two loops are pictured once where a figure marks one, with room beside it or without") {
  CHECK(sheets::groups_of(made(sample::acorn()).scene, "loops").size() == 1);
  CHECK(sheets::groups_of(made(sheets::beetle()).scene, "loops").size() == 1);
}

TEST_CASE("Without loop marks the loops are not pictured") {
  CHECK(sheets::groups_of(made(sheets::gnome()).scene, "loops").empty());
}

TEST_CASE("The figures and the table of a part stand together, apart from those of others") {
  const Made it = made(sheets::beetle());
  const auto figures = sheets::groups_of(it.scene, "figure"), tables = sheets::groups_of(it.scene, "table");
  std::vector<Box> parts(it.fabric.parts.size());
  REQUIRE(tables.size() == parts.size());
  for (std::size_t i = 0; i < parts.size(); ++i) join(parts[i], bounds(*tables[i], it.scene.symbols));
  for (std::size_t i = 0; i < figures.size(); ++i)
    join(parts[it.placement.figures[i].part], bounds(*figures[i], it.scene.symbols));
  for (std::size_t i = 0; i < parts.size(); ++i)
    for (std::size_t k = i + 1; k < parts.size(); ++k) CHECK_FALSE(sheets::overlap(parts[i], parts[k]));
}
