#include "drawing/legend.hpp"

#include "drawing/sheets.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace whorl;
using namespace whorl::drawing;
using sheets::Made;
using sheets::made;

namespace {

std::vector<Entry> entries_of(const Made& it) {
  SymbolCase symbols(it.fabric.kinds, built_in_marks(), it.options.style, it.options.stitch);
  return legend_entries(it.copy(), symbols);
}

std::set<std::string> keys_of(const Made& it) {
  std::set<std::string> keys;
  for (const Entry& entry : entries_of(it)) keys.insert(entry.key);
  return keys;
}

std::string words_of(const Made& it, const std::string& key) {
  std::string words;
  for (const Entry& entry : entries_of(it))
    if (entry.key == key) words += entry.name + ": " + entry.words + "\n";
  return words;
}

/// What the figures of a sheet show: ids of stitches' symbols with height and loops taken off, and the loops.
std::set<std::string> shown_in_figures(const Made& it) {
  std::set<std::string> shown;
  for (const sheets::Found& found : sheets::items_of(it.scene)) {
    const auto* symbol = std::get_if<Symbol>(found.item);
    if (symbol == nullptr || found.within.find(" round") == std::string::npos) continue;
    std::string id = it.scene.symbols[symbol->symbol].id;
    id = id.substr(0, id.find("_h"));
    for (const std::string loops : {"back", "front"})
      if (id.size() > loops.size() && id.substr(id.size() - loops.size()) == loops) {
        shown.insert(loops);
        id = id.substr(0, id.size() - loops.size() - 1);
      }
    shown.insert(id);
  }
  return shown;
}

std::set<std::string> stitches_and_loops(const Made& it) {
  const std::set<std::string> marks{"magic-ring", "second-chain", "chain-ring",    "pointer", "label",
                                    "miscount",   "direction",    "inks",          "break",   "echo",
                                    "cut",        "gathered",     "eye",           "tick",    "flag",
                                    "ground",     "join",         "starting-chain"};
  std::set<std::string> keys;
  for (const std::string& key : keys_of(it))
    if (marks.count(key) == 0) keys.insert(key);
  return keys;
}

std::vector<pattern::Tree> toys() {
  std::vector<pattern::Tree> trees{sheets::gnome(), sheets::beetle(), sample::acorn(), sample::ball({6})};
  for (std::uint32_t seed = 40; seed < 60; ++seed) trees.push_back(sample::random_ball(seed));
  return trees;
}

} // namespace

TEST_CASE("The legend explains exactly the stitches and loops that are in the figures") {
  for (const pattern::Tree& tree : toys()) {
    const Made it = made(tree);
    CHECK(stitches_and_loops(it) == shown_in_figures(it));
  }
}

TEST_CASE("The legend explains the lines that are in the figures and no others") {
  for (const pattern::Tree& tree : toys()) {
    const Made it = made(tree);
    bool fold = false, direction = false;
    for (const layout::Figure& figure : it.placement.figures)
      for (const layout::Stroke& stroke : figure.strokes) {
        fold = fold || stroke.line == layout::Line::fold_break;
        direction = direction || stroke.line == layout::Line::direction;
      }
    CHECK(keys_of(it).count("break") == (fold ? 1U : 0U));
    CHECK(keys_of(it).count("direction") == (direction ? 1U : 0U));
  }
}

TEST_CASE("A start from a magic ring is explained, and no other") {
  const std::set<std::string> keys = keys_of(made(sample::ball({6, 12})));
  CHECK(keys.count("magic-ring") == 1);
  CHECK(keys.count("second-chain") == 0);
}

TEST_CASE("A start from two chains is explained beside that of another part") {
  const std::set<std::string> keys = keys_of(made(sheets::beetle()));
  CHECK(keys.count("second-chain") == 1);
  CHECK(keys.count("magic-ring") == 1);
}

TEST_CASE("A closing is explained where a part is gathered, an end where the yarn is cut") {
  const std::set<std::string> gnome = keys_of(made(sheets::gnome())), acorn = keys_of(made(sample::acorn()));
  CHECK((gnome.count("gathered") == 1 && gnome.count("cut") == 0));
  CHECK((acorn.count("gathered") == 1 && acorn.count("cut") == 1));
}

TEST_CASE("The two inks are explained only where there are two") {
  CHECK(keys_of(made(sample::ball({6}))).count("inks") == 0);
  CHECK(keys_of(made(sample::ball({6, 12}))).count("inks") == 1);
}

TEST_CASE("A repeated round is explained only where a figure has one") {
  CHECK(keys_of(made(sample::ball({6, 12}))).count("echo") == 0);
  CHECK(keys_of(made(sheets::gnome())).count("echo") == 1);
}

TEST_CASE("Labels are explained by one that is on the sheet") {
  CHECK(words_of(made(sample::ball({6, 12, 18, 24})), "label") == ": round 3 has 18 stitches\n");
}

TEST_CASE("A count that the text states otherwise is explained with what the text says") {
  pattern::Tree tree = sample::ball({6, 12, 18, 24});
  tree.rounds[2].stated[0].count = 19;
  CHECK(words_of(made(tree), "miscount") == ": round 3: 18 counted, the text says 19\n");
}

