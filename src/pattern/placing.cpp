#include "pattern/placing.hpp"

#include "pattern/colour.hpp"
#include "pattern/negated.hpp"
#include "pattern/placing_rounds.hpp"
#include "pattern/placing_stitches.hpp"
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

/// "Attach the eyes", "attach 8 mm eyes": it is no yarn that is joined where a thing follows.
bool thing_follows(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  constexpr int most_between = 5;
  for (int i = 0; i < most_between && at < end; ++i) {
    at = skip_blanks(sentence.text(), at);
    const WordsAt words = words_at(sentence, at);
    if (words.empty() || words.first->kind == WordKind::mark) return false;
    if (means(sentence, at, "round") || means(sentence, at, "between")) return false;
    if (sort_of(sentence, *words.first) == ConceptClass::thing) return true;
    at = std::max(words.first->end, at + 1);
  }
  return false;
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
      if (what == What::join && thing_follows(sentence, word.end, end)) continue;
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

/// "Close.", and no more: the last stitches are gathered.
bool closes_alone(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  const std::uint32_t stop = trim_separators(sentence.text(), begin, end);
  return begin < stop &&
         is_text_word(sentence.vocabulary, sentence.text().substr(begin, stop - begin), TextWord::close);
}

/// What a clause is about: where the thing stands before the verb, "Nase aufsticken", the verb tells.
std::optional<What> what_in(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  if (closes_alone(sentence, begin, end)) return What::cut;
  const auto what = first_what(sentence, begin, end, 1000);
  if (what ==
      What::stuff) // "do not stuff, press flat and sew to rounds 4 and 5 of the head": no round is stuffed
    for (std::uint32_t at = begin; at < end; ++at)
      if (means(sentence, at, "sew") && names_round(sentence, begin, end)) return What::sew;
  if (what != What::bead && what != What::eye) return what;
  for (std::uint32_t at = begin; at < end; ++at)
    if (means(sentence, at, "embroider")) return What::embroider;
  return what;
}

bool is_thing(std::optional<What> what) {
  return what == What::eye || what == What::bead || what == What::marker || what == What::embroider;
}

/// Where [begin, end) puts something of a kind.
Placing where_of(const Sentence& sentence, std::uint32_t begin, std::uint32_t end, What what) {
  Placing placing;
  placing.what = what;
  read_rounds(sentence, begin, end, placing);
  read_stitches(sentence, begin, end, placing);
  return placing;
}

/// "Insert the eyes. They go between rounds 7 and 8, 6 stitches apart.": a clause without a thing of its own
/// says where that of the one before is put.
bool tells_where(const Sentence& sentence, const Clause& before, std::uint32_t begin, std::uint32_t end) {
  if (!is_thing(before.what)) return false;
  const Placing told = where_of(sentence, before.begin, before.end, *before.what);
  const Placing more = where_of(sentence, begin, end, *before.what);
  const bool rounds = told.from == 0 && more.from > 0;
  return rounds || (told.from > 0 && told.apart == 0 && told.after.empty() && more.apart > 0);
}

/// "Between rounds 7 and 8 count 6 stitches and fix the eyes": the place was told before the thing.
bool was_told_where(const Sentence& sentence, const Clause& before, const Clause& clause) {
  if (before.what || !is_thing(clause.what) || clause.begin < before.end) return false;
  const bool leads = means(sentence, before.begin, "between") || means(sentence, before.begin, "in") ||
                     means(sentence, before.begin, "over");
  if (!leads) return false;
  const std::string_view gap =
      std::string_view(sentence.text()).substr(before.end, clause.begin - before.end);
  return gap.find('.') == std::string_view::npos && names_round(sentence, before.begin, before.end) &&
         !names_round(sentence, clause.begin, clause.end);
}

/// Whether [begin, end) names something and behind it a round: "the back ones to Rnds 14 and 15".
bool names_another(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  bool named = false;
  for (std::uint32_t at = skip_blanks(sentence.text(), begin); at < end;) {
    const WordsAt words = words_at(sentence, at);
    if (!words.empty() && is_round_word(sentence, at)) return named;
    named = named || (!words.empty() && words.first->kind == WordKind::unknown);
    at = skip_blanks(sentence.text(), words.empty() ? at + 1 : std::max(words.first->end, at + 1));
  }
  return false;
}

/// Where a second part is sewn on within a clause: "the front paws to Rnds 9-11 and | the back ones to …".
std::uint32_t end_of_sewing(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  for (std::uint32_t at = begin; at < end; ++at) {
    const bool link = sentence.text()[at] == ',' || means(sentence, at, "and");
    if (!link || !names_round(sentence, begin, at)) continue;
    if (names_another(sentence, behind_link(sentence, at, end), end)) return at;
  }
  return end;
}

/// "Embroider the eyes on round 5 | and the nose on round 1": a thing without a verb of its own is done as
/// the one before.
bool goes_on_embroidering(const Sentence& sentence, const Clause& before, const Clause& clause) {
  if (before.what != What::embroider || !is_thing(clause.what) || clause.begin < before.end) return false;
  const std::string_view between = sentence.text().substr(before.end, clause.begin - before.end);
  if (between.find('.') != std::string_view::npos) return false;
  const std::size_t article =
      end_of_text_word(sentence.vocabulary, sentence.text(), clause.begin, TextWord::article);
  const std::uint32_t at = skip_blanks(sentence.text(), static_cast<std::uint32_t>(article));
  return what_in(sentence, at, end_of_letters(sentence, at)) == clause.what;
}

/// Parts that are sewn on to rounds of their own are placed one by one.
std::vector<Clause> clauses_of(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  std::vector<Clause> clauses;
  bool goes_on_sewing = false; // the verb stands in the clause before
  for (std::uint32_t at = behind_link(sentence, begin, end); at < end;) {
    std::uint32_t stop = std::max(end_of_clause(sentence, at, end), at + 1);
    auto what = what_in(sentence, at, stop);
    if (goes_on_sewing) what = What::sew;
    const std::uint32_t first = what == What::sew ? end_of_sewing(sentence, at, stop) : stop;
    goes_on_sewing = first < stop;
    stop = first;
    Clause clause{at, stop, what};
    if (!clauses.empty() && goes_on_embroidering(sentence, clauses.back(), clause))
      clause.what = What::embroider;
    at = behind_link(sentence, stop, end);
    if (clauses.empty()) {
      clauses.push_back(clause);
      continue;
    }
    Clause& before = clauses.back();
    const bool own = clause.what == What::sew || clause.what == What::embroider;
    const bool parted =
        own && names_round(sentence, clause.begin, stop) && names_round(sentence, before.begin, before.end);
    const bool same = clause.what ? before.what == clause.what && !parted
                                  : tells_where(sentence, before, clause.begin, stop);
    const bool told = was_told_where(sentence, before, clause);
    if (told) before.what = clause.what;
    if (same || told)
      before.end = stop;
    else
      clauses.push_back(clause);
  }
  return clauses;
}

bool says_gather(const Sentence& sentence, const Clause& clause) {
  if (closes_alone(sentence, clause.begin, clause.end)) return true;
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
  Placing placing = where_of(sentence, clause.begin, clause.end, clause.what.value_or(What::note));
  placing.span = sentence.span(clause.begin, trim_separators(sentence.text(), clause.begin, clause.end));
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

namespace {

/// "close with 6 sc through both sides": it is worked, and nothing is gathered.
bool closes_by_stitches(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  if (!means(sentence, at, "gather")) return false;
  bool stitch = false;
  for (; at < end && sentence.text()[at] != '.'; ++at) {
    const WordsAt words = words_at(sentence, at);
    stitch = stitch || (!words.empty() && is_work(sentence, *words.first));
    if (stitch && means(sentence, at, "both layers")) return true;
  }
  return false;
}

} // namespace

std::optional<What> clause_places(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  if (closes_alone(sentence, begin, end)) return What::cut;
  int words_before = 4;
  for (std::uint32_t at = begin; at < end && words_before > 0; --words_before) {
    const WordsAt words = words_at(sentence, at);
    if (words.empty()) return std::nullopt;
    if (closes_by_stitches(sentence, at, end)) return std::nullopt;
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
