#include "pattern/aside.hpp"
#include "pattern/byte_before.hpp"
#include "pattern/colour.hpp"
#include "pattern/costs.hpp"
#include "pattern/opening.hpp"
#include "pattern/placing.hpp"
#include "pattern/stretching.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::ConceptClass;
using words::Word;
using words::WordKind;

int passing_cost(const Stretching& s, const Word& word) {
  switch (word.kind) {
  case WordKind::number:
    return costs.number;
  case WordKind::unknown:
    return word.cost;
  case WordKind::mark:
    return word.mark == '(' || word.mark == ')' ? costs.lone_bracket : costs.filler;
  case WordKind::phrase:
    break;
  }
  if (is_work(s.reader.sentence, word)) return costs.stitch;
  return sort_of(s.reader.sentence, word) == ConceptClass::filler ? costs.filler : costs.trade_word;
}

/// The same, but nothing for words that are no instruction.
int lost_by_passing(const Stretching& s, const Word& word) {
  const bool bracket = word.mark == '(' || word.mark == ')';
  return bracket || word.kind == WordKind::number || is_work(s.reader.sentence, word) ? passing_cost(s, word)
                                                                                      : 0;
}

/// A step from every path that ends at `place`. `lost`: what it costs that an instruction is passed over; a
/// number behind a piece of work, in the same clause, belongs to it: without it the line is not read.
void offer_for_all(Stretching& s, std::uint32_t place, Taken taken, std::uint32_t end, int cost, bool loose,
                   int lost = 0) {
  end = std::min(skip_blanks(s.reader.sentence.text(), end), s.end);
  for (std::int32_t index = s.at(place); index != no_path;
       index = s.reader.paths[static_cast<std::size_t>(index)].next) {
    const Path before = s.reader.paths[static_cast<std::size_t>(index)];
    Path path = after(before, index, taken, place, end);
    path.cost += cost;
    if (lost != 0) path.lost += before.loose && lost == costs.number ? costs.not_read : lost;
    path.loose = loose && before.loose;
    offer(s, path);
  }
}

bool is_link(const Stretching& s, const Word& word) {
  if (word.kind == WordKind::mark)
    return is_separator(word.mark) || s.reader.sentence.brackets.stars[word.begin] == StarRole::last;
  return word.kind == WordKind::phrase && word.means == s.reader.sentence.conjunction;
}

bool may_pass(const Stretching& s) { return s.extent != Extent::passage || s.reader.lenient; }

bool begins_clause(const Stretching& s, std::uint32_t place) {
  const char before = byte_before(s.reader.sentence.text(), place, s.begin);
  return before == '\0' || is_separator(before) || before == '!' || before == ')';
}

bool ends_clause(char c) { return c == ',' || c == ';' || c == '.' || c == ':' || c == '(' || c == '['; }

std::uint32_t next_mark(const Stretching& s, std::uint32_t at) {
  while (at < s.end && !ends_clause(s.reader.sentence.text()[at])) ++at;
  return at;
}

/// True if [begin, end) still tells of what the clause before it places: "6 sts apart", "for sewing".
bool continues_placing(const Stretching& s, std::uint32_t begin, std::uint32_t end) {
  const Sentence& sentence = s.reader.sentence;
  const words::Concept apart = words::find_concept(sentence.vocabulary, "apart");
  bool instructs = begin == end;
  for (std::uint32_t at = begin; at < end; ++at)
    for (const Word& word : words_at(sentence, at)) {
      if (is_work(sentence, word)) return false;
      if (word.means == apart) return true;
      const ConceptClass sort = sort_of(sentence, word);
      instructs = instructs || word.kind == WordKind::number || sort == ConceptClass::start ||
                  sort == ConceptClass::loops;
    }
  return !instructs && clause_places(sentence, begin, end).has_value();
}

std::uint32_t end_of_clause(const Stretching& s, std::uint32_t place) {
  std::uint32_t end = next_mark(s, place);
  for (int more = 1; more < reading_limits.placing_clauses; ++more) {
    if (end >= s.end || s.reader.sentence.text()[end] != ',') break;
    const std::uint32_t next = skip_blanks(s.reader.sentence.text(), end + 1);
    const std::uint32_t behind = next_mark(s, next);
    if (!continues_placing(s, next, behind)) break;
    end = behind;
  }
  return end;
}