TEST_CASE("No wrong count, no sign for it") { CHECK(keys_of(made(sheets::gnome())).count("miscount") == 0); }

TEST_CASE("An increase and a decrease go by their trade names") {
  const Made it = made(sheets::gnome());
  CHECK(words_of(it, "sc_2") == "inc: 2 sc in one stitch\n");
  CHECK(words_of(it, "sc2tog") == "dec: 2 sc worked together\n");
}

TEST_CASE("A single crochet is said to be one however it is turned") {
  CHECK(words_of(made(sample::ball({6})), "sc") == "sc: single crochet, however turned\n");
}

TEST_CASE("Samples are as large as on the chart") {
  const Made it = made(sheets::gnome());
  for (const Entry& entry : entries_of(it))
    for (const Item& item : entry.sample)
      if (const auto* symbol = std::get_if<Symbol>(&item)) CHECK(symbol->scale == 1);
}

TEST_CASE("Samples of a very large chart are smaller than on it") {
  SheetOptions options;
  options.stitch = 20;
  const Made it = made(sheets::gnome(), {}, options);
  for (const Entry& entry : entries_of(it)) CHECK(entry.box.width() < 20);
}

TEST_CASE("Stitches come before loops, loops before starts, endings last") {
  std::vector<std::string> keys;
  for (const Entry& entry : entries_of(made(sample::acorn()))) keys.push_back(entry.key);
  CHECK(keys == std::vector<std::string>{"sc", "sc_2", "sc2tog", "back", "magic-ring", "pointer", "label",
                                         "direction", "inks", "break", "echo", "gathered", "cut"});
}

TEST_CASE("A sheet without legend has none") {
  SheetOptions options;
  options.legend = false;
  CHECK(sheets::groups_of(made(sheets::gnome(), {}, options).scene, "legend").empty());
}

TEST_CASE("For left-handers the legend's pointer and arrow point the other way") {
  Made it = made(sample::ball({6, 12, 18}));
  layout::Page page;
  page.hand = layout::Hand::left;
  it.placement = layout::place(it.fabric, extents_of(it.fabric, built_in_marks()), page);
  for (const Entry& entry : entries_of(it))
    if (entry.key == "pointer") {
      const Path& triangle = std::get<Fill>(entry.sample.front()).path;
      CHECK(triangle.points[0].x > triangle.points[1].x);
    }
}

TEST_CASE("A left-handed sheet explains what is on it all the same") {
  Made it = made(sheets::gnome());
  layout::Page page;
  page.hand = layout::Hand::left;
  it.placement = layout::place(it.fabric, extents_of(it.fabric, built_in_marks()), page);
  sheets::compose(it);
  CHECK(stitches_and_loops(it) == shown_in_figures(it));
}

TEST_CASE("The sample of a yarn's ground is a stitch and no chain") {
  sample::Maker m;
  m.part("Body");
  m.round({m.ch(2), m.in_chain(6, 2)}, 6);
  m.round({m.inc(6)}, 12);
  Made it = made(m.tree);
  const auto chain = stitch::find_kind(it.fabric.kinds, "ch");
  REQUIRE(chain);
  layout::Item item;
  item.key = {*chain, 1, stitch::both};
  layout::Figure& figure = it.placement.figures.front();
  figure.items.push_back(item);
  figure.grounds.emplace_back();
  SymbolCase symbols(it.fabric.kinds, built_in_marks(), it.options.style, it.options.stitch);
  for (const Entry& entry : legend_entries(it.copy(), symbols)) {
    if (entry.key != "ground") continue;
    const auto& sample = std::get<Symbol>(entry.sample.back());
    CHECK(symbols.definitions()[sample.symbol].id.substr(0, 2) == "sc");
  }
  CHECK(keys_of(it).count("ground") == 1);
}

TEST_CASE("Stitches go by the author's own letters, unless two go by the same") {
  SheetText text;
  const auto kinds = sample::acorn().kinds;
  text.names = {{*stitch::find_kind(kinds, "sc"), 1, "X"}, {*stitch::find_kind(kinds, "sc2tog"), 1, "A"}};
  CHECK(words_of(made(sample::acorn(), text), "sc").substr(0, 2) == "X:");
  text.names[1].name = "X";
  CHECK(words_of(made(sample::acorn(), text), "sc").substr(0, 3) == "sc:");
}

TEST_CASE("A technique of one stitch stands beside its words, one of all stitches in a line of its own") {
  Made it = made(sheets::gnome());
  const auto sc = stitch::find_kind(it.tree.kinds, "sc");
  REQUIRE(sc);
  pattern::Technique under;
  under.of = pattern::Of::kind;
  under.kind = *sc;
  pattern::Technique tightly;
  tightly.how = pattern::How::tightly;
  it.tree.techniques = {under, tightly};
  it.text.technique_scopes = {"", ""};
  CHECK(words_of(it, "sc").find("yarn under") != std::string::npos);
  CHECK(words_of(it, "technique-tightly") == ": worked tightly\n");
  CHECK(keys_of(it).count("technique-yarn-under") == 0);
}
