#include "words/vocabulary.hpp"

#include "words/fold.hpp"
#include "words/vocabulary_file.hpp"
#include "words/vocabulary_table.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace whorl::words;

namespace {

/// A vocabulary of its own, of things named in a text; nothing is written with it.
bool is_of_things(const Vocabulary& vocabulary) {
  return vocabulary.language.find("-x-") != std::string::npos;
}

std::vector<Vocabulary> all_vocabularies() {
  std::vector<Vocabulary> all;
  for (const LanguageName& name : known_vocabularies()) all.push_back(*find_vocabulary(name.language));
  return all;
}

bool says(const Vocabulary& vocabulary, Concept wanted) {
  return std::any_of(vocabulary.phrases.begin(), vocabulary.phrases.end(),
                     [wanted](const PhraseEntry& entry) { return entry.means == wanted; });
}

const VocabularyFile rows{"rows.xml", "<rows><concepts sort=\"stitch\">sc|dc</concepts>"
                                      "<row id=\"plain\" means=\"stitch\">count stitch</row></rows>"};

std::vector<FileFault> faults_of(const std::string& text) {
  std::vector<FileFault> faults;
  read_vocabulary_files({rows, {"xx.xml", text}}, faults);
  return faults;
}

} // namespace

TEST_CASE("US English is built in") { CHECK(find_vocabulary("en-US") != nullptr); }

TEST_CASE("a language nobody built in is not there") { CHECK(find_vocabulary("tlh") == nullptr); }

TEST_CASE("every phrase of every language is stored folded") {
  for (const Vocabulary& vocabulary : all_vocabularies())
    for (const PhraseEntry& entry : vocabulary.phrases) {
      if (entry.write) continue;
      INFO(entry.phrase);
      CHECK(fold(entry.phrase).text == entry.phrase);
    }
}

TEST_CASE("every written form of a concept is also a phrase that is looked up") {
  for (const Vocabulary& vocabulary : all_vocabularies())
    for (const PhraseEntry& entry : vocabulary.phrases) {
      if (!entry.write || is_of_things(vocabulary)) continue;
      INFO(entry.phrase);
      std::string folded = fold(entry.phrase).text;
      if (!folded.empty()) std::replace(folded.begin() + 1, folded.end(), '-', ' ');
      CHECK(std::any_of(vocabulary.phrases.begin(), vocabulary.phrases.end(), [&](const PhraseEntry& other) {
        return !other.write && other.phrase == folded && other.means == entry.means;
      }));
    }
}

TEST_CASE("every row of every language names only slots and concepts that exist") {
  for (const Vocabulary& vocabulary : all_vocabularies())
    for (const RowEntry& row : vocabulary.rows) {
      INFO(row.id);
      CHECK(is_row_known(vocabulary, row.pattern));
    }
}

TEST_CASE("every concept can be said in English, what is no word of rounds in a vocabulary of its own") {
  const Vocabulary& english = *find_vocabulary("en-US");
  for (std::size_t i = 0; i < english.concepts.size(); ++i) {
    if (english.concepts[i].name == "text told lead") continue; // no English sentence begins a round so
    INFO(english.concepts[i].name);
    bool said = says(english, static_cast<Concept>(i));
    for (const char* tag : {"en-x-cautions", "en-x-techniques", "en-x-moves", "en-x-text"}) {
      const Vocabulary& other = *find_vocabulary(tag);
      said = said || says(other, find_concept(other, english.concepts[i].name));
    }
    CHECK(said);
  }
}

TEST_CASE("rows have different ids") {
  std::vector<std::string> ids;
  for (const RowEntry& row : find_vocabulary("en-US")->rows) ids.push_back(row.id);
  std::sort(ids.begin(), ids.end());
  CHECK(std::adjacent_find(ids.begin(), ids.end()) == ids.end());
}

TEST_CASE("a file of a language adds words and written forms to the shared rows") {
  std::vector<FileFault> faults;
  const auto all = read_vocabulary_files(
      {{"xx.xml", "<words language=\"xx\"><say concept=\"sc\" write=\"mb\">mb|maglia bassa</say>"
                  "<row id=\"plain\" write=\"{n} {stitch}\"/></words>"},
       rows},
      faults);
  REQUIRE(faults.empty());
  REQUIRE(all.size() == 1);
  CHECK(all[0].phrases.size() == 3);
  CHECK(all[0].rows[0].write == "{n} {stitch}");
}

TEST_CASE("a word for a concept that does not exist is said") {
  const auto faults = faults_of("<words language=\"xx\"><say concept=\"knot\">k</say></words>");
  REQUIRE(faults.size() == 1);
  CHECK(faults[0] == FileFault{"xx.xml", "no rows file has the concept \"knot\""});
}

TEST_CASE("a file that is no XML is said") {
  const auto faults = faults_of("<words language=\"xx\">");
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].message.substr(0, 9) == "is no XML");
}

TEST_CASE("a file of something else is said") {
  REQUIRE(faults_of("<svg/>").size() == 1);
  CHECK(faults_of("<svg/>")[0].message == "begins with <svg>, not with <language>, <words>, <sheet> or <rows>");
}