void offer_placing(Stretching& s, std::uint32_t place) {
  if (s.extent == Extent::passage || !begins_clause(s, place)) return;
  const std::uint32_t end = end_of_clause(s, place);
  if (clause_places(s.reader.sentence, place, end))
    offer_for_all(s, place, Taken::placing, end, costs.placing, false);
}

/// A clause that opens other places: the other side of the chain, the loops that a round left.
void offer_opening(Stretching& s, std::uint32_t place) {
  if (s.extent == Extent::passage || !s.reader.sentence.opens || !begins_clause(s, place)) return;
  const auto opening = opening_of_clause(s.reader.sentence, place, next_mark(s, place));
  if (!opening || opening->end > s.end) return;
  Match match;
  match.begin = place;
  match.end = opening->end;
  s.reader.matches.push_back(match);
  s.reader.pieces.push_back(piece_of(*opening));
  const auto at = static_cast<std::int32_t>(s.reader.matches.size() - 1);
  const Effect effect = effect_of(s.reader.pieces.back(), {}, s.reader.kinds);
  for (std::int32_t index = s.at(place); index != no_path;
       index = s.reader.paths[static_cast<std::size_t>(index)].next)
    offer_row(s, index, at, no_path, effect);
}

/// A bracket that tells something and works nothing: "(the one that holds your first sc)".
void offer_aside(Stretching& s, std::uint32_t place) {
  const std::int32_t index = s.reader.sentence.brackets.at[place];
  if (index == no_bracket) return;
  const Bracket& bracket = s.reader.sentence.brackets.all[static_cast<std::size_t>(index)];
  if (bracket.end > s.end || !is_aside(s.reader.sentence, bracket)) return;
  offer_for_all(s, place, Taken::aside, bracket.end, costs.aside, true);
}

/// "(white) 3 sc, (brown) inc": words that say in which yarn.
void offer_yarn(Stretching& s, std::uint32_t place) {
  const Sentence& sentence = s.reader.sentence;
  if (!sentence.yarns) return;
  const bool clause = place == s.begin || begins_clause(s, place) ||
                      (place > 0 && sentence.brackets.stars[place - 1] != StarRole::none);
  for (std::int32_t index = s.at(place); index != no_path;
       index = s.reader.paths[static_cast<std::size_t>(index)].next) {
    const Path before = s.reader.paths[static_cast<std::size_t>(index)];
    const bool begins = clause || !before.loose;
    const auto mark = yarn_mark_at(sentence, place, begins, before.loose && has_worked(before), s.end);
    if (!mark || mark->end > s.end) continue;
    const std::uint32_t end = std::min(skip_blanks(sentence.text(), mark->end), s.end);
    Path path = after(before, index, mark->behind ? Taken::yarn_behind : Taken::yarn, place, end);
    path.loose = mark->behind;
    offer(s, path);
  }
}

/// "Bobble: 4 dc in the same stitch, closed together." behind the work tells what it is.
void offer_definition(Stretching& s, std::uint32_t place) {
  if (s.extent != Extent::line || place == s.begin || !begins_clause(s, place)) return;
  const std::uint32_t other = end_of_other_count(s.reader.sentence, place);
  const std::uint32_t end =
      std::min(other != place ? other : end_of_definition(s.reader.sentence, place), s.end);
  if (end > place) offer_for_all(s, place, Taken::aside, end, costs.aside, false);
}

/// What the words before a colon are.
struct Told {
  int unknown = 0;
  bool instructs = false; ///< a stitch, a ring, loops, a repeat
};

Told told_in(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  Told told;
  for (std::uint32_t at = begin; at < end;) {
    const WordsAt words = words_at(sentence, at);
    for (const Word& word : words) {
      const ConceptClass sort = sort_of(sentence, word);
      told.instructs = told.instructs || is_work(sentence, word) || sort == ConceptClass::start ||
                       sort == ConceptClass::loops || word.means == sentence.side ||
                       word.means == sentence.skipped || word.means == sentence.leg;
    }
    told.unknown += !words.empty() && words.first->kind == WordKind::unknown;
    at = words.empty() ? at + 1 : std::max(words.first->end, at + 1);
  }
  return told;
}

