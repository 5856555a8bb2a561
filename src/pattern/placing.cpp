#include "pattern/placing.hpp"

#include "pattern/colour.hpp"
#include "pattern/named_holes.hpp"
#include "pattern/negated.hpp"
#include "pattern/reading.hpp"
#include "pattern/text_words.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::ConceptClass;
using words::Word;
using words::WordKind;

struct WhatName {
  std::string_view name;
  What what;
};
constexpr WhatName whats[] = {
    {"eye", What::eye},    {"marker", What::marker},       {"attach", What::join}, {"cut", What::cut},
    {"gather", What::cut}, {"change", What::change},       {"stuff", What::stuff}, {"sew", What::sew},
    {"bead", What::bead},  {"embroider", What::embroider},
};

std::optional<What> what_of(const Sentence& sentence, const Word& word) {
  const ConceptClass sort = sort_of(sentence, word);
  if (sort != ConceptClass::ending && sort != ConceptClass::thing) return std::nullopt;
  const std::string& name = sentence.vocabulary.concepts[word.means].name;
  for (const WhatName& entry : whats)
    if (entry.name == name) return entry.what;
  return std::nullopt;
}

/// "sık", gather, where "sık iğne", single crochet, stands, "fasta" of "fasta maskor": a longer word that is
/// worked takes it up.
bool is_within_work(const Sentence& sentence, const WordsAt& words, const Word& word) {
  return word.end < words.first->end && is_work(sentence, *words.first);
}

bool means(const Sentence& sentence, std::uint32_t at, std::string_view name) {
  return word_meaning(sentence, at, words::find_concept(sentence.vocabulary, name)) != nullptr;
}

/// "Join green", "attach the new yarn B", "join in white": a yarn that is brought in, whose name stands a
/// few words behind.
bool joins_yarn(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  if (!means(sentence, at, "join") && !means(sentence, at, "link") && !means(sentence, at, "attach"))
    return false;
  constexpr int most_between = 2; // "in", "the", "new"
  std::uint32_t next = skip_blanks(sentence.text(), words_at(sentence, at).first->end);
  for (int i = 0; i <= most_between && next < end; ++i) {
    if (yarn_name_at(sentence, next, true)) return true;
    const std::uint32_t behind = end_of_letters(sentence, next);
    const std::string_view word = sentence.text().substr(next, behind - next);
    const bool small = means(sentence, next, "in") ||
                       is_text_word(sentence.vocabulary, word, TextWord::article) ||
                       is_text_word(sentence.vocabulary, word, TextWord::fresh);
    if (!small) return false;
    next = skip_blanks(sentence.text(), behind);
  }
  return false;
}

/// "zum Annähen": what something is for is not done yet.
bool is_purpose(const Sentence& sentence, std::uint32_t at) {
  std::uint32_t before = at;
  while (before > 0 && sentence.text()[before - 1] == ' ') --before;
  std::uint32_t begin = before;
  while (begin > 0 && sentence.text()[begin - 1] != ' ') --begin;
  return begin < before && means(sentence, begin, "for") && words_at(sentence, begin).first->end == before;
}

/// The first placing word in [begin, end) among the first `most` words.
std::optional<What> first_what(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, int most) {
  for (std::uint32_t at = skip_blanks(sentence.text(), begin); at < end && most > 0; --most) {
    const WordsAt words = words_at(sentence, at);
    if (!words.empty() && joins_yarn(sentence, at, end)) return What::join;
    for (const Word& word : words) {
      if (is_within_work(sentence, words, word)) continue;
      const auto what = what_of(sentence, word);
      if (what == What::sew && is_purpose(sentence, at)) continue;
      if ((what == What::stuff || what == What::cut) && is_negated(sentence, at, word.end)) continue;
      if (what) return what;
    }
    // Where no blanks divide words, one that is known may stand among letters that are not.
    const bool letters =
        !sentence.vocabulary.blanks_between_words && !words.empty() && words.first->kind == WordKind::unknown;
    if (letters) ++most;
    at = skip_blanks(sentence.text(), words.empty() || letters ? at + 1 : std::max(words.first->end, at + 1));
  }
  return std::nullopt;
}

