#include "pattern/round_word.hpp"

#include "pattern/header.hpp"
#include "pattern/label.hpp"
#include "pattern/sentence.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <set>

namespace whorl::pattern {

namespace {

constexpr std::size_t least_word = 2, longest_word = 10; ///< letters of a word for round
constexpr std::size_t longest_link = 8;                  ///< bytes between the numbers of a range
constexpr std::size_t least_lines = 3;                   ///< with numbers that follow on
constexpr std::size_t longest_head = 64;                 ///< bytes of a line that are looked at
constexpr int most_rounds = 999;
constexpr int most_notes = 3; ///< lines between two rounds

using words::is_digit;
using words::is_folded_letter;

/// A word and a number at the head of a line.
struct Numbered {
  std::string word;
  int from = 0;
  int to = 0;             ///< the number behind a short link: the end of a range, or a part of the work
  std::size_t behind = 0; ///< where what follows the number begins
};

std::size_t skip(std::string_view text, std::size_t at, std::string_view what) {
  return std::min(text.find_first_not_of(what, at), text.size());
}

std::size_t behind_letters(std::string_view text, std::size_t at) {
  while (at < text.size() && is_folded_letter(text[at])) ++at;
  return at;
}

/// Takes the number at `at`; 0 if there is none.
int take_number(std::string_view text, std::size_t& at) {
  int number = 0;
  for (; at < text.size() && is_digit(text[at]) && number <= most_rounds; ++at)
    number = number * 10 + (text[at] - '0');
  return number;
}

bool take_word(std::string_view text, std::size_t& at, Numbered& numbered) {
  const std::size_t end = behind_letters(text, at);
  if (end - at < least_word || end - at > longest_word) return false;
  numbered.word = text.substr(at, end - at);
  at = end;
  return true;
}

/// "Vta 3", "krs. 4".
bool word_first(std::string_view text, Numbered& numbered) {
  std::size_t at = 0;
  if (!take_word(text, at, numbered)) return false;
  at = skip(text, at, ". ");
  numbered.from = take_number(text, at);
  numbered.behind = at;
  return numbered.from > 0;
}

/// "3. krs", "1\xC2\xAA carr."
bool number_first(std::string_view text, Numbered& numbered) {
  std::size_t at = 0;
  numbered.from = take_number(text, at);
  if (numbered.from == 0) return false;
  if (const std::size_t ending = behind_letters(text, at); ending - at <= 3) at = ending;
  at = skip(text, at, ". ");
  const bool word = take_word(text, at, numbered);
  const std::size_t mark = skip(text, at, " ");
  numbered.behind = at;
  return word && mark < text.size() && std::string_view(".:-").find(text[mark]) != std::string_view::npos;
}

/// The number that a range may end with.
int end_of_range(std::string_view text, const Numbered& numbered) {
  const std::size_t digit = text.find_first_of("0123456789", numbered.behind);
  const bool near =
      digit != std::string_view::npos && digit - numbered.behind <= longest_link + numbered.word.size();
  std::size_t at = digit;
  return near ? take_number(text, at) : 0;
}

Numbered numbered_line(std::string_view line) {
  const std::string text = words::fold(line.substr(0, longest_head)).text;
  Numbered numbered;
  const std::size_t begin = skip(text, 0, " ");
  const std::string_view typed = std::string_view(text).substr(begin);
  if (typed.empty() || !(word_first(typed, numbered) || number_first(typed, numbered))) return {};
  if (skip(typed, numbered.behind, " .:-") == typed.size()) return {}; // a heading
  numbered.to = end_of_range(typed, numbered);
  return numbered;
}

/// Whether no phrase of the language is this word.
bool is_unknown(const std::string& word, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(word, 0, vocabulary);
  const WordsAt words = words_at(sentence, 0);
  return std::all_of(words.begin(), words.end(),
                     [](const words::Word& w) { return w.kind == words::WordKind::unknown; });
}

bool is_told(const OwnWords& own, std::string_view word) {
  return std::any_of(own.phrases.begin(), own.phrases.end(),
                     [word](const words::PhraseEntry& entry) { return entry.phrase == word; });
}

/// Whether a line begins a piece anew, as each line of a list of petals does.
bool starts_anew(std::string_view line, const words::Vocabulary& vocabulary, const OwnWords& own) {
  const words::Concept from_hook = words::find_concept(vocabulary, "from hook");
  const Sentence sentence = look_up(line, 0, vocabulary);
  return std::any_of(sentence.lattice.words.begin(), sentence.lattice.words.end(), [&](const words::Word& w) {
    return w.kind == words::WordKind::phrase &&
           !is_told(own, sentence.text().substr(w.begin, w.end - w.begin)) &&
           (w.means == from_hook || sort_of(sentence, w) == words::ConceptClass::start);
  });
}

/// The lines of a text that begin with unknown words and numbers that follow on.
class RoundWords {
public:
  RoundWords(const Source& source, const words::Vocabulary& vocabulary, const OwnWords& own)
      : source_(source), vocabulary_(vocabulary), own_(own) {}

  std::set<std::string> find() {
    for (std::size_t i = 0; i < source_.line_count(); ++i) {
      const std::string_view line = trim(source_.at(source_.line(i)));
      if (!line.empty() && has_known_word(line)) return {};
      if (!line.empty()) meet(line);
    }
    end_run();
    return std::move(found_);
  }

private:
  /// "Rnd 1:": where rounds have a known word, other words with numbers name parts.
  bool has_known_word(std::string_view line) const {
    const auto labels = read_labels(line, 0, vocabulary_);
    return !labels.empty() && labels.front().word && !labels.front().relative;
  }

  void meet(std::string_view line) {
    const Numbered numbered = numbered_line(line);
    const bool told = !numbered.word.empty() && is_unknown(numbered.word, vocabulary_);
    if (!told && (is_digit(line.front()) || ++notes_ > most_notes)) end_run();
    if (!told) return;
    notes_ = 0;
    const bool follows =
        !run_.empty() && (numbered.from == run_.back().from + 1 || numbered.from == run_.back().to + 1);
    if (!follows) end_run();
    if (!follows && numbered.from > 2) return;
    if (follows && starts_anew(line, vocabulary_, own_)) ++anew_;
    run_.push_back(numbered);
  }

  void end_run() {
    if (run_.size() >= least_lines && 2 * anew_ < run_.size())
      for (const Numbered& line : run_) found_.insert(line.word);
    run_.clear();
    anew_ = 0;
  }

  const Source& source_;
  const words::Vocabulary& vocabulary_;
  const OwnWords& own_;
  std::vector<Numbered> run_;
  int notes_ = 0;        ///< other lines behind the last of the run
  std::size_t anew_ = 0; ///< lines of the run, but for its first, that begin a piece
  std::set<std::string> found_;
};

} // namespace

void add_round_words(const Source& source, const words::Vocabulary& vocabulary, OwnWords& own) {
  if (!vocabulary.blanks_between_words) return;
  for (const std::string& word : RoundWords(source, vocabulary, own).find()) {
    if (is_told(own, word)) continue;
    words::PhraseEntry entry;
    entry.phrase = word;
    entry.means = words::find_concept(vocabulary, "round");
    own.phrases.push_back(std::move(entry));
  }
}

} // namespace whorl::pattern
