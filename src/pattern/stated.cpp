#include "pattern/stated.hpp"

#include "pattern/costs.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {

namespace {

using words::Concept;
using words::ConceptClass;
using words::Word;
using words::WordKind;

struct Concepts {
  Concept count_word, total, times, around, in, repeat, conjunction, more, join, turn, round, row;
};

/// One look for counts.
struct Search {
  const Sentence& sentence;
  const std::vector<stitch::StitchKind>& kinds;
  Concepts concepts;
};

bool means(const Search& search, std::uint32_t at, Concept wanted) {
  return word_meaning(search.sentence, at, wanted) != nullptr;
}

std::uint32_t next_word(const Search& search, std::uint32_t at) {
  return skip_blanks(search.sentence.text(), at);
}

stitch::KindId kind_named(const Search& search, std::string_view name) {
  const auto kind = stitch::find_kind(search.kinds, name);
  return kind ? *kind : stitch::no_kind;
}

/// "ch-2 sps": where the word for the space ends, 0 if no number and space stand behind the chain.
std::uint32_t end_of_chain_space(const Search& search, std::uint32_t chain_end) {
  const Sentence& sentence = search.sentence;
  const bool hyphen = chain_end < sentence.size() && sentence.text()[chain_end] == '-';
  const Word* chains = number_at(sentence, next_word(search, chain_end + (hyphen ? 1U : 0U)));
  if (chains == nullptr) return 0;
  for (const Word& space : words_at(sentence, next_word(search, chains->end)))
    if (sort_of(sentence, space) == ConceptClass::place) return space.end;
  return 0;
}

std::uint32_t read_stitch_unit(const Search& search, const Word& word, std::string_view name,
                               Stated& stated) {
  const std::uint32_t space = name == "ch" ? end_of_chain_space(search, word.end) : 0;
  stated.unit = space != 0 ? Unit::spaces : name == "ch" ? Unit::chains : Unit::kind;
  if (stated.unit == Unit::kind) stated.kind = kind_named(search, name);
  return space != 0 ? space : word.end;
}

Unit unit_of_place(std::string_view name) {
  return name == "space" ? Unit::spaces : name == "chain" ? Unit::chains : Unit::stitches;
}

/// The unit at `at` ("sts", "sc", "ch-2 sps"), put into `stated`; its end, or `at` if there is none.
std::uint32_t read_unit(const Search& search, std::uint32_t at, Stated& stated) {
  for (const Word& word : words_at(search.sentence, at)) {
    if (word.kind != WordKind::phrase) continue;
    const ConceptClass sort = sort_of(search.sentence, word);
    const std::string_view name = search.sentence.vocabulary.concepts[word.means].name;
    if (sort == ConceptClass::stitch) return read_stitch_unit(search, word, name, stated);
    if (sort == ConceptClass::place) stated.unit = unit_of_place(name);
    if (sort == ConceptClass::place || is_work(search.sentence, word)) return word.end;
  }
  return at;
}

/// A number and its unit from `at`; none if no number stands there.
std::optional<Stated> read_one(const Search& search, std::uint32_t& at) {
  const Word* number = number_at(search.sentence, at);
  if (number == nullptr) return std::nullopt;
  Stated stated;
  stated.count = number->number;
  std::uint32_t end = number->end;
  const std::uint32_t unit = next_word(search, end);
  if (const std::uint32_t behind = read_unit(search, unit, stated); behind != unit) end = behind;
  stated.span = search.sentence.span(at, end);
  at = end;
  return stated;
}

std::uint32_t pass_total(const Search& search, std::uint32_t at) {
  for (std::uint32_t next = next_word(search, at);;) {
    const Word* word = word_meaning(search.sentence, next, search.concepts.count_word);
    if (word == nullptr) word = word_meaning(search.sentence, next, search.concepts.total);
    if (word == nullptr) return at;
    at = word->end;
    next = next_word(search, at);
    if (next < search.sentence.size() && search.sentence.text()[next] == ':')
      at = next + 1, next = next_word(search, at);
  }
}

std::uint32_t pass_link(const Search& search, std::uint32_t at) {
  const std::uint32_t next = next_word(search, at);
  if (const Word* word = word_meaning(search.sentence, next, search.concepts.conjunction))
    return next_word(search, word->end);
  if (next >= search.sentence.size()) return at;
  const char mark = search.sentence.text()[next];
  return mark == ',' || mark == '+' || mark == ';' ? next_word(search, next + 1) : at;
}

/// "Total: 36 sts", "10 dc and 3 ch-sps" from `begin`; where it ends, `begin` if it is no count.
std::uint32_t read_figures(const Search& search, std::uint32_t begin, std::vector<Stated>& out) {
  std::uint32_t at = next_word(search, pass_total(search, begin));
  std::uint32_t end = begin;
  while (const auto one = read_one(search, at)) {
    if (out.size() == reading_limits.figures) return out.clear(), begin;
    out.push_back(*one);
    end = at;
    const std::uint32_t link = pass_link(search, at);
    if (link == at) break;
    at = link;
  }
  return end == begin ? begin : pass_total(search, end);
}

/// Two bare numbers are a list of sizes, not a count.
bool is_one_count(const std::vector<Stated>& all) {
  if (all.empty()) return false;
  const auto bare =
      std::count_if(all.begin(), all.end(), [](const Stated& s) { return s.unit == Unit::any; });
  return all.size() == 1 || bare == 0;
}

/// What follows says that the brackets hold work: a repeat, or a place.
bool is_repeated(const Search& search, std::uint32_t end) {
  const std::uint32_t at = next_word(search, end);
  if (at >= search.sentence.size()) return false;
  const auto& brackets = search.sentence.brackets;
  const Concepts& c = search.concepts;
  if (const Word* number = number_at(search.sentence, at)) {
    const std::uint32_t unit = next_word(search, number->end);
    return !means(search, unit, c.round) && !means(search, unit, c.row);
  }
  if (brackets.stars[at] == StarRole::times) return true;
  const Concept work[] = {c.times, c.around, c.in, c.repeat, c.more};
  const std::uint32_t behind_mark = is_separator(search.sentence.text()[at]) ? next_word(search, at + 1) : at;
  return std::any_of(std::begin(work), std::end(work),
                     [&](Concept wanted) { return means(search, at, wanted); }) ||
         means(search, behind_mark, c.repeat);
}

/// More work stands behind a comma: what is before it was no count.
bool goes_on(const Search& search, std::uint32_t end) {
  const std::uint32_t comma = next_word(search, end);
  if (comma >= search.sentence.size() || search.sentence.text()[comma] != ',') return false;
  const std::uint32_t at = next_word(search, comma + 1);
  const WordsAt words = words_at(search.sentence, at);
  return std::any_of(words.begin(), words.end(), [&search](const Word& word) {
    return word.kind == WordKind::number || sort_of(search.sentence, word) == ConceptClass::stitch;
  });
}

bool ends_line(const Search& search, std::uint32_t at) {
  const std::uint32_t next = next_word(search, at);
  if (next >= search.sentence.size()) return true;
  const char mark = search.sentence.text()[next];
  return mark == '.' || mark == '(' || mark == '[' || mark == ',' || mark == ';' || mark == '!' ||
         mark == '-';
}

StatedCount in_brackets(const Search& search, const Bracket& bracket) {
  StatedCount count{{}, bracket.begin, bracket.end};
  std::uint32_t inner = bracket.inner_begin;
  if (inner < bracket.inner_end &&
      (search.sentence.text()[inner] == '=' || search.sentence.text()[inner] == '>'))
    inner = next_word(search, inner + 1);
  const std::uint32_t end = read_figures(search, inner, count.stated);
  const std::uint32_t rest = trim_separators(search.sentence.text(), end, bracket.inner_end);
  const bool whole = end != inner && rest <= end;
  if (!whole || !is_one_count(count.stated) || is_repeated(search, bracket.end) ||
      goes_on(search, bracket.end))
    count.stated.clear();
  return count;
}

/// A count behind `=`, an arrow or a dash, to the end of the line or a bracket.
StatedCount behind_mark(const Search& search, std::uint32_t at, std::uint32_t first) {
  StatedCount count{{}, at, at};
  count.end = read_figures(search, first, count.stated);
  if (count.end == first || !ends_line(search, count.end) || !is_one_count(count.stated))
    count.stated.clear();
  return count;
}

/// True if a clause begins at `at` that can only say what is there: "18 sts", "you now have 24".
StatedCount as_sentence(const Search& search, std::uint32_t at) {
  StatedCount count{{}, at, at};
  count.end = read_figures(search, at, count.stated);
  const bool said = pass_total(search, at) != at;
  const bool stitches = std::any_of(count.stated.begin(), count.stated.end(),
                                    [](const Stated& s) { return s.unit == Unit::stitches; });
  const std::uint32_t rest = trim_separators(search.sentence.text(), count.end, search.sentence.size());
  const bool last = rest <= count.end || search.sentence.text()[next_word(search, count.end)] == '.';
  if (!(said || stitches) || !last || !is_one_count(count.stated)) count.stated.clear();
  return count;
}

/// "Join. 45 hdc.": a figure by itself behind the words that close a round.
StatedCount behind_close(const Search& search, std::uint32_t at) {
  StatedCount count{{}, at, at};
  count.end = read_figures(search, at, count.stated);
  const std::uint32_t rest = trim_separators(search.sentence.text(), count.end, search.sentence.size());
  if (rest > count.end || !is_one_count(count.stated)) count.stated.clear();
  return count;
}

/// Reads on from word to word, and keeps the last count.
struct Finder {
  const Search& search;
  StatedCount last;
  bool clause = true;  ///< a clause begins here
  bool closed = false; ///< the clause before closed the round
  bool worked = false; ///< some work stands before