/// One piece of a note: [begin, end) in folded bytes.
struct Clause {
  std::uint32_t begin, end;
  std::optional<What> what;
};

bool begins_new_clause(const Sentence& sentence, std::uint32_t at) {
  const std::uint32_t next = skip_blanks(sentence.text(), at);
  return first_what(sentence, next, sentence.size(), 2).has_value();
}

const Word* ordinal_mark_at(const Sentence& sentence, std::uint32_t at) {
  return word_meaning(sentence, at, words::find_concept(sentence.vocabulary, "ordinal"));
}

bool is_round_word(const Sentence& sentence, std::uint32_t at) {
  return means(sentence, at, "round") || means(sentence, at, "row");
}

/// The full stop of "zwischen der 11. und 12. Runde": it makes an ordinal and ends nothing.
bool is_ordinal_stop(const Sentence& sentence, std::uint32_t at) {
  const bool digit = at > 0 && sentence.text()[at - 1] >= '0' && sentence.text()[at - 1] <= '9';
  if (!digit || ordinal_mark_at(sentence, at) == nullptr) return false;
  const std::uint32_t next = skip_blanks(sentence.text(), at + 1);
  return is_round_word(sentence, next) || means(sentence, next, "and") || means(sentence, next, "to") ||
         (next < sentence.size() && sentence.text()[next] == '-');
}

const Word* mark_of(const WordsAt& words) {
  const auto found =
      std::find_if(words.begin(), words.end(), [](const Word& word) { return word.kind == WordKind::mark; });
  return found == words.end() ? nullptr : &*found;
}

/// Where the clause that begins at `begin` ends: a full stop, a semicolon, or a comma or "and" before another
/// thing placed.
std::uint32_t end_of_clause(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  int depth = 0;
  for (std::uint32_t at = begin; at < end;) {
    const WordsAt words = words_at(sentence, at);
    if (words.empty()) {
      ++at;
      continue;
    }
    // A full stop may be the word of an ordinal too.
    const Word* const sign = words.first->end == at + 1 ? mark_of(words) : nullptr;
    const char mark = sign != nullptr ? sign->mark : '\0';
    depth += mark == '(' || mark == '[' ? 1 : mark == ')' || mark == ']' ? -1 : 0;
    const bool decimal =
        mark == '.' && at + 1 < end && sentence.text()[at + 1] >= '0' && sentence.text()[at + 1] <= '9';
    const bool stop = mark == '.' && !decimal && !is_ordinal_stop(sentence, at);
    if (depth <= 0 && (stop || mark == ';' || mark == '!')) return at;
    const bool link = mark == ',' || means(sentence, at, "and");
    const bool closes = means(sentence, at, "gather"); // "stuff and close"
    if (depth <= 0 && link && at > begin && (closes || begins_new_clause(sentence, words.first->end)))
      return at;
    at = std::max(words.first->end, at + 1);
  }
  return end;
}

std::uint32_t behind_link(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  while (at < end) {
    const char c = sentence.text()[at];
    const Word* link = word_meaning(sentence, at, sentence.conjunction);
    if (link != nullptr && !means(sentence, at, "gather"))
      at = link->end;
    else if (c == ' ' || is_separator(c) || c == '!')
      ++at;
    else
      break;
  }
  return at;
}

bool names_round(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  for (std::uint32_t at = begin; at < end; ++at)
    if (means(sentence, at, "round") || means(sentence, at, "row")) return true;
  return false;
}

/// What a clause is about: where the thing stands before the verb, "Nase aufsticken", the verb tells.
std::optional<What> what_in(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  const auto what = first_what(sentence, begin, end, 1000);
  if (what != What::bead && what != What::eye) return what;
  for (std::uint32_t at = begin; at < end; ++at)
    if (means(sentence, at, "embroider")) return What::embroider;
  return what;
}

