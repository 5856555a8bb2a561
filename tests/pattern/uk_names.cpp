/// US and UK names against the printed table: trade-facts.md 2b, CYC term tables, quoted in course lesson 16
/// (S).

#include "pattern/read.hpp"
#include "pattern/terms.hpp"
#include "words/lattice.hpp"

#include <catch2/catch.hpp>

using namespace whorl;

namespace {

/// The kind of the first round's stitches in a pattern that says it is in these terms.
std::string kind_in(const std::string& terms, const std::string& stitch) {
  const pattern::Source source("Fern\n" + terms + " terms\n\nRnd 1: 6 " + stitch + " in magic ring (6)\n");
  const pattern::Tree tree = pattern::read(source, *words::find_vocabulary("en-US")).tree;
  for (const pattern::Node& node : tree.nodes)
    if (node.kind == pattern::NodeKind::work && node.work.act == pattern::Act::stitch)
      return tree.kinds[node.work.kind].name;
  return "";
}

const words::Vocabulary& uk() { return *words::find_vocabulary("en-GB"); }

} // namespace

TEST_CASE("Each UK name of the table is the US stitch one step down") {
  const std::pair<const char*, std::vector<const char*>> rows[] = {{"sc", {"dc", "double crochet"}},
                                                                   {"hdc", {"htr", "half treble"}},
                                                                   {"dc", {"tr", "treble"}},
                                                                   {"tr", {"dtr", "double treble"}},
                                                                   {"dtr", {"trtr", "ttr", "triple treble"}},
                                                                   {"trtr", {"qtr", "quadruple treble"}}};
  for (const auto& [us, names] : rows)
    for (const char* name : names) {
      CAPTURE(name);
      CHECK(kind_in("UK", name) == us);
    }
}

TEST_CASE("Each US name of the table is the stitch itself") {
  const std::pair<const char*, std::vector<const char*>> rows[] = {
      {"sc", {"sc", "single crochet"}},  {"hdc", {"hdc", "half double"}},
      {"dc", {"dc", "double crochet"}},  {"tr", {"tr", "treble"}},
      {"dtr", {"dtr", "double treble"}}, {"trtr", {"trtr", "triple treble"}}};
  for (const auto& [us, names] : rows)
    for (const char* name : names) {
      CAPTURE(name);
      CHECK(kind_in("US", name) == us);
    }
}

TEST_CASE("A kind is written by its name in the pattern's terms") {
  const std::pair<const char*, const char*> rows[] = {{"sl st", "ss"}, {"sc", "dc"},        {"hdc", "htr"},
                                                      {"dc", "tr"},    {"tr", "dtr"},       {"dtr", "trtr"},
                                                      {"trtr", "qtr"}, {"sc2tog", "dc2tog"}};
  for (const auto& [us, name] : rows) CHECK(pattern::spoken(us, uk()) == name);
}

TEST_CASE("To skip is to miss in UK terms") { // 2b: common practice; 1918 Handbook and Dillmont (P)
  CHECK(words::written_form(uk(), words::find_concept(uk(), "skip")) == "miss");
}

TEST_CASE("Round posts step down as well") { // common practice, no source
  const std::pair<const char*, const char*> rows[] = {{"fpsc", "FPdc"},  {"fphdc", "FPhtr"}, {"fpdc", "FPtr"},
                                                      {"fptr", "FPdtr"}, {"bpdc", "BPtr"},   {"fpdc", "rtrf"},
                                                      {"bphdc", "rhtrb"}};
  for (const auto& [us, name] : rows) {
    CAPTURE(name);
    const words::Lattice all = words::lattice(words::fold(name), uk());
    REQUIRE(!all.words.empty());
    CHECK(uk().concepts[all.words.front().means].name == us);
  }
}
