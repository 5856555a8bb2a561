#include "pattern/repeat_words.hpp"

#include "pattern/text_words.hpp"
#include "pattern/word_names.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

bool means(const Sentence& sentence, std::uint32_t at, words::Concept wanted) {
  return word_meaning(sentence, at, wanted) != nullptr;
}

bool is_times(const Sentence& sentence, std::uint32_t at) {
  return sentence.brackets.stars[at] == StarRole::times || means(sentence, at, sentence.times);
}

/// Behind the word that stands at `at`.
std::uint32_t behind_word(const Sentence& sentence, std::uint32_t at) {
  const WordsAt words = words_at(sentence, at);
  return skip_blanks(sentence.text(), words.empty() ? at + 1 : std::max(words.first->end, at + 1));
}

/// Whether from `at` on the round is only closed or turned, and its count told: "x 8, join 24".
bool only_closes(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  const auto is = [&](const char* name) {
    return means(sentence, at, words::find_concept(sentence.vocabulary, name));
  };
  static constexpr const char* closing[] = {"join", "turn"};
  static constexpr const char* also[] = {"sl st", "in", "first", "with", "st", "and", "top", "to", "filler"};
  bool closes = false;
  while (at < end) {
    const bool word = std::any_of(std::begin(closing), std::end(closing), is);
    const bool more =
        closes && (number_at(sentence, at) != nullptr || std::any_of(std::begin(also), std::end(also), is));
    if (!word && !more && !is_separator(sentence.text()[at])) return false;
    closes = closes || word;
    at = behind_word(sentence, at);
  }
  return closes;
}

/// "…, four times, | and two more sc": behind the number of times other work follows.
bool goes_on(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  if (at >= end || sentence.text()[at] != ',') return false;
  return means(sentence, skip_blanks(sentence.text(), at + 1), sentence.conjunction);
}

/// True if "x 6", "6 x" or "6 times" stands from `at` to `end`, and not right behind a bracket that it
/// repeats.
bool says_times(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  const std::string_view text = sentence.text();
  const std::uint32_t before = trim_separators(text, 0, at);
  if (before == 0 || text[before - 1] == ')' || text[before - 1] == ']' || text[before - 1] == '*' ||
      text[before - 1] == '|')
    return false;
  const bool times_first = is_times(sentence, at);
  const bool number_first = number_at(sentence, at) != nullptr;
  if (!times_first && !number_first) return false;
  const std::uint32_t second = behind_word(sentence, at);
  if (second >= end) return false;
  std::uint32_t last = behind_word(sentence, second);
  if (last < end && means(sentence, last, words::find_concept(sentence.vocabulary, "total")))
    last = behind_word(sentence, last);
  const std::uint32_t stop = trim_separators(text, second, last);
  const bool sentence_ends = stop < end && (text[stop] == '.' || text[stop] == ';');
  if (last < trim_separators(text, second, end) && !sentence_ends && !only_closes(sentence, last, end) &&
      !goes_on(sentence, last, end))
    return false;
  return number_first ? is_times(sentence, second) : number_at(sentence, second) != nullptr;
}

/// "2 sc, inc twice": the word is the last of the line, and stands behind no bracket.
bool says_twice(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  const words::Word* twice = word_meaning(sentence, at, words::find_concept(sentence.vocabulary, "twice"));
  const std::string_view text = sentence.text();
  const std::uint32_t before = trim_separators(text, 0, at);
  return twice != nullptr && before > 0 && std::string_view(")]*|").find(text[before - 1]) == text.npos &&
         trim_separators(text, twice->end, end) <= twice->end;
}

} // namespace

namespace {

/// The number and the words beside it that stand right before a verb: "2 fM, Zun, | noch 5x wiederholen".
class CountBefore {
public:
  explicit CountBefore(const Sentence& sentence) : sentence_(sentence) {}

  void pass(std::uint32_t at) {
    const bool number = number_at(sentence_, at) != nullptr;
    const bool times = is_times(sentence_, at);
    const bool beside = is_named(sentence_, at, {"more", "total", "around"});
    if (words_at(sentence_, at).empty()) return;
    if (!number && !times && !beside) {
      begin_ = none;
      number_ = times_ = false;
      return;
    }
    if (begin_ == none) begin_ = at;
    number_ = number_ || number;
    times_ = times_ || times;
  }