/// Parts that are sewn on to rounds of their own are placed one by one.
std::vector<Clause> clauses_of(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  std::vector<Clause> clauses;
  for (std::uint32_t at = behind_link(sentence, begin, end); at < end;) {
    const std::uint32_t stop = std::max(end_of_clause(sentence, at, end), at + 1);
    const auto what = what_in(sentence, at, stop);
    const bool parted = what == What::sew && !clauses.empty() && names_round(sentence, at, stop) &&
                        names_round(sentence, clauses.back().begin, clauses.back().end);
    const bool same = !clauses.empty() && what && clauses.back().what == what && !parted;
    if (same)
      clauses.back().end = stop;
    else
      clauses.push_back({at, stop, what});
    at = behind_link(sentence, stop, end);
  }
  return clauses;
}

/// Whether "between" stands right before a place, but for small words.
bool names_between(const Sentence& sentence, std::uint32_t begin, std::uint32_t place) {
  for (std::uint32_t at = begin; at < place; ++at) {
    const Word* word = word_meaning(sentence, at, words::find_concept(sentence.vocabulary, "between"));
    if (word == nullptr) continue;
    std::uint32_t next = skip_blanks(sentence.text(), word->end);
    while (next < place && !words_at(sentence, next).empty() &&
           sort_of(sentence, *words_at(sentence, next).first) == ConceptClass::filler)
      next = skip_blanks(sentence.text(), words_at(sentence, next).first->end);
    if (next == place) return true;
  }
  return false;
}

/// Whether "over" stands right before a number, but for small words: "over the middle 4 sts".
bool stands_over(const Sentence& sentence, std::uint32_t begin, std::uint32_t number) {
  constexpr int most_between = 3;
  const words::Concept over = words::find_concept(sentence.vocabulary, "over");
  for (std::uint32_t at = begin; at < number; ++at) {
    const Word* word = word_meaning(sentence, at, over);
    if (word == nullptr) continue;
    std::uint32_t next = skip_blanks(sentence.text(), word->end);
    for (int i = 0; i < most_between && next < number; ++i)
      next = skip_blanks(sentence.text(), end_of_letters(sentence, next));
    if (next == number) return true;
  }
  return false;
}

/// Rounds that are named: the first and the last, and where their numbers begin.
struct NamedRounds {
  int from = 0, to = 0; ///< 0: none
  std::uint32_t begin = 0;
  std::uint32_t end = 0; ///< behind the word for round
};

int number_of(const Word& word) { return static_cast<int>(std::min(word.number, 1'000'000U)); }

/// Behind a number, the mark of its ordinal and blanks.
std::uint32_t behind_ordinal(const Sentence& sentence, const Word& number) {
  const Word* mark = ordinal_mark_at(sentence, number.end);
  return skip_blanks(sentence.text(), mark != nullptr ? mark->end : number.end);
}

/// Behind what links two numbers, small words passed over; `at` if nothing links there.
std::uint32_t behind_number_link(const Sentence& sentence, std::uint32_t at) {
  if (at >= sentence.size()) return at;
  const bool linked = sentence.text()[at] == '-' || sentence.text()[at] == '&' ||
                      means(sentence, at, "and") || means(sentence, at, "to");
  if (!linked) return at;
  std::uint32_t next = skip_blanks(sentence.text(), words_at(sentence, at).first->end);
  while (!words_at(sentence, next).empty() && number_at(sentence, next) == nullptr &&
         sort_of(sentence, *words_at(sentence, next).first) == ConceptClass::filler)
    next = skip_blanks(sentence.text(), words_at(sentence, next).first->end);
  return next;
}

/// "11. und 12. Runde", "6 et 7e tours": the numbers that begin at `at`, the word for round behind the last.
NamedRounds rounds_before_word(const Sentence& sentence, std::uint32_t at) {
  const Word* number = number_at(sentence, at);
  if (number == nullptr || (at > 0 && sentence.text()[at - 1] >= '0' && sentence.text()[at - 1] <= '9'))
    return {};
  NamedRounds named{number_of(*number), number_of(*number), at, at};
  std::uint32_t next = behind_ordinal(sentence, *number);
  if (is_round_word(sentence, next)) next = skip_blanks(sentence.text(), words_at(sentence, next).first->end);
  const std::uint32_t behind = behind_number_link(sentence, next);
  if (const Word* last = behind == next ? nullptr : number_at(sentence, behind)) {
    named.to = std::max(named.to, number_of(*last));
    next = behind_ordinal(sentence, *last);
  } else {
    next = behind_ordinal(sentence, *number);
  }
  if (!is_round_word(sentence, next)) return {};
  named.end = words_at(sentence, next).first->end;
  return named;
}

