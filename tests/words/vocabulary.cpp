#include "words/vocabulary.hpp"

#include "words/fold.hpp"
#include "words/vocabulary_file.hpp"
#include "words/vocabulary_table.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

using namespace whorl::words;

namespace {

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
  for (const Vocabulary& vocabulary : built_in_vocabularies())
    for (const PhraseEntry& entry : vocabulary.phrases) {
      if (entry.write) continue;
      INFO(entry.phrase);
      CHECK(fold(entry.phrase).text == entry.phrase);
    }
}

TEST_CASE("every written form of a concept is also a phrase that is looked up") {
  for (const Vocabulary& vocabulary : built_in_vocabularies())
    for (const PhraseEntry& entry : vocabulary.phrases) {
      if (!entry.write) continue;
      INFO(entry.phrase);
      std::string folded = fold(entry.phrase).text;
      std::replace(folded.begin(), folded.end(), '-', ' ');
      CHECK(std::any_of(vocabulary.phrases.begin(), vocabulary.phrases.end(), [&](const PhraseEntry& other) {
        return !other.write && other.phrase == folded && other.means == entry.means;
      }));
    }
}

TEST_CASE("every row of every language names only slots and concepts that exist") {
  for (const Vocabulary& vocabulary : built_in_vocabularies())
    for (const RowEntry& row : vocabulary.rows) {
      INFO(row.id);
      CHECK(is_row_known(vocabulary, row.pattern));
    }
}

TEST_CASE("every concept can be said in US English") {
  const Vocabulary& english = *find_vocabulary("en-US");
  for (std::size_t i = 0; i < english.concepts.size(); ++i) {
    INFO(english.concepts[i].name);
    CHECK(std::any_of(english.phrases.begin(), english.phrases.end(),
                      [i](const PhraseEntry& entry) { return entry.means == static_cast<Concept>(i); }));
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
  CHECK(faults_of("<svg/>")[0].message == "begins with <svg>, not with <words> or <rows>");
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