  /// Where they begin; `at` if they do not stand right before it.
  std::uint32_t begin_or(std::uint32_t at) const { return begin_ != none && number_ && times_ ? begin_ : at; }

private:
  static constexpr std::uint32_t none = 0xFFFFFFFF;
  const Sentence& sentence_;
  std::uint32_t begin_ = none;
  bool number_ = false, times_ = false;
};

} // namespace

namespace {

/// "das 6x", but not "in | das nächste Stb": behind a word for "in" a small word only leads to the place.
bool says_repeat(const Sentence& sentence, std::uint32_t at, words::Concept repeat) {
  if (!means(sentence, at, repeat)) return false;
  const std::string_view text = sentence.text();
  std::uint32_t before = at;
  while (before > 0 && text[before - 1] == ' ') --before;
  while (before > 0 && text[before - 1] != ' ' && before < at) --before;
  const words::Word* in = before < at ? word_meaning(sentence, before, sentence.in) : nullptr;
  return in == nullptr || skip_blanks(text, in->end) != at;
}

} // namespace

std::uint32_t find_repeat(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  const words::Concept repeat = words::find_concept(sentence.vocabulary, "repeat");
  const words::Concept around = words::find_concept(sentence.vocabulary, "around");
  CountBefore count(sentence);
  std::uint32_t last = end;
  for (std::uint32_t at = begin; at < end;) {
    const std::int32_t index = sentence.brackets.at[at];
    const bool jumps = index != no_bracket && sentence.brackets.all[static_cast<std::size_t>(index)].end > at;
    if (!jumps && at > begin && says_repeat(sentence, at, repeat)) return std::max(count.begin_or(at), begin);
    if (!jumps) count.pass(at);
    if (!jumps && (means(sentence, at, around) ||
                   (last == end && (says_times(sentence, at, end) || says_twice(sentence, at, end)))))
      last = at;
    const words::Word* round =
        jumps ? nullptr : word_meaning(sentence, at, around); // "all round" is one word
    at = jumps              ? sentence.brackets.all[static_cast<std::size_t>(index)].end
         : round != nullptr ? round->end
                            : at + 1;
  }
  return last;
}

std::uint32_t behind_leading_repeat(const Sentence& sentence, std::uint32_t begin) {
  const words::Concept repeat = words::find_concept(sentence.vocabulary, "repeat");
  return begin < sentence.size() && means(sentence, begin, repeat) ? behind_word(sentence, begin) : begin;
}

std::uint32_t behind_repeat(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  const words::Concept repeat = words::find_concept(sentence.vocabulary, "repeat");
  const words::Concept around = words::find_concept(sentence.vocabulary, "around");
  std::uint32_t at = begin;
  bool number = false, said = false;
  for (int words = 0; words < 4 && at < end && sentence.text()[at] != ':'; ++words) {
    const bool counts = number_at(sentence, at) != nullptr || means(sentence, at, around);
    const bool says = is_times(sentence, at) || means(sentence, at, repeat);
    if (!counts && !says) return begin;
    number = number || counts;
    said = said || says;
    at = behind_word(sentence, at);
  }
  return at < end && sentence.text()[at] == ':' && number && said ? at + 1 : begin;
}

namespace {

/// "begin with …", "so start with …" at the head of a stretch.
bool says_begin(const Sentence& sentence, std::uint32_t begin) {
  const std::string_view text = sentence.text();
  for (const std::string_view lead : {"so ", "we ", "now "})
    if (text.substr(begin, lead.size()) == lead) begin += static_cast<std::uint32_t>(lead.size());
  for (const std::string_view word : {"begin", "start", "first "})
    if (text.substr(begin, word.size()) == word) return true;
  return false;
}

} // namespace

words::Span then_repeated(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  if (!says_begin(sentence, begin)) return {};
  const std::string_view text = sentence.text().substr(0, end);
  const std::size_t then = text.find("then ", begin);
  if (then == std::string_view::npos) return {};
  const std::uint32_t from = skip_blanks(text, static_cast<std::uint32_t>(then) + 5);
  for (std::uint32_t at = from; at < end; ++at) {
    if (number_at(sentence, at) == nullptr || text[at - 1] != ' ') continue;
    const std::uint32_t times = behind_word(sentence, at);
    if (times < end && is_times(sentence, times)) return {from, trim_separators(text, from, at)};
  }
  return {};
}