/// "between" behind the rounds, as many languages have it: "4段目と5段目の間に".
bool between_follows(const Sentence& sentence, const NamedRounds& named) {
  std::uint32_t next = skip_blanks(sentence.text(), named.end);
  while (named.from != named.to && !words_at(sentence, next).empty()) {
    if (means(sentence, next, "between")) return true;
    if (sort_of(sentence, *words_at(sentence, next).first) != ConceptClass::filler) return false;
    next = skip_blanks(sentence.text(), words_at(sentence, next).first->end);
  }
  return false;
}

/// The numbers in front of the word for round, where no number stands behind it.
void read_rounds_before_word(const Sentence& sentence, const Clause& clause, Placing& placing) {
  for (std::uint32_t at = clause.begin; at < clause.end; ++at) {
    const NamedRounds named = rounds_before_word(sentence, at);
    if (named.from == 0) continue;
    placing.between = names_between(sentence, clause.begin, named.begin) || between_follows(sentence, named);
    placing.from = named.from;
    placing.to = named.to;
    return;
  }
}

/// The number behind "round" or before it ("rounds 10 and 11", "the 11th round").
void read_rounds(const Sentence& sentence, const Clause& clause, Placing& placing) {
  for (std::uint32_t at = clause.begin; at < clause.end; ++at) {
    if (!means(sentence, at, "round") && !means(sentence, at, "row")) continue;
    std::uint32_t next = skip_blanks(sentence.text(), words_at(sentence, at).first->end);
    const Word* first = number_at(sentence, next);
    if (first == nullptr || first->end > clause.end) continue;
    const int number = static_cast<int>(std::min(first->number, 1'000'000U));
    if (placing.from == 0) placing.between = names_between(sentence, clause.begin, at);
    if (placing.from == 0) placing.from = placing.to = number;
    placing.to = std::max(placing.to, number);
    next = skip_blanks(sentence.text(), first->end);
    const bool linked = next < clause.end && (sentence.text()[next] == '-' || sentence.text()[next] == '&' ||
                                              means(sentence, next, "and") || means(sentence, next, "to"));
    if (!linked) continue;
    next = skip_blanks(sentence.text(), words_at(sentence, next).first->end);
    if (const Word* last = number_at(sentence, next); last != nullptr && last->end <= clause.end)
      placing.to = std::max(placing.to, static_cast<int>(std::min(last->number, 1'000'000U)));
  }
  if (placing.from == 0) read_rounds_before_word(sentence, clause, placing);
}

/// "8 sts apart", "with 8 sts between".
void read_apart(const Sentence& sentence, const Clause& clause, Placing& placing) {
  for (std::uint32_t at = clause.begin; at < clause.end; ++at) {
    const Word* number = number_at(sentence, at);
    if (number == nullptr) continue;
    std::uint32_t next = skip_blanks(sentence.text(), number->end);
    const WordsAt unit = words_at(sentence, next);
    if (!unit.empty() && sort_of(sentence, *unit.first) == ConceptClass::place)
      next = skip_blanks(sentence.text(), unit.first->end);
    if (next < clause.end && (means(sentence, next, "apart") || means(sentence, next, "between")))
      placing.apart = number->number;
  }
}

