#include "pattern/chain_habit.hpp"

#include "pattern/costs.hpp"
#include "pattern/limits.hpp"
#include "pattern/sentence.hpp"
#include "pattern/text_words.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {

namespace {

constexpr std::size_t longest_clause = 160; ///< bytes
constexpr std::uint32_t most_chains = 6;    ///< that stand for a stitch

bool ends_with(std::string_view text, std::string_view end) {
  while (!text.empty() && (text.back() == ' ' || text.back() == '.' || text.back() == '!'))
    text.remove_suffix(1);
  return text.size() >= end.size() && text.substr(text.size() - end.size()) == end;
}

/// What one clause says; `counted`: whether the one before counts something ("…; the ch 2 is not").
class Clause {
public:
  Clause(std::string_view text, const words::Vocabulary& vocabulary)
      : sentence_(look_up(text, 0, vocabulary)), chain_(words::find_concept(vocabulary, "ch")) {
    for (std::uint32_t at = 0; at < sentence_.size(); ++at) hear(at);
    counted_ = counted_ || equals_stitch();
  }

  std::optional<ChainHabit> habit(bool counted) const {
    const bool denied =
        not_counted_ ||
        (counted && (ends_with(sentence_.text(), " is not") || ends_with(sentence_.text(), " isn't")));
    if (!chains_named_ || (!denied && !counted_)) return std::nullopt;
    const bool of_start = has_text_word(sentence_.vocabulary, sentence_.text(), TextWord::of_start);
    if (number_ == 0 && !of_start) return std::nullopt;
    if (number_ > most_chains) return std::nullopt;
    return ChainHabit{number_, !denied};
  }

  bool counts() const { return counted_ && !not_counted_; }

  /// Whether a stitch that is no chain, or a ring to work into, is named.
  bool works() const { return stitches() > 0; }

  /// Whether at most the one stitch is named that chains are as good as.
  bool only_counts() const { return stitches() < 2; }

private:
  /// How many stitches but chains are named; one that is made several times, a ring and what goes into each
  /// place are two, what words for counting hold is none.
  int stitches() const {
    int named = 0;
    bool several = false, each = false;
    for (std::uint32_t at = 0; at < sentence_.size();) {
      const WordsAt words = words_at(sentence_, at);
      if (words.empty()) {
        ++at;
        continue;
      }
      const words::Word& word = *words.first;
      const words::ConceptClass sort = sort_of(sentence_, word);
      const bool says = word.means == sentence_.counted || word.means == sentence_.not_counted;
      const bool in_each = each && (sort == words::ConceptClass::place || is_work(sentence_, word));
      if (sort == words::ConceptClass::start || in_each) named += 2;
      each = holds_each(word);
      if (!says && is_work(sentence_, word) && word_meaning(sentence_, at, chain_) == nullptr)
        named += several ? 2 : 1;
      several = word.kind == words::WordKind::number && word.number > 1;
      at = pass(std::max(word.end, at + 1));
    }
    return named;
  }

  /// "en cada": one word for "in" and "each".
  bool holds_each(const words::Word& word) const {
    const words::Concept each = words::find_concept(sentence_.vocabulary, "each");
    for (std::uint32_t at = word.begin; at < word.end; ++at)
      if (word_meaning(sentence_, at, each) != nullptr) return true;
    return false;
  }

  void hear(std::uint32_t at) {
    not_counted_ = not_counted_ || word_meaning(sentence_, at, sentence_.not_counted) != nullptr;
    counted_ = counted_ || word_meaning(sentence_, at, sentence_.counted) != nullptr;
    const words::Word* chain = word_meaning(sentence_, at, chain_);
    const bool inside = at > 0 && sentence_.text()[at - 1] >= 'a' && sentence_.text()[at - 1] <= 'z';
    if (inside) return;
    if (chain == nullptr) return hear_place(at);
    chains_named_ = true;
    if (number_ == 0) number_ = number_behind(chain->end);
    if (number_ == 0) number_ = number_before(at);
  }

  /// "3 ch = 1 dc", "3 ch = 1st dc".
  bool equals_stitch() const {
    const std::size_t equal = sentence_.text().find('=');
    if (equal == std::string_view::npos || number_ == 0) return false;
    std::uint32_t at = pass(static_cast<std::uint32_t>(equal) + 1);
    const words::Word* number = number_at(sentence_, at);
    if (number != nullptr && number->number != 1) return false;
    if (number != nullptr) at = pass(number->end);
    while (at < sentence_.size() && sentence_.text()[at] == '.') at = pass(at + 1); // "1. Stb"
    const WordsAt words = words_at(sentence_, at);
    return !words.empty() && is_work(sentence_, *words.first) &&
           word_meaning(sentence_, at, chain_) == nullptr;
  }

  /// "The 3 stitches at the beginning": chains, where so many of them begin a round.
  void hear_place(std::uint32_t at) {
    const WordsAt words = words_at(sentence_, at);
    if (words.empty() || sort_of(sentence_, *words.first) != words::ConceptClass::place) return;
    if (!has_text_word(sentence_.vocabulary, sentence_.text(), TextWord::of_start)) return;
    const std::uint32_t before = number_before(at);
    chains_named_ = chains_named_ || before > 1;
    if (number_ == 0 && before > 1) number_ = before;
  }

