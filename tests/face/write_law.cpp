#include "fabric/same_work.hpp"
#include "pictures/floor.hpp"
#include "whorl.hpp"
#include "whorl_write.hpp"
#include "words/vocabulary.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstdlib>
#include <iostream>
#include <iterator>
#include <map>
#include <string>
#include <vector>

/// The law in every language: what is written reads back as the same work, and back in English too. A line
/// that a language cannot say stays as typed and is told of; how many may is said here.

namespace {

using namespace whorl;
using Json = nlohmann::json;

/// All but English; of them those that WHORL_LANGUAGES names, if it does.
std::vector<std::string> languages() {
  const char* const named = std::getenv("WHORL_LANGUAGES");
  std::vector<std::string> all;
  for (const words::LanguageName& language : words::known_vocabularies()) {
    const std::string tag(language.language);
    if (tag.find("-x-") != std::string::npos || tag.substr(0, 2) == "en") continue;
    if (named == nullptr || (' ' + std::string(named) + ' ').find(' ' + tag + ' ') != std::string::npos)
      all.push_back(tag);
  }
  return all;
}

Written written(const std::string& text, const std::string& language) {
  WriteOptions options;
  options.language = language;
  return read(text).written(options);
}

/// Whether two texts, each alone under its own language, are the same work from the first stitch to the last.
bool are_same_work(const std::string& a, const std::string& b, const char* language) {
  const words::Vocabulary& words = *words::find_vocabulary(language);
  return fabric::same_work(read_work(a, words).fabric, read_work(b, words).fabric).empty();
}

struct Kept {
  std::size_t lines = 0, left = 0, partly = 0, patterns = 0;
};

std::size_t left_of_rounds(const Written& out, const Json& lines) {
  std::size_t left = 0;
  for (const LeftPassage& passage : out.left())
    for (const Json& line : lines)
      if (passage.work && line["line"] == passage.line) {
        ++left;
        break;
      }
  return left;
}

bool leaves_work(const Written& out) {
  return std::any_of(out.left().begin(), out.left().end(),
                     [](const LeftPassage& passage) { return passage.work; });
}

/// Into a language and back to English.
void there_and_back(const std::string& text, const std::string& language, Kept& kept) {
  const Pattern pattern = read(text);
  const Written there = written(text, language);
  const std::size_t left = left_of_rounds(there, Json::parse(pattern.check_json())["lines"]);
  ++kept.patterns;
  kept.lines += pattern.rounds().size();
  kept.left += left;
  INFO(language << "\n"
                << text << "\n-- written --\n"
                << there.text() << "\n-- left --\n"
                << there.left_table());
  if (leaves_work(there)) { // an English line is among those of the language
    ++kept.partly;
    return;
  }
  CHECK(there.same_work());
  const Written back = written(there.text(), "en-US");
  INFO("-- back --\n" << back.text() << "\n-- left --\n" << back.left_table());
  const bool left_again = leaves_work(back);
  if (left_again) ++kept.partly;
  const bool same = left_again || are_same_work(back.text(), text, "en-US");
  CHECK(same);
}

std::string with_number(std::string row, int number) {
  for (std::size_t at = row.find("{n}"); at != std::string::npos; at = row.find("{n}"))
    row.replace(at, 3, std::to_string(number));
  return row;
}

/// One pattern with a line for each of the rows that takes as many stitches as there are.
std::string rows_with(int n) {
  std::string text = "Fir cone\n\nTerms: US\n\n";
  const std::vector<std::string> rows = {"{n} sc, sc around",
                                         "{n} sc in next st, sc around",
                                         "sc to last {n} sts, {n} hdc",
                                         "sk {n}, sc around",
                                         "(sc, dec) x {n}, sc around",
                                         "*sc; repeat from * {n} more times, sc around",
                                         "{n} inc, sc around",
                                         "{n} dec, sc around",
                                         "BLO: {n} sc, sc around",
                                         "FLO: {n} hdc, dc around",
                                         "({n} hdc in next st) x 2, sc around",
                                         "{n} dc, tr around",
                                         "ch {n}, skip {n}, sc around",
                                         "{n} FPdc, sc around"};
  int part = 0;
  for (const std::string& row : rows)
    text += "PIECE " + std::string(1, static_cast<char>('A' + part++)) +
            "\nRnd 1: 80 sc in MR (80)\nRnd 2: " + with_number(row, n) + "\n\n";
  return text;
}

/// A language must not lose more than three of a hundred lines, of few lines more than one; in silence it
/// loses nothing.
void check_kept(const Kept& kept) { CHECK(kept.left * 100 <= std::max<std::size_t>(100, kept.lines * 3)); }

/// `shapes`: so many of the shapes a language, others in the next.
void random_law(int seeds, std::uint64_t first, std::size_t shapes) {
  std::size_t next = 0;
  for (const std::string& language : languages()) {
    Kept kept;
    for (std::size_t k = 0; k < shapes; ++k, ++next)
      for (int i = 0; i < seeds; ++i) {
        const pictures::Shape shape = pictures::all_shapes[next % std::size(pictures::all_shapes)];
        there_and_back(pictures::pattern_by_chance(shape, first + static_cast<std::uint64_t>(i)), language,
                       kept);
      }
    std::cout << language << ": " << kept.patterns << " patterns by chance, " << kept.left << " of "
              << kept.lines << " lines left as typed, in " << kept.partly << " patterns" << std::endl;
    check_kept(kept);
  }
}

} // namespace

TEST_CASE("in every language every number reads back in every row, and so it does back in English") {
  for (const std::string& language : languages()) {
    Kept kept;
    for (const int n : {0, 1, 2, 5, 21}) there_and_back(rows_with(n), language, kept);
    std::cout << language << ": rows and numbers, " << kept.left << " of " << kept.lines
              << " lines left as typed\n";
  }
}

TEST_CASE("patterns by chance read back in every language, and back in English") { random_law(1, 31, 4); }

TEST_CASE("every number to 25 and a thousand patterns by chance in every language", "[.thousand]") {
  for (const std::string& language : languages()) {
    Kept kept;
    for (int n = 0; n <= 25; ++n) there_and_back(rows_with(n), language, kept);
    std::cout << language << ": rows and numbers, " << kept.left << " of " << kept.lines
              << " lines left as typed\n";
  }
  random_law(91, 1001, std::size(pictures::all_shapes));
}
