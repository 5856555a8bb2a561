#include "pictures/floor.hpp"
#include "whorl.hpp"
#include "words/vocabulary.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

namespace {

using namespace whorl;
using Json = nlohmann::json;

std::string bytes_of(const std::filesystem::path& path) {
  std::ifstream file(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(file), {}};
}

Written written(const std::string& text, const std::string& language, WriteForm form = WriteForm::kept) {
  WriteOptions options;
  options.language = language;
  options.form = form;
  return read(text).written(options);
}

/// What a text is worked to, without where its lines stand: the stitches with what they go into.
Json work_of(const Pattern& pattern) {
  Json parts = Json::parse(pattern.chart().json())["parts"];
  for (Json& part : parts)
    for (Json& stitch : part["stitches"])
      for (const char* where : {"line", "column", "length"}) stitch.erase(where);
  for (Json& part : parts)
    for (Json& round : part["rounds"]) round.erase("label");
  return parts;
}

/// The counts of the rounds, what is placed and what is found, without where.
Json counts_of(const Pattern& pattern) {
  const Json all = Json::parse(pattern.check_json());
  Json counts = Json::array();
  for (const Json& line : all["lines"])
    counts.push_back({line["part"], line["from"], line["to"], line["uses"], line["counted"], line["stated"],
                      line["read"]});
  for (Json placing : all["placings"])
    if (placing["what"] != "note") counts.push_back({placing["what"], placing["part"]});
  return counts;
}

bool leaves_work(const Written& written) {
  for (const LeftPassage& left : written.left())
    if (left.work) return true;
  return false;
}

/// The law: what is written reads back as the same work, under that language alone, which the text itself
/// states.
void check_law(const std::string& text, const std::string& language, WriteForm form = WriteForm::kept) {
  const Pattern pattern = read(text);
  const Written out = written(text, language, form);
  INFO(language << "\n" << text << "\n-- written --\n" << out.text() << "\n-- left --\n" << out.left_table());
  CHECK(out.same_work());
  CHECK_FALSE(leaves_work(out));
  CHECK(counts_of(read(out.text())) == counts_of(pattern));
}

bool is_english(const std::string& text) {
  return Json::parse(read(text).check_json())["language"].get<std::string>().substr(0, 2) == "en";
}

std::vector<std::string> texts_of_folder() {
  std::vector<std::string> texts;
  const std::filesystem::path root(WHORL_SOURCE_DIR);
  for (const auto& entry : std::filesystem::directory_iterator(root / "examples"))
    if (entry.path().extension() == ".txt") texts.push_back(bytes_of(entry.path()));
  for (const auto& entry : std::filesystem::directory_iterator(root / "tests" / "cases"))
    if (entry.is_directory() && entry.path().filename() != "unread-line")
      texts.push_back(bytes_of(entry.path() / "pattern.txt"));
  return texts;
}

} // namespace

TEST_CASE("examples and cases written in English read back as the same work") {
  std::vector<std::string> texts;
  for (const std::string& text : texts_of_folder())
    if (is_english(text)) texts.push_back(text);
  REQUIRE(texts.size() >= 20);
  for (const std::string& text : texts)
    for (const char* language : {"en-US", "en-GB"})
      for (const WriteForm form : {WriteForm::kept, WriteForm::shortest, WriteForm::full})
        check_law(text, language, form);
}

TEST_CASE("from another language nothing is lost in silence") {
  for (const std::string& text : texts_of_folder()) {
    if (is_english(text)) continue;
    const Written out = written(text, "en-US");
    INFO(text << out.text() << out.left_table());
    CHECK((out.same_work() || leaves_work(out)));
  }
}

TEST_CASE("every stitch of an example goes into the same place in UK terms and back") {
  for (const char* name : {"acorn", "snail", "toadstool", "bellflower"}) {
    const std::string text =
        bytes_of(std::filesystem::path(WHORL_SOURCE_DIR) / "examples" / (std::string(name) + ".txt"));
    const std::string uk = written(text, "en-GB").text();
    INFO(uk);
    CHECK(Json::parse(read(uk).check_json())["language"] == "en-GB");
    CHECK(work_of(read(uk)) == work_of(read(text)));
    CHECK(work_of(read(written(uk, "en-US").text())) == work_of(read(text)));
  }
}

TEST_CASE("patterns by chance written in English read back as the same work") {
  for (const pictures::Shape shape : pictures::all_shapes)
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
      const std::string text = pictures::pattern_by_chance(shape, seed);
      check_law(text, "en-US");
      check_law(text, "en-GB", seed % 2 == 0 ? WriteForm::kept : WriteForm::shortest);
    }
}

TEST_CASE("every number from 1 to 25 is read back in every row that is written") {
  const std::vector<std::string> rows = {"{n} sc",
                                         "sc in next {n} sts",
                                         "{n} sc in next st",
                                         "sc to last {n} sts",
                                         "sk {n}, sc around",
                                         "inc in every {n}th st",
                                         "(sc, dec) x {n}",
                                         "*sc; repeat from * {n} more times",
                                         "{n} inc",
                                         "{n} dec",
                                         "BLO: {n} sc",
                                         "({n} hdc in next st) around",
                                         "ch {n}, turn"};
  for (const std::string& row : rows)
    for (int n = 1; n <= 25; ++n) {
      std::string line = row;
      line.replace(line.find("{n}"), 3, std::to_string(n));
      const std::string text = "Fir cone\n\nRnd 1: 60 sc in MR (60)\nRnd 2: " + line + "\n";
      check_law(text, "en-GB");
    }
}

/// Whether a passage is of a line of rounds.
bool is_of_round(const LeftPassage& left, const Json& lines) {
  for (const Json& line : lines)
    if (line["line"] == left.line) return true;
  return false;
}

TEST_CASE("in every language nearly all is written, what stays as typed is listed, and the rest reads back") {
  constexpr double most_left = 0.03; // of the lines of rounds
  std::vector<std::string> texts;
  for (const char* name : {"acorn", "snail", "toadstool", "gnome", "mouse"})
    texts.push_back(
        bytes_of(std::filesystem::path(WHORL_SOURCE_DIR) / "examples" / (std::string(name) + ".txt")));
  for (const pictures::Shape shape : pictures::all_shapes)
    texts.push_back(pictures::pattern_by_chance(shape, 5));
  for (const words::LanguageName& language : words::known_vocabularies()) {
    if (language.language.find("-x-") != std::string_view::npos || language.language.substr(0, 2) == "en")
      continue;
    std::size_t rounds = 0, left = 0;
    for (const std::string& text : texts) {
      if (text.empty()) continue;
      const Written out = written(text, std::string(language.language));
      INFO(language.language << "\n" << out.text() << "\n-- left --\n" << out.left_table());
      CHECK((out.same_work() || leaves_work(out)));
      const Json lines = Json::parse(read(text).check_json())["lines"];
      rounds += lines.size();
      for (const LeftPassage& passage : out.left()) left += passage.work && is_of_round(passage, lines) ? 1U : 0U;
    }
    INFO(language.language << ": " << left << " of " << rounds);
    CHECK(static_cast<double>(left) <= most_left * static_cast<double>(rounds));
  }
}
