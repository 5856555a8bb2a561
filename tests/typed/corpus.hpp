#pragma once

#include <cstdint>
#include <string>
#include <vector>

namespace typed {

/// How many of something a round has: "bo 6", "back 18", "dec 6", "inc 6".
struct Some {
  std::string what;
  std::uint32_t count = 0;
};

/// A round, or several alike, as the author has it in mind.
struct Meant {
  int from = 0;
  int to = 0;
  std::int64_t uses = -1;  ///< of the last of them; -1: not compared
  std::int64_t makes = -1; ///< likewise
  std::vector<Some> some;
};

/// A right pattern typed in somebody's manner, and what its author has in mind.
struct Case {
  std::string file;
  std::string habit;
  std::string pattern;
  std::vector<Meant> meant;
};

/// All cases of tests/typed/HALF, in the order of the files.
std::vector<Case> read_half(const std::string& half);

/// The language that its patterns are read in, where WHORL_LANGUAGE names one; else "": it is found out.
std::string language_of_corpus();

/// The tags of the languages that tests/typed/languages has corpora of, in order.
std::vector<std::string> languages_of_corpora();

/// Adds the word files of the folder that WHORL_WORDS names, if it names one.
void add_words_of_corpus();

/// What became of one case.
struct Verdict {
  int rounds = 0; ///< meant, and read although nobody meant them
  int right = 0;
  int alarms = 0;                    ///< errors and warnings, all of them false
  std::vector<std::string> troubles; ///< a line each
};
Verdict judge(const Case& one);

} // namespace typed
