#include "words/lattice.hpp"

#include <catch2/catch.hpp>
#include <string>

using namespace whorl::words;

namespace {

const Vocabulary& english() { return *find_vocabulary("en-US"); }

/// The longest words from left to right, as concept names, figures and marks.
std::string longest(const std::string& text) {
  const Folded folded = fold(text);
  const Lattice all = lattice(folded, english());
  std::string told;
  for (std::uint32_t at = 0; at < folded.text.size();) {
    if (all.at[at] == all.at[at + 1]) {
      ++at;
      continue;
    }
    const Word& word = all.words[all.at[at]];
    if (!told.empty()) told += '|';
    if (word.kind == WordKind::phrase) told += english().concepts[word.means].name;
    if (word.kind == WordKind::number) told += std::to_string(word.number);
    if (word.kind == WordKind::mark) told += word.mark;
    if (word.kind == WordKind::unknown) told += '?' + folded.text.substr(word.begin, word.end - word.begin);
    at = word.end;
  }
  return told;
}

int cost_of_first(const std::string& text) { return lattice(fold(text), english()).words.front().cost; }

} // namespace

TEST_CASE("a word ends where its run of letters ends") {
  CHECK(longest("6sc") == "6|sc");
  CHECK(longest("sc6") == "sc|6");
  CHECK(longest("2sc2tog") == "2|sc|2|together");
}

TEST_CASE("a word inside a longer word is not seen") { CHECK(longest("scarf") == "?scarf"); }

TEST_CASE("the longest phrase comes first") { CHECK(longest("in the back loops only") == "back loops"); }

TEST_CASE("a blank of a phrase is any run of blanks or a hyphen") {
  CHECK(longest("magic   ring") == "ring");
  CHECK(longest("sl-st") == "sl st");
}

TEST_CASE("number words are numbers") { CHECK(longest("six sc") == "6|sc"); }

TEST_CASE("letters of another alphabet are looked up as what they look like, at a cost") {
  CHECK(longest("ѕс") == "sc");
  CHECK(cost_of_first("ѕс") > cost_of_first("sc"));
}

TEST_CASE("a number too large to count is the largest number") {
  CHECK(longest("99999999999999999999") == "999999999");
}

TEST_CASE("a word knows whether a blank stands before it") {
  const Lattice all = lattice(fold("2sc 2 sc"), english());
  std::string glued;
  for (const Word& word : all.words)
    if (word.kind == WordKind::phrase) glued += word.glued ? 'g' : '-';
  CHECK(glued.front() == 'g');
  CHECK(glued.back() == '-');
}

TEST_CASE("an ending left open takes any letters") {
  Vocabulary german;
  german.concepts = {{"next", ConceptClass::word}};
  german.phrases = {{"nächst~", 0, false, 0, 0}};
  make_ready(german);
  const Lattice all = lattice(fold("nächsten"), german);
  REQUIRE(all.words.size() == 1);
  CHECK(all.words[0].means == 0);
}

TEST_CASE("without blanks between words a word ends anywhere") {
  Vocabulary japanese;
  japanese.blanks_between_words = false;
  japanese.concepts = {{"sc", ConceptClass::stitch}, {"increase", ConceptClass::word}};
  japanese.phrases = {{"細編み", 0, false, 0, 0}, {"増し目", 1, false, 0, 0}};
  make_ready(japanese);
  const Lattice all = lattice(fold("細編み増し目"), japanese);
  REQUIRE(all.words.size() >= 2);
  CHECK(all.words[0].end == 9);
}

namespace {

/// The cheapest concept of each of the words `X` and `x` where a list says that the capital is an sc.
std::string cheapest(const std::string& text) {
  const Concept sc = find_concept(english(), "sc");
  PhraseEntry own{"x", sc, false, 0, 0, Capitals::capital};
  const Vocabulary vocabulary = with_own_words(english(), {own}, {});
  const Lattice all = lattice(fold(text), vocabulary);
  const Word* best = &all.words.front();
  for (const Word& word : all.words)
    if (word.cost < best->cost) best = &word;
  return vocabulary.concepts[best->means].name;
}

} // namespace

TEST_CASE("a letter of the pattern's own list is told by its capital") {
  CHECK(cheapest("X") == "sc");
  CHECK(cheapest("x") == "times");
}

TEST_CASE("machine-translated words cost more than the trade's own") {
  CHECK(longest("6 columns without a crochet") == "6|sc");
  CHECK(cost_of_first("columns without a crochet") > cost_of_first("single crochet"));
}

TEST_CASE("letters that scanning took figures for are read as figures, at a cost") {
  CHECK(longest("l sc") == "1|sc");
  CHECK(longest("2O sc") == "20|sc");
  CHECK(longest("l2") == "12");
  CHECK(cost_of_first("l sc") > cost_of_first("1 sc"));
}

TEST_CASE("a word that has such letters is no figure") {
  CHECK(longest("loo") == "?loo");
  CHECK(longest("o") == "?o");
}

TEST_CASE("old books print abbreviations with a space") {
  CHECK(longest("2 s c in next s c") == "2|sc|in|next|sc");
}

TEST_CASE("a full stop behind an abbreviation may be its own, and the shorter word comes first") {
  CHECK(longest("st. 5 sc") == "st|.|5|sc");
  const Folded line = fold("ch. 2");
  const Lattice all = lattice(line, english());
  bool dotted = false;
  for (const Word& word : all.words) dotted = dotted || (word.begin == 0 && word.end == 3);
  CHECK(dotted);
}

TEST_CASE("a five that was scanned for an S makes a word, at a cost") {
  CHECK(longest("6 5c") == "6|sc");
  CHECK(longest("5l 5t in 5t") == "sl st|in|st");
  CHECK(cost_of_first("5c") == 1);
}