TEST_CASE("a written form for a row that does not exist is said") {
  const auto faults = faults_of("<words language=\"xx\"><row id=\"spiral\" write=\"x\"/></words>");
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].message == "there is no shared row \"spiral\"");
}

TEST_CASE("a file that does not name its language is said") {
  REQUIRE(faults_of("<words/>").size() == 1);
  CHECK(faults_of("<words/>")[0].message == "the file does not say which language it is");
}

namespace {

const VocabularyFile base{"xx.xml",
                          "<words language=\"xx\"><say concept=\"dc\" write=\"dc\">dc|double</say></words>"};

std::vector<Vocabulary> with_dialect(const std::string& text, std::vector<FileFault>& faults) {
  return read_vocabulary_files({{"xx-YY.xml", text}, base, rows}, faults);
}

/// The concepts that the looked-up phrase means, in their order.
std::string meanings(const Vocabulary& vocabulary, const std::string& phrase) {
  std::string told;
  for (const PhraseEntry& entry : vocabulary.phrases)
    if (!entry.write && entry.phrase == phrase) told += vocabulary.concepts[entry.means].name + ";";
  return told;
}

std::string uk_meaning(const std::string& phrase) { return meanings(*find_vocabulary("en-GB"), phrase); }

std::string written_in(const char* language, const char* concept_name) {
  const Vocabulary& vocabulary = *find_vocabulary(language);
  return std::string(written_form(vocabulary, find_concept(vocabulary, concept_name)));
}

} // namespace

TEST_CASE("a phrase of a dialect takes the place of the same phrase of its base") {
  std::vector<FileFault> faults;
  const auto all = with_dialect(
      "<words language=\"xx-YY\" extends=\"xx\"><say concept=\"sc\" write=\"dc\">dc</say></words>", faults);
  REQUIRE(faults.empty());
  REQUIRE(all.size() == 2);
  CHECK(meanings(all[1], "dc") == "sc;");
  CHECK(meanings(all[1], "double") == "dc;");
}

TEST_CASE("a dialect whose base no file has is said") {
  std::vector<FileFault> faults;
  with_dialect("<words language=\"xx-YY\" extends=\"zz\"/>", faults);
  REQUIRE(faults.size() == 1);
  CHECK(faults[0] == FileFault{"xx-YY.xml", "no file has the language \"zz\" that it extends"});
}

TEST_CASE("a second file of a language adds to it") {
  std::vector<FileFault> faults;
  const auto all = with_dialect("<words language=\"xx\"><say concept=\"sc\">sb</say></words>", faults);
  REQUIRE(all.size() == 1);
  CHECK(meanings(all[0], "sb") == "sc;");
  CHECK(meanings(all[0], "dc") == "dc;");
}

// trade-facts.md 2b: above the slip stitch, UK name = US name one step up.
TEST_CASE("UK names are the US names one step up") {
  CHECK(uk_meaning("ss") == "sl st;");
  CHECK(uk_meaning("dc") == "sc;");
  CHECK(uk_meaning("htr") == "hdc;");
  CHECK(uk_meaning("tr") == "dc;");
  CHECK(uk_meaning("dtr") == "tr;");
  CHECK(uk_meaning("trtr") == "dtr;");
  CHECK(uk_meaning("ttr") == "dtr;");
  CHECK(uk_meaning("qtr") == "trtr;");
}

TEST_CASE("UK names in full are one step up too") {
  CHECK(uk_meaning("double crochet") == "sc;");
  CHECK(uk_meaning("half treble") == "hdc;");
  CHECK(uk_meaning("treble") == "dc;");
  CHECK(uk_meaning("double treble") == "tr;");
  CHECK(uk_meaning("triple treble") == "dtr;");
  CHECK(uk_meaning("quadruple treble") == "trtr;");
}

TEST_CASE("UK English knows the rest of US English") {
  CHECK(uk_meaning("fasten off") == "cut;");
  CHECK(uk_meaning("sc") == "sc;");
}

TEST_CASE("a stitch is written out in the terms of the vocabulary") {
  CHECK(written_in("en-US", "sc") == "sc");
  CHECK(written_in("en-GB", "sc") == "dc");
  CHECK(written_in("en-GB", "dc") == "tr");
  CHECK(written_in("en-GB", "skip") == "miss");
}

TEST_CASE("a pattern's own word takes the place of the same phrase") {
  const Vocabulary& english = *find_vocabulary("en-US");
  const Vocabulary own = with_own_words(english, {{"dec", find_concept(english, "invdec"), false, 0, 0}}, {});
  CHECK(meanings(own, "dec") == "invdec;");
  CHECK(meanings(english, "dec") == "dec;");
}

TEST_CASE("a pattern's own concept is found by its name") {
  const Vocabulary& english = *find_vocabulary("en-US");
  const auto next = static_cast<Concept>(english.concepts.size());
  const Vocabulary own =
      with_own_words(english, {{"lp st", next, false, 0, 0}}, {{"loop stitch", ConceptClass::stitch}});
  CHECK(find_concept(own, "loop stitch") == next);
  CHECK(meanings(own, "lp st") == "loop stitch;");
}
