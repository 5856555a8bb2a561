#include "pattern/chain_habit.hpp"

#include "pattern/costs.hpp"
#include "pattern/limits.hpp"
#include "pattern/sentence.hpp"
#include "pattern/text_words.hpp"

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

private:
  void hear(std::uint32_t at) {
    not_counted_ = not_counted_ || word_meaning(sentence_, at, sentence_.not_counted) != nullptr;
    counted_ = counted_ || word_meaning(sentence_, at, sentence_.counted) != nullptr;
    const words::Word* chain = word_meaning(sentence_, at, chain_);
    const bool inside = at > 0 && sentence_.text()[at - 1] >= 'a' && sentence_.text()[at - 1] <= 'z';
    if (chain == nullptr || inside) return;
    chains_named_ = true;
    if (number_ == 0) number_ = number_behind(chain->end);
    if (number_ == 0) number_ = number_before(at);
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

void hear_line(std::string_view typed, const words::Vocabulary& vocabulary, std::vector<ChainHabit>& habits) {
  const std::string line = words::fold(typed).text; // its marks in one form: "、" is a comma too
  bool counted = false;
  for (std::size_t at = 0; at < line.size();) {
    const std::size_t end = std::min(line.find_first_of(".;,!:", at), line.size());
    const std::string_view text = std::string_view(line).substr(at, end - at);
    at = end + 1;
    if (text.size() < 4 || text.size() > longest_clause) continue;
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
  const words::Folded folded = words::fold(reader.source.at(line));
  const bool begins =
      folded.text.find("beg") != std::string::npos || folded.text.find("start") != std::string::npos;
  if (!begins || folded.text.find("count") == std::string::npos) return false;
  const words::Concept chain = words::find_concept(reader.vocabulary, "ch");
  const words::Lattice lattice = words::lattice(folded, reader.vocabulary);
  const auto works = [&](const words::Word& word) {
    if (word.kind != words::WordKind::phrase || word.means == chain) return false;
    const words::ConceptClass sort = reader.vocabulary.concepts[word.means].sort;
    return sort == words::ConceptClass::stitch || sort == words::ConceptClass::decrease;
  };
  std::vector<ChainHabit> habits;
  hear_line(reader.source.at(line), reader.vocabulary, habits);
  return !habits.empty() && std::none_of(lattice.words.begin(), lattice.words.end(), works);
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