  void keep(const StatedCount& count) {
    if (!count.stated.empty() && worked) last = count;
  }
};

std::uint32_t meet_mark(Finder& finder, std::uint32_t at, char mark) {
  const std::uint32_t next = next_word(finder.search, at + 1);
  const bool spaced = at > 0 && finder.search.sentence.text()[at - 1] == ' ';
  if (mark == '=' || mark == '>' || (mark == '-' && (spaced || finder.clause)))
    finder.keep(behind_mark(finder.search, at, next));
  finder.clause = is_separator(mark) || mark == '!' || mark == '>';
  if (mark != '.' && mark != '-' && mark != ';') finder.closed = false;
  return at + 1;
}

bool closes_round(const Search& search, std::uint32_t at) {
  const Concepts& c = search.concepts;
  return means(search, at, c.join) || means(search, at, c.turn) || means(search, at, c.around);
}

std::uint32_t meet_word(Finder& finder, std::uint32_t at, const Word& word) {
  const Search& search = finder.search;
  const bool after_around = finder.closed;
  if (finder.clause || after_around) finder.keep(as_sentence(search, at));
  if (finder.clause && finder.closed) finder.keep(behind_close(search, at));
  finder.worked = true;
  finder.clause = false;
  finder.closed = closes_round(search, at);
  return std::max(word.end, at + 1);
}

Concepts concepts_of(const words::Vocabulary& vocabulary) {
  const auto named = [&vocabulary](const char* name) { return words::find_concept(vocabulary, name); };
  return {named("count word"), named("total"),  named("times"), named("around"),
          named("in"),         named("repeat"), named("and"),   named("more"),
          named("join"),       named("turn"),   named("round"), named("row")};
}

std::uint32_t step(Finder& finder, std::uint32_t at) {
  const Sentence& sentence = finder.search.sentence;
  const WordsAt words = words_at(sentence, at);
  if (words.empty()) return at + 1;
  const std::int32_t index = sentence.brackets.at[at];
  if (index != no_bracket) {
    const Bracket& bracket = sentence.brackets.all[static_cast<std::size_t>(index)];
    if (bracket.kind == Passage::open_star) return at + 1;
    if (bracket.kind != Passage::stars) finder.keep(in_brackets(finder.search, bracket));
    finder.worked = true;
    finder.clause = false;
    finder.closed = true;
    return bracket.end;
  }
  if (words.first->kind == WordKind::mark) return meet_mark(finder, at, words.first->mark);
  return meet_word(finder, at, *words.first);
}

} // namespace

StatedCount find_stated(const Sentence& sentence, const std::vector<stitch::StitchKind>& kinds) {
  const Search search{sentence, kinds, concepts_of(sentence.vocabulary)};
  Finder finder{search, {}};
  for (std::uint32_t at = 0; at < sentence.size();) at = step(finder, at);
  return finder.last;
}

StatedCount bare_count(const Sentence& sentence) {
  const std::uint32_t end = trim_separators(sentence.text(), 0, sentence.size());
  std::uint32_t begin = end;
  while (begin > 0 && sentence.text()[begin - 1] >= '0' && sentence.text()[begin - 1] <= '9') --begin;
  const Word* number = begin == end ? nullptr : number_at(sentence, begin);
  if (number == nullptr || begin == 0 || sentence.text()[begin - 1] != ' ') return {};
  Stated stated;
  stated.count = number->number;
  stated.span = sentence.span(begin, end);
  return {{stated}, begin, sentence.size()};
}

} // namespace whorl::pattern