  std::uint32_t pass(std::uint32_t at) const {
    while (at < sentence_.size() && (sentence_.text()[at] == ' ' || sentence_.text()[at] == '-')) ++at;
    return at;
  }

  std::uint32_t number_behind(std::uint32_t at) const {
    const words::Word* number = number_at(sentence_, pass(at));
    return number == nullptr ? 0 : number->number;
  }

  /// "3 ch", "3-ch".
  std::uint32_t number_before(std::uint32_t chain) const {
    for (std::uint32_t at = 0; at < chain; ++at)
      if (const words::Word* number = number_at(sentence_, at);
          number != nullptr && pass(number->end) == chain)
        return number->number;
    return 0;
  }

  const Sentence sentence_;
  const words::Concept chain_;
  bool counted_ = false, not_counted_ = false, chains_named_ = false;
  std::uint32_t number_ = 0;
};

/// Where the clause ends that begins at a place of a folded line: "1. Stb" is no end.
std::size_t end_of_clause(std::string_view line, std::size_t at) {
  std::size_t end = line.find_first_of(".;,!:", at);
  while (end < line.size() && end > at && line[end] == '.' && words::is_digit(line[end - 1]) &&
         line.find_first_not_of(' ', end + 1) != std::string_view::npos)
    end = line.find_first_of(".;,!:", end + 1);
  return std::min(end, line.size());
}

/// The clauses of a folded line: its marks are in one form, "、" is a comma too.
std::vector<std::string_view> clauses_of(std::string_view line) {
  std::vector<std::string_view> clauses;
  for (std::size_t at = 0; at < line.size();) {
    const std::size_t end = end_of_clause(line, at);
    const std::string_view text = line.substr(at, end - at);
    at = end + 1;
    if (text.size() >= 4 && text.size() <= longest_clause) clauses.push_back(text);
  }
  return clauses;
}

void hear_line(std::string_view typed, const words::Vocabulary& vocabulary, std::vector<ChainHabit>& habits) {
  const std::string line = words::fold(typed).text;
  bool counted = false;
  for (const std::string_view text : clauses_of(line)) {
    const Clause clause(text, vocabulary);
    if (const auto habit = clause.habit(counted)) habits.push_back(*habit);
    counted = clause.counts();
  }
}

/// How many chains a reading takes for a stitch, or not; 0: none.
std::uint32_t chains_of(const Reading& reading) {
  if (reading.turning_chains != 0) return reading.turning_chains;
  for (const Node& node : reading.nodes) {
    if (node.kind != NodeKind::work || node.work.act != Act::stitch) continue;
    return node.work.where == Where::chain ? node.work.nth - 1U : node.work.times;
  }
  return 0;
}

bool goes_against(const std::vector<ChainHabit>& habits, const Reading& reading) {
  const bool counts = (reading.habits & starting_chain_counts) != 0;
  if (!counts && (reading.habits & starting_chain_does_not) == 0) return false;
  const std::uint32_t chains = chains_of(reading);
  auto said = std::find_if(habits.rbegin(), habits.rend(),
                           [chains](const ChainHabit& habit) { return habit.chains == chains; });
  if (said == habits.rend()) // nothing is said of so many: what is said of all
    said = std::find_if(habits.rbegin(), habits.rend(),
                        [](const ChainHabit& habit) { return habit.chains == 0; });
  return said != habits.rend() && said->counts != counts;
}

} // namespace

bool only_tells_habit(const Reader& reader, Span line) {
  const std::string text = words::fold(reader.source.at(line)).text;
  bool told = false, counted = false;
  for (const std::string_view clause_text : clauses_of(text)) {
    const Clause clause(clause_text, reader.vocabulary);
    const bool habit = clause.habit(counted).has_value();
    if (habit ? !clause.only_counts() : clause.works()) return false;
    told = told || habit;
    counted = clause.counts();
  }
  return told;
}

std::vector<Span> habits_told_in(const Reader& reader, Span work) {
  std::vector<Span> told;
  if (!names_concept(reader, work, "from hook") || !names_concept(reader, work, "ch")) return told;
  const words::Folded folded = words::fold(reader.source.at(work), work.begin);
  for (std::size_t at = 0; at < folded.text.size();) {
    const std::size_t end = end_of_clause(folded.text, at);
    const Span clause = folded.span(at, end);
    if (only_tells_habit(reader, clause) && !names_concept(reader, clause, "from hook"))
      told.push_back(folded.span(at, std::min(end + 1, folded.text.size())));
    at = end + 1;
  }
  return told;
}

std::vector<ChainHabit> chain_habits(const Reader& reader, const Cut& cut) {
  std::vector<ChainHabit> habits;
  for (const Line& line : cut.lines)
    if (line.kind != LineKind::round) hear_line(reader.source.at(line.span), reader.vocabulary, habits);
  return habits;
}

bool keep_habits(const std::vector<ChainHabit>& habits, Way& way) {
  bool any = false;
  for (Reading& reading : way.readings) {
    if (!goes_against(habits, reading)) continue;
    reading.cost += cost::habit_said;
    any = true;
  }
  if (any)
    std::stable_sort(way.readings.begin(), way.readings.end(),
                     [](const Reading& a, const Reading& b) { return a.cost < b.cost; });
  return any;
}

} // namespace whorl::pattern