/// "over 4 sts", "4 sts wide": how far a line of embroidery reaches.
void read_across(const Sentence& sentence, const Clause& clause, Placing& placing) {
  for (std::uint32_t at = clause.begin; at < clause.end; ++at) {
    const Word* number = number_at(sentence, at);
    if (number == nullptr) continue;
    const std::uint32_t next = skip_blanks(sentence.text(), number->end);
    const WordsAt unit = words_at(sentence, next);
    if (unit.empty() || sort_of(sentence, *unit.first) != ConceptClass::place) continue;
    const std::uint32_t behind = skip_blanks(sentence.text(), unit.first->end);
    if (!stands_over(sentence, clause.begin, at) && !means(sentence, behind, "wide")) continue;
    placing.apart = number->number;
    placing.across = true;
  }
}

bool is_post(What what) {
  return what == What::eye || what == What::marker || what == What::bead || what == What::embroider;
}

bool says_gather(const Sentence& sentence, const Clause& clause) {
  for (std::uint32_t at = clause.begin; at < clause.end; ++at)
    if (means(sentence, at, "gather")) return true;
  return false;
}

/// "through the front loops of the last 6 sts"; 0: no loops are named.
std::uint8_t loops_named(const Sentence& sentence, const Clause& clause) {
  for (std::uint32_t at = clause.begin; at < clause.end; ++at) {
    if (means(sentence, at, "front loops")) return stitch::front;
    if (means(sentence, at, "back loops")) return stitch::back;
    if (means(sentence, at, "both loops")) return stitch::both;
  }
  return 0;
}

Placing placing_of(const Sentence& sentence, const Clause& clause) {
  Placing placing;
  placing.what = clause.what.value_or(What::note);
  placing.span = sentence.span(clause.begin, trim_separators(sentence.text(), clause.begin, clause.end));
  read_rounds(sentence, clause, placing);
  if (is_post(placing.what)) placing.holes = holes_named(sentence, clause.begin, clause.end, placing.what);
  if (placing.holes.empty()) read_apart(sentence, clause, placing);
  if (placing.what == What::embroider && placing.apart == 0 && placing.holes.empty())
    read_across(sentence, clause, placing);
  placing.gather = placing.what == What::cut && says_gather(sentence, clause);
  if (placing.gather) placing.loops = loops_named(sentence, clause);
  return placing;
}

} // namespace

Placing make_note(Span span) {
  Placing note;
  note.span = span;
  return note;
}

std::optional<What> clause_places(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  int words_before = 4;
  for (std::uint32_t at = begin; at < end && words_before > 0; --words_before) {
    const WordsAt words = words_at(sentence, at);
    if (words.empty()) return std::nullopt;
    for (const Word& word : words)
      if (const auto what = what_of(sentence, word); what && !is_within_work(sentence, words, word))
        return what;
    if (is_work(sentence, *words.first) || sort_of(sentence, *words.first) == ConceptClass::loops ||
        words.first->kind == WordKind::mark)
      return std::nullopt;
    at = skip_blanks(sentence.text(), words.first->end);
  }
  return std::nullopt;
}

std::vector<Placing> placings_in(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  std::vector<Placing> placings;
  for (const Clause& clause : clauses_of(sentence, begin, end))
    placings.push_back(placing_of(sentence, clause));
  return placings;
}

std::vector<Placing> read_placings(std::string_view text, Span span, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(text, span.begin, vocabulary);
  std::vector<Placing> placings = placings_in(sentence, 0, sentence.size());
  if (placings.size() > 1) {
    const bool no_thing =
        std::none_of(placings.begin(), placings.end(), [](const Placing& p) { return p.what != What::note; });
    if (no_thing) placings.clear();
  }
  if (placings.empty() && !text.empty()) placings.push_back(make_note(span));
  for (Placing& placing : placings) {
    // A sentence keeps its full stop.
    const std::uint32_t behind = placing.span.end - span.begin;
    if (behind < text.size() && (text[behind] == '.' || text[behind] == '!')) ++placing.span.end;
    constexpr std::string_view wide_stop = "\xE3\x80\x82";
    if (text.substr(std::min<std::size_t>(behind, text.size()), wide_stop.size()) == wide_stop)
      placing.span.end += static_cast<std::uint32_t>(wide_stop.size());
    placing.text = std::string(text.substr(placing.span.begin - span.begin, placing.span.length()));
  }
  return placings;
}

} // namespace whorl::pattern