/// "Two nights he walked and nothing changed: sc around": prose before the colon, work behind it.
void offer_prose(Stretching& s, std::uint32_t place) {
  if (s.extent != Extent::line || place != s.begin) return;
  const Sentence& sentence = s.reader.sentence;
  std::uint32_t colon = place;
  while (colon < s.end && sentence.text()[colon] != ':') ++colon;
  if (colon == s.end || sentence.brackets.at[place] != no_bracket) return;
  const Told told = told_in(sentence, place, colon);
  if (told.unknown == 0 || told.instructs) return;
  offer_for_all(s, place, Taken::aside, colon + 1, costs.aside, false);
}

/// "R10-13: stem, 12 sc": a word or two that nobody knows and a comma before the work name what is made.
void offer_name(Stretching& s, std::uint32_t place) {
  constexpr int most_words = 2;
  if (s.extent != Extent::line || place != s.begin) return;
  const Sentence& sentence = s.reader.sentence;
  std::uint32_t at = place;
  for (int words = 0; words <= most_words && at < s.end; ++words) {
    if (words > 0 && sentence.text()[at] == ',')
      return offer_for_all(s, place, Taken::aside, at + 1, cost::clean + 1, false);
    const WordsAt here = words_at(sentence, at);
    if (here.empty() || here.first->kind != WordKind::unknown) return;
    at = skip_blanks(sentence.text(), here.first->end);
  }
}

/// Where a clause ends; a full stop between figures ends none.
std::uint32_t end_of_measure(const Stretching& s, std::uint32_t at) {
  const std::string_view text = s.reader.sentence.text();
  const auto figure = [&](std::uint32_t place) {
    return place < s.end && text[place] >= '0' && text[place] <= '9';
  };
  std::uint32_t end = next_mark(s, at);
  while (end < s.end && text[end] == '.' && figure(end - 1) && figure(end + 1)) end = next_mark(s, end + 1);
  return end;
}

/// "sc around until the leg is 4 cm long": how far is told in words that count no stitches.
void offer_measure(Stretching& s, std::uint32_t place) {
  const Sentence& sentence = s.reader.sentence;
  const std::string_view head = sentence.text().substr(place, 3);
  if (s.extent != Extent::line || place == s.begin || (head != "unt" && head != "til")) return;
  const auto named = [&](const char* name) { return words::find_concept(sentence.vocabulary, name); };
  if (word_meaning(sentence, place, named("to")) == nullptr) return;
  if (word_meaning(sentence, place, named("count word")) != nullptr) return;
  const std::uint32_t end = end_of_measure(s, place);
  bool unknown = false;
  for (std::uint32_t at = place; at < end; ++at)
    for (const Word& word : words_at(sentence, at)) {
      if (is_work(sentence, word) || word.means == named("remain")) return;
      unknown = unknown || word.kind == WordKind::unknown;
    }
  if (unknown) offer_for_all(s, place, Taken::aside, end, costs.aside, true);
}

} // namespace

// Inside a passage that is repeated only fillers may be passed over: an instruction is never lost there.
void offer_passing(Stretching& s, std::uint32_t place) {
  for (const Word& word : words_at(s.reader.sentence, place)) {
    if (word.end > s.end) continue;
    if (is_link(s, word))
      offer_for_all(s, place, Taken::separator, word.end, 0, false);
    else if (may_pass(s) || sort_of(s.reader.sentence, word) == ConceptClass::filler || word.mark == '!')
      offer_for_all(s, place, Taken::passed, word.end, passing_cost(s, word), true, lost_by_passing(s, word));
  }
}

void offer_others(Stretching& s, std::uint32_t place) {
  offer_placing(s, place);
  offer_opening(s, place);
  offer_aside(s, place);
  offer_yarn(s, place);
  offer_definition(s, place);
  offer_prose(s, place);
  offer_name(s, place);
  offer_measure(s, place);
}

} // namespace whorl::pattern
