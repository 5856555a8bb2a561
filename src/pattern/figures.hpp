#pragma once

#include "pattern/sentence.hpp"
#include "pattern/tree.hpp"

#include <vector>

namespace whorl::pattern {

struct Concepts {
  words::Concept count_word, total, times, around, in, repeat, conjunction, more, join, turn, round, row, per,
      each, top, slip;
};
Concepts concepts_of(const words::Vocabulary& vocabulary);

/// One look for counts.
struct Search {
  const Sentence& sentence;
  const std::vector<stitch::StitchKind>& kinds;
  Concepts concepts;
};

bool means(const Search& search, std::uint32_t at, words::Concept wanted);
std::uint32_t next_word(const Search& search, std::uint32_t at);

/// Behind words that say a count follows or stood before: "you now have", "in total"; `at` if there are none.
std::uint32_t pass_total(const Search& search, std::uint32_t at);

/// "Total: 36 sts", "10 dc and 3 ch-sps", "16 sts: 8 sc, 8 pc" from `begin`; where it ends, `begin` if it is
/// no count.
std::uint32_t read_figures(const Search& search, std::uint32_t begin, std::vector<Stated>& out);

/// "(長編み12目)": the stitch stands before the number where no blanks divide the words; `begin` if none
/// does.
std::uint32_t read_figures_of_stitch(const Search& search, std::uint32_t begin, std::vector<Stated>& out);

/// Two bare numbers are a list of sizes, not a count.
bool is_one_count(const std::vector<Stated>& all);

} // namespace whorl::pattern
