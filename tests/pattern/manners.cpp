#include "pattern/read.hpp"
#include "pattern/reading.hpp"
#include "pattern/report.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

using namespace whorl;
using namespace whorl::pattern;

namespace {

constexpr std::string_view divider = ">>> uses and makes\n";

/// A pattern typed in somebody's manner, and the figures its author has in mind.
struct Manner {
  std::string name, pattern, figures;
};

std::vector<Manner> manners() {
  std::vector<Manner> all;
  for (const auto& entry :
       std::filesystem::directory_iterator(std::string(WHORL_TESTS_DIR) + "/pattern/manners")) {
    std::ifstream file(entry.path());
    std::ostringstream text;
    text << file.rdbuf();
    const std::string whole = text.str();
    const std::size_t at = whole.find(divider);
    REQUIRE(at != std::string::npos);
    all.push_back({entry.path().filename().string(), whole.substr(0, at), whole.substr(at + divider.size())});
  }
  std::sort(all.begin(), all.end(), [](const Manner& a, const Manner& b) { return a.name < b.name; });
  return all;
}

/// "Rnd 5-7 24 24": the label, what its last round uses and what it makes.
std::string figures_of(const Tree& tree) {
  std::ostringstream figures;
  std::int64_t open = 0;
  std::uint32_t index = 0;
  for (const RoundText& round : tree.rounds) {
    for (const Part& part : tree.parts)
      if (part.first_round == index) open = 0;
    std::int64_t uses = 0;
    for (int number = round.from; number <= round.to; ++number) {
      const Outcome result = outcome(round.effect, open);
      uses = round.effect.starts ? 0 : open - result.left_over + result.past_end;
      open = result.makes;
    }
    figures << round.label << " " << uses << " " << open << "\n";
    ++index;
  }
  return figures.str();
}

std::string troubles_of(const Read& result, const Source& source) {
  std::string troubles;
  for (const Finding& finding : result.findings)
    if (finding.severity != Severity::note) troubles += show(finding, source, "pattern");
  return troubles;
}

} // namespace

TEST_CASE("in whatever manner a pattern is typed, its rounds come out as its author has them in mind") {
  for (const Manner& manner : manners()) {
    INFO(manner.name);
    const Source source(manner.pattern);
    CHECK(figures_of(read(source, *words::find_vocabulary("en-US")).tree) == manner.figures);
  }
}

TEST_CASE("in whatever manner a right pattern is typed, nothing is found wrong with its words") {
  for (const Manner& manner : manners()) {
    INFO(manner.name);
    const Source source(manner.pattern);
    CHECK(troubles_of(read(source, *words::find_vocabulary("en-US")), source).empty());
  }
}

TEST_CASE("a repeat that does not divide is read as typed where no reading meets the count") {
  const Source source("Acorn\n\nRnd 1: 18 sc in MR (18)\nRnd 2: (3 sc, inc) around (24)\n");
  CHECK(figures_of(read(source, *words::find_vocabulary("en-US")).tree) == "Rnd 1 0 18\nRnd 2 18 20\n");
}

TEST_CASE("there are at least twenty-five manners of typing") { CHECK(manners().size() >= 25); }