namespace {

/// What the words of a list are, as far as they tell whether it goes round as a whole.
struct Listed {
  bool plain = true;
  int pieces = 0;
  int kinds = 0;
  bool counted = false; ///< a number above one
  bool shaping = false; ///< the last piece is an increase or decrease
  words::Concept last = words::no_concept;
};

bool may_be_listed(const Sentence& sentence, const words::Word& word) {
  if (word.kind == words::WordKind::number) return true;
  if (word.kind == words::WordKind::mark)
    return is_separator(word.mark) || word.mark == '+' || word.mark == '-';
  if (word.kind != words::WordKind::phrase) return false;
  const std::string_view name = sentence.vocabulary.concepts[word.means].name;
  return name == "and" || name == "in" || name == "next" || name == "st" ||
         sort_of(sentence, word) == words::ConceptClass::loops;
}

void list_piece(const Sentence& sentence, const words::Word& word, Listed& listed) {
  const std::string_view name = sentence.vocabulary.concepts[word.means].name;
  if (name == "ch" || name == "sl st") listed.plain = false;
  ++listed.pieces;
  if (word.means != listed.last) ++listed.kinds;
  listed.last = word.means;
  listed.shaping = sort_of(sentence, word) != words::ConceptClass::stitch;
}

} // namespace

bool is_plain_list(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  Listed listed;
  for (std::uint32_t at = begin; at < end && listed.plain; at = behind_word(sentence, at)) {
    const WordsAt words = words_at(sentence, at);
    const auto works = [&](const words::Word& word) { return is_work(sentence, word); };
    const words::Word* work = std::find_if(words.begin(), words.end(), works);
    const words::Word* number = number_at(sentence, at);
    listed.counted = listed.counted || (number != nullptr && number->number > 1);
    if (work != words.end())
      list_piece(sentence, *work, listed);
    else
      listed.plain = number != nullptr || (!words.empty() && may_be_listed(sentence, *words.first));
  }
  return listed.plain && listed.pieces > 1 && listed.kinds > 1 && (listed.shaping || !listed.counted);
}

std::uint32_t behind_first_chains(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  bool chains = false;
  for (std::uint32_t at = begin; at < end; at = behind_word(sentence, at)) {
    if (chains && is_separator(sentence.text()[at])) return behind_word(sentence, at);
    const bool chain = means(sentence, at, words::find_concept(sentence.vocabulary, "ch"));
    if (!chain && number_at(sentence, at) == nullptr) return begin;
    chains = chains || chain;
  }
  return begin;
}

namespace {

/// Behind the chains that a list begins with, two or more, up to the mark behind them; `begin` if it begins
/// otherwise.
std::uint32_t behind_high_chain(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  const words::Concept ch = words::find_concept(sentence.vocabulary, "ch");
  bool chain = false, several = false;
  for (std::uint32_t at = begin; at < end; at = behind_word(sentence, at)) {
    const bool ends = is_separator(sentence.text()[at]) || sentence.brackets.at[at] != no_bracket;
    const bool head = !chain && !several && is_separator(sentence.text()[at]); // "第2圈 |，3锁针"
    if (!head && (ends || (chain && several))) return chain && several ? at : begin;
    const words::Word* number = number_at(sentence, at);
    chain = chain || means(sentence, at, ch);
    several = several || (number != nullptr && number->number > 1);
  }
  return begin;
}

} // namespace

std::uint32_t behind_beginning(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  const std::uint32_t behind = behind_high_chain(sentence, begin, end);
  bool stitched = false;
  for (std::uint32_t at = behind; behind != begin && at < end;) {
    const std::int32_t bracket = sentence.brackets.at[at];
    if (bracket != no_bracket) {
      at = sentence.brackets.all[static_cast<std::size_t>(bracket)].end;
      continue;
    }
    const auto then = end_of_text_word(sentence.vocabulary, sentence.text(), at, TextWord::then);
    if (stitched && then != at) return skip_blanks(sentence.text(), static_cast<std::uint32_t>(then));
    for (const words::Word& word : words_at(sentence, at)) stitched = stitched || is_work(sentence, word);
    at = behind_word(sentence, at);
  }
  return begin;
}

} // namespace whorl::pattern
