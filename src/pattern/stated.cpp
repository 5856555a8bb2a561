#include "pattern/stated.hpp"

#include "pattern/aside.hpp"
#include "pattern/costs.hpp"
#include "pattern/figures.hpp"
#include "pattern/text_words.hpp"
#include "pattern/told_count.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {

namespace {

using words::Concept;
using words::ConceptClass;
using words::Word;
using words::WordKind;

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
  if (means(search, at, c.in) && begins_sentence(search, at)) return false;
  const std::uint32_t behind_mark = is_separator(search.sentence.text()[at]) ? next_word(search, at + 1) : at;
  return std::any_of(std::begin(work), std::end(work),
                     [&](Concept wanted) { return means(search, at, wanted); }) ||
         means(search, behind_mark, c.repeat);
}

/// Whether [begin, end) only says that a round is closed at its first stitch: "to first", "in the first st".
bool names_first(const Search& search, std::uint32_t begin, std::uint32_t end) {
  const Sentence& sentence = search.sentence;
  bool first = false;
  for (std::uint32_t at = skip_blanks(sentence.text(), begin); at < end;) {
    const WordsAt words = words_at(sentence, at);
    const auto is = [&](const char* name) {
      return means(search, at, words::find_concept(sentence.vocabulary, name));
    };
    const bool names = is("first") || is("beginning");
    first = first || names;
    const ConceptClass sort = words.empty() ? ConceptClass::word : sort_of(sentence, *words.first);
    const bool place = first && (sort == ConceptClass::place || sort == ConceptClass::stitch);
    if (!names && !place && sort != ConceptClass::filler && !is("in") && !is("to")) return false;
    at = skip_blanks(sentence.text(), words.first->end);
  }
  return first;
}

/// "(16), | sl st", "(16), | sl st to first": a slip stitch and nothing more joins the round.
bool only_slips(const Search& search, std::uint32_t at) {
  const Word* slip = word_meaning(search.sentence, at, search.concepts.slip);
  if (slip == nullptr) return false;
  const std::uint32_t end = trim_separators(search.sentence.text(), slip->end, search.sentence.size());
  return end <= slip->end || names_first(search, slip->end, end);
}

/// More work stands behind a comma: what is before it was no count.
bool goes_on(const Search& search, std::uint32_t end) {
  const std::uint32_t comma = next_word(search, end);
  if (comma >= search.sentence.size() || search.sentence.text()[comma] != ',') return false;
  const std::uint32_t at = next_word(search, comma + 1);
  if (end_of_definition(search.sentence, at) != at || only_slips(search, at)) return false;
  const WordsAt words = words_at(search.sentence, at);
  return std::any_of(words.begin(), words.end(), [&search](const Word& word) {
    return word.kind == WordKind::number || (is_work(search.sentence, word) && word.cost == 0);
  });
}

bool ends_line(const Search& search, std::uint32_t at) {
  const std::uint32_t next = next_word(search, at);
  if (next >= search.sentence.size() || is_behind_point(search, at)) return true;
  const char mark = search.sentence.text()[next];
  return mark == '.' || mark == '(' || mark == '[' || mark == ',' || mark == ';' || mark == '!' ||
         mark == '-';
}

/// "12 dc, counting ch": whether the chains are among them; `at` if that is not said.
std::uint32_t behind_counted_chain(const Search& search, std::uint32_t at) {
  const Sentence& sentence = search.sentence;
  std::uint32_t next = next_word(search, at);
  if (next < sentence.size() && sentence.text()[next] == ',') next = next_word(search, next + 1);
  const Word* counted = word_meaning(sentence, next, sentence.counted);
  if (counted == nullptr) counted = word_meaning(sentence, next, sentence.not_counted);
  if (counted == nullptr) return at;
  for (std::uint32_t end = counted->end;;) {
    const std::uint32_t word = next_word(search, end);
    const WordsAt words = words_at(sentence, word);
    const bool tells = !words.empty() && words.first->kind == WordKind::phrase;
    const bool mark = !words.empty() && (words.first->mark == '-' || words.first->kind == WordKind::number);
    if (!tells && !mark) return end;
    end = words.first->end;
  }
}

/// "(24 including the chains)", "(42 with the ch 1s)": whether chains or their spaces are counted too.
bool tells_of_chains(const Search& search, std::uint32_t begin, std::uint32_t end) {
  std::uint32_t at = next_word(search, begin);
  const std::string_view text = search.sentence.text().substr(0, end);
  if (at < end && text[at] == ',') at = next_word(search, at + 1);
  if (at >= end) return false;
  const bool leads =
      end_of_text_word(search.sentence.vocabulary, search.sentence.text(), at, TextWord::counted_with) != at;
  bool chains = false;
  while (at < end) {
    const WordsAt words = words_at(search.sentence, at);
    for (const Word& word : words) {
      if (word.kind != WordKind::phrase) continue;
      const std::string_view name = search.sentence.vocabulary.concepts[word.means].name;
      if (name == "ch" || name == "chain" || name == "the chains" || name == "space")
        chains = true;
      else if (is_work(search.sentence, word) && name != "increase")
        return false;
    }
    at = next_word(search, words.empty() ? at + 1 : words.first->end);
  }
  return leads && chains;
}

/// "(21, and that's 6 toes)": what stands behind the count and a mark names no work and holds words that are
/// no words of the craft.
bool is_remark(const Search& search, std::uint32_t begin, std::uint32_t end) {
  const std::uint32_t mark = next_word(search, begin);
  if (mark >= end || std::string_view(",;-.!").find(search.sentence.text()[mark]) == std::string_view::npos)
    return false;
  bool unknown = false;
  for (std::uint32_t at = mark + 1; at < end; ++at)
    for (const Word& word : words_at(search.sentence, at)) {
      if (is_work(search.sentence, word) || word.means == search.concepts.repeat) return false;
      unknown = unknown || word.kind == WordKind::unknown;
    }
  return unknown;
}

/// Words that lead on from a count to a remark about it.
bool leads_to_remark(const Search& search, std::uint32_t at) {
  return end_of_text_word(search.sentence.vocabulary, search.sentence.text(), at, TextWord::count_lead) != at;
}

/// "12 sts | plus the tip", "12 sts | (6 V-sts and one dc each end)", "12 sts | - count them!": whether what
/// stands between a number of stitches and `end` only says more about them.
bool only_says_more(const Search& search, std::uint32_t begin, std::uint32_t end) {
  const std::string_view text = search.sentence.text();
  std::uint32_t at = next_word(search, begin);
  bool mark = false;
  for (; at < end && std::string_view(",;-.!:([ ").find(text[at]) != std::string_view::npos; ++at)
    mark = mark || text[at] != ' ';
  if (at >= end || leads_to_remark(search, at)) return true;
  if (!mark) return false;
  for (; at < end; ++at)
    for (const Word& word : words_at(search.sentence, at))
      if (is_work(search.sentence, word) || word.means == search.concepts.repeat ||
          means(search, at, search.concepts.times))
        return false;
  return true;
}

/// "(3 dc, ch 2, 3 dc)": a stitch that is named twice is work.
bool names_twice(const std::vector<Stated>& all) {
  for (std::size_t i = 0; i < all.size(); ++i)
    for (std::size_t k = i + 1; k < all.size(); ++k)
      if (all[i].unit == Unit::kind && all[k].unit == Unit::kind && all[i].kind == all[k].kind) return true;
  return false;
}

StatedCount in_brackets(const Search& search, const Bracket& bracket) {
  StatedCount count{{}, bracket.begin, bracket.end};
  const std::uint32_t before = trim_separators(search.sentence.text(), 0, bracket.begin);
  if (behind_sizes(search.sentence, before) == bracket.end) return count;
  std::uint32_t inner = bracket.inner_begin;
  if (inner < bracket.inner_end &&
      (search.sentence.text()[inner] == '=' || search.sentence.text()[inner] == '>'))
    inner = next_word(search, inner + 1);
  std::uint32_t end = read_figures_of_stitch(search, inner, count.stated);
  if (end == inner) end = read_figures(search, inner, count.stated);
  if (end != inner) end = behind_sizes(search.sentence, end); // "(20 (30))"
  const std::uint32_t told = behind_counted_chain(search, end);
  const std::uint32_t rest = trim_separators(search.sentence.text(), told, bracket.inner_end);
  const bool more = counts_stitches(count) && only_says_more(search, told, bracket.inner_end);
  const bool whole = end != inner && (rest <= told || more || is_remark(search, told, bracket.inner_end) ||
                                      tells_of_chains(search, told, bracket.inner_end));
  if (!whole || !is_one_count(count.stated) || names_twice(count.stated) ||
      is_repeated(search, bracket.end) || goes_on(search, bracket.end))
    count.stated.clear();
  return count;
}

/// "→18 塞棉", "=6 and pull tight": whether words that end a piece or are no work follow.
bool ending_follows(const Search& search, std::uint32_t at) {
  std::uint32_t next = next_word(search, at);
  if (const Word* also = word_meaning(search.sentence, next, search.sentence.conjunction))
    next = next_word(search, also->end);
  const WordsAt words = words_at(search.sentence, next);
  return std::any_of(words.begin(), words.end(), [&search](const Word& word) {
    return sort_of(search.sentence, word) == ConceptClass::ending || word.means == search.concepts.slip ||
           word.means == search.concepts.join;
  });
}

/// "=24 dont forget": behind an equals sign words may follow that are no work.
bool only_note_follows(const Search& search, std::uint32_t at) {
  const WordsAt words = words_at(search.sentence, next_word(search, at));
  return !words.empty() && (words.first->kind == WordKind::unknown || ending_follows(search, at));
}

/// Two or more words that nobody knows.
bool is_note(const Search& search, std::uint32_t at) {
  if (!only_note_follows(search, at)) return false;
  const std::uint32_t first = next_word(search, at);
  return only_note_follows(search, words_at(search.sentence, first).first->end);
}

/// "= 18 sl st and cut": nobody counts slip stitches; what stands behind the number closes the piece.
void take_slip_for_close(const Search& search, std::uint32_t first, StatedCount& count) {
  if (count.stated.size() != 1 || count.stated.front().unit != Unit::kind) return;
  const Word* number = number_at(search.sentence, next_word(search, pass_total(search, first)));
  if (number == nullptr || !means(search, next_word(search, number->end), search.concepts.slip)) return;
  count.stated.front().unit = Unit::any;
  count.stated.front().span = number->span;
  count.end = number->end;
}

/// A count behind `=`, an arrow or a dash, to the end of the line or a bracket.
StatedCount behind_mark(const Search& search, std::uint32_t at, std::uint32_t first) {
  StatedCount count{{}, at, at};
  count.end = read_figures(search, first, count.stated);
  if (const Word* number = number_at(search.sentence, first); number != nullptr && count.stated.empty() &&
                                                              search.sentence.text()[at] == '=' &&
                                                              is_note(search, number->end)) {
    count.stated.push_back({number->number, Unit::any, stitch::no_kind, number->span});
    count.end = number->end;
    return count;
  }
  take_slip_for_close(search, first, count);
  const char mark = search.sentence.text()[at];
  if (count.end == first ||
      !(ends_line(search, count.end) ||
        ((mark == '=' || mark == '>') && only_note_follows(search, count.end))) ||
      !is_one_count(count.stated))
    count.stated.clear();
  return count;
}

/// Where the sentence ends that goes on at `at`, before its full stop.
std::uint32_t end_of_sentence(const Search& search, std::uint32_t at) {
  while (at < search.sentence.size() && search.sentence.text()[at] != '.') ++at;
  return at;
}

/// Whether a number and a word of work stand at `at`: "15 hdc".
bool is_number_of_work(const Search& search, std::uint32_t at) {
  const Word* number = number_at(search.sentence, next_word(search, at));
  if (number == nullptr) return false;
  const WordsAt words = words_at(search.sentence, next_word(search, number->end));
  return std::any_of(words.begin(), words.end(), [&](const Word& w) { return is_work(search.sentence, w); });
}

/// "… 6 inc, 5 sc -> 22 sts": what stands before the arrow names a stitch, so it is work, and no count that
/// leads to another.
bool leads_from_work(const Search& search, std::uint32_t at, std::string_view figures) {
  return figures.find('>') != figures.npos && is_number_of_work(search, at);
}

/// "12 in total": a word for the total stands in [begin, end).
bool says_total(const Search& search, std::uint32_t begin, std::uint32_t end) {
  for (std::uint32_t at = begin; at < end; ++at)
    if (means(search, at, search.concepts.total)) return true;
  return false;
}

/// "2 sc in each, | together 12 sts": behind a word that also closes stitches together; `at` if none stands
/// there.
std::uint32_t pass_together(const Search& search, std::uint32_t at) {
  const Word* word =
      word_meaning(search.sentence, at, words::find_concept(search.sentence.vocabulary, "together"));
  return word == nullptr ? at : next_word(search, word->end);
}

/// "You should now have 18 sts | haben": words that end such a sentence and work nothing.
bool only_ends_sentence(const Search& search, std::uint32_t begin, std::uint32_t end) {
  for (std::uint32_t at = begin; at < end; ++at)
    for (const Word& word : words_at(search.sentence, at))
      if (word.kind == WordKind::number || word.kind == WordKind::mark || is_work(search.sentence, word) ||
          word.means == search.concepts.repeat || word.means == search.concepts.times)
        return false;
  return true;
}

/// True if a clause begins at `at` that can only say what is there: "18 sts", "you now have 24".
StatedCount as_sentence(const Search& search, std::uint32_t at) {
  StatedCount count{{}, at, at};
  const std::uint32_t behind_total = next_word(search, pass_total(search, at));
  count.end = behind_total;
  if (pass_total(search, at) != at) // "计短针十针"
    count.end = read_figures_of_stitch(search, behind_total, count.stated);
  if (count.end == behind_total) count.end = read_figures(search, pass_together(search, at), count.stated);
  const std::string_view figures = search.sentence.text().substr(at, count.end - at);
  if (figures.find('=') != figures.npos || leads_from_work(search, at, figures))
    return {{}, at, at}; // "6 inc, 18 sc, 6 inc = 42 sts": the first are work
  if (!count.stated.empty()) count.end = behind_counted_chain(search, count.end);
  const bool said = pass_total(search, at) != at || says_total(search, at, count.end);
  const bool stitches = counts_stitches(count);
  const std::uint32_t rest = trim_separators(search.sentence.text(), count.end, search.sentence.size());
  bool last =
      rest <= count.end || ends_sentence(search, count.end) || (said && only_closes(search, count.end));
  if (const std::uint32_t end = end_of_sentence(search, count.end);
      !last && stitches && only_says_more(search, count.end, end))
    last = true, count.end = end;
  else if (!last && said && stitches && only_ends_sentence(search, count.end, end))
    last = true, count.end = end;
  if (!(said || stitches) || !last || !is_one_count(count.stated)) count.stated.clear();
  return count;
}

/// "Join. 45 hdc.": a figure by itself behind the words that close a round.
StatedCount behind_close(const Search& search, std::uint32_t at) {
  StatedCount count{{}, at, at};
  count.end = read_figures(search, at, count.stated);
  const std::uint32_t rest = trim_separators(search.sentence.text(), count.end, search.sentence.size());
  const std::uint32_t next = next_word(search, count.end);
  const bool last =
      rest <= count.end || (next < search.sentence.size() && search.sentence.text()[next] == '.');
  if (!last || !is_one_count(count.stated)) count.stated.clear();
  return count;
}

/// Whether a bracket speaks of increases or decreases.
bool names_shaping(const Search& search, const Bracket& bracket) {
  for (std::uint32_t at = bracket.inner_begin; at < bracket.inner_end;) {
    const WordsAt words = words_at(search.sentence, at);
    for (const Word& word : words)
      if (is_work(search.sentence, word) && sort_of(search.sentence, word) != ConceptClass::stitch)
        return true;
    at = next_word(search, words.empty() ? at + 1 : words.first->end);
  }
  return false;
}

/// "*sc, ch 1, sk 1*, repeat until | 2 sts are left, | 2 sc": how many are left for the work behind.
bool leaves_some_for(const Search& search, const StatedCount& count) {
  const Concept remain = words::find_concept(search.sentence.vocabulary, "remain");
  bool left = false;
  for (std::uint32_t at = count.begin; at < count.end; ++at) left = left || means(search, at, remain);
  return left && goes_on(search, count.end);
}

/// Reads on from word to word, and keeps the last count.
struct Finder {
  const Search& search;
  StatedCount last;
  bool clause = true;      ///< a clause begins here
  bool closed = false;     ///< the clause before closed the round
  bool sentence = false;   ///< … a sentence
  bool parted = false;     ///< … or a part of one, behind a colon
  bool ended = false;      ///< … or ended it or worked all of it
  bool worked = false;     ///< some work stands before
  bool stitched = false;   ///< … a stitch that is no chain
  bool chained = false;    ///< … a chain
  bool numbered = false;   ///< … a number
  std::uint32_t chain = 0; ///< where the last word for chains ends
  std::uint32_t least = 0; ///< where a count may begin

  void keep(const StatedCount& count) {
    const bool inside = !last.stated.empty() && count.end <= last.end; // "= 18 → 12" is one count
    if (count.stated.empty() || !worked || inside || is_of_chain(count) || count.begin < least) return;
    if (!tells_together(search, count) && !leaves_some_for(search, count)) last = count;
  }

  /// "A chain, | 7 stitches": how long it is.
  bool is_of_chain(const StatedCount& count) const {
    if (!chained || stitched || numbered || count.begin < chain) return false;
    const std::string_view between = search.sentence.text().substr(chain, count.begin - chain);
    return between.find_first_not_of(" ,:") == std::string_view::npos;
  }

  /// "14 sts (7 puffs)": a bracket right behind the count that counts a part of it goes with it.
  void keep_bracket(const StatedCount& count, const Bracket& bracket) {
    const bool behind = !last.stated.empty() && next_word(search, last.end) == bracket.begin;
    const auto is_whole = [](const Stated& s) { return s.unit == Unit::any || s.unit == Unit::stitches; };
    if (behind && !count.stated.empty() && names_shaping(search, bracket)) { // "= 18 (6 inc)"
      last.end = count.end;
      return;
    }
    const bool part = std::none_of(count.stated.begin(), count.stated.end(), is_whole);
    if (!behind || count.stated.empty() || !part || !is_whole(last.stated.front())) return keep(count);
    last.stated.front().unit = Unit::stitches;
    last.stated.insert(last.stated.end(), count.stated.begin(), count.stated.end());
    last.end = count.end;
  }
};

/// "Ch-6 loop": a hyphen that belongs to a chain and its number.
bool is_hyphen_of_chain(const Search& search, std::uint32_t at) {
  const auto& from = search.sentence.folded.from;
  if (at == 0 || from[at + 1] - from[at] != 1) return false;
  const std::size_t blank = search.sentence.text().find_last_of(" ([,", at - 1);
  const std::size_t begin = blank == std::string_view::npos ? 0 : blank + 1;
  const words::Concept chain = words::find_concept(search.sentence.vocabulary, "ch");
  const Word* word = word_meaning(search.sentence, static_cast<std::uint32_t>(begin), chain);
  return word != nullptr && word->end == at;
}

/// "in last st—7 hdc": a dash without blanks leads to the count where a unit and the line's end follow.
bool is_glued_dash(const Search& search, std::uint32_t at, const StatedCount& count) {
  if (at == 0 || count.stated.empty() || count.stated.front().unit == Unit::any) return false;
  const std::string_view text = search.sentence.text();
  const auto& from = search.sentence.folded.from;
  const bool hyphen = from[at + 1] - from[at] == 1;
  const char last = text[at - 1];
  const bool figure = !hyphen && last >= '0' && last <= '9'; // "beg ch-3—10 dc"
  return !is_hyphen_of_chain(search, at) &&
         (figure || (last >= 'a' && last <= 'z') || last == ')' || last == ']') &&
         ends_sentence(search, count.end);
}

/// "/12/": a number between two slashes at the end of a line, whose last may have been cut off.
StatedCount between_slashes(const Search& search, std::uint32_t at) {
  StatedCount count{{}, at, at};
  const std::string_view text = search.sentence.text();
  if (at == 0 || text[at - 1] != ' ' || number_at(search.sentence, at + 1) == nullptr) return count;
  count.end = read_figures(search, at + 1, count.stated);
  if (const std::uint32_t slash = next_word(search, count.end); slash < text.size() && text[slash] == '/')
    count.end = slash + 1;
  if (count.stated.size() != 1 || !ends_line(search, count.end)) count.stated.clear();
  return count;
}

/// "3 sc :5": a number and not a word more behind a colon.
bool is_last_number(const Search& search, std::uint32_t at) {
  const Word* number = number_at(search.sentence, next_word(search, at));
  return number != nullptr &&
         trim_separators(search.sentence.text(), number->end, search.sentence.size()) <= number->end;
}

std::uint32_t meet_mark(Finder& finder, std::uint32_t at, char mark) {
  const std::uint32_t next = next_word(finder.search, at + 1);
  const bool spaced = at > 0 && finder.search.sentence.text()[at - 1] == ' ';
  const bool slashes = mark == '/' && finder.search.sentence.text().substr(at + 1, 1) == "/";
  if (slashes) finder.keep(behind_mark(finder.search, at, next_word(finder.search, at + 2)));
  if (mark == '/' && !slashes) finder.keep(between_slashes(finder.search, at));
  if (mark == '/' && !slashes && spaced) {
    const StatedCount count = behind_mark(finder.search, at, next);
    if (!count.stated.empty() && count.stated.front().unit == Unit::stitches) finder.keep(count);
  }
  if (mark == '=' || mark == '>' || mark == '~' || (mark == '|' && spaced) ||
      ((mark == ':' || mark == ';') && is_last_number(finder.search, at + 1)) ||
      (mark == '-' && (spaced || finder.clause)))
    finder.keep(behind_mark(finder.search, at, next));
  if (mark == '-' && !spaced && !finder.clause) {
    const StatedCount count = behind_mark(finder.search, at, next);
    if (is_glued_dash(finder.search, at, count)) finder.keep(count);
  }
  const bool hyphen = mark == '-' && is_hyphen_of_chain(finder.search, at);
  finder.clause = (is_separator(mark) && !hyphen) || mark == '!' || mark == '>';
  finder.sentence = mark == '.' || mark == ';';
  finder.parted = finder.sentence || mark == ':' || mark == '!';
  if (mark != '.' && mark != '-' && mark != ';') finder.closed = false;
  if (mark == ',' || mark == ':') finder.ended = false;
  return slashes ? at + 2 : at + 1;
}

bool closes_round(const Search& search, std::uint32_t at) {
  const Concepts& c = search.concepts;
  return means(search, at, c.join) || means(search, at, c.turn) || means(search, at, c.around);
}

/// Whether a word ends a round or works all of it: a number of stitches behind such a clause is its count.
bool ends_round(const Search& search, std::uint32_t at) {
  const Concepts& c = search.concepts;
  return closes_round(search, at) || means(search, at, c.slip) || means(search, at, c.top) ||
         means(search, at, words::find_concept(search.sentence.vocabulary, "last")) ||
         means(search, at, c.each) || means(search, at, c.repeat) || means(search, at, c.times);
}

/// "19 dc", and no "19 sts".
bool names_kind(const StatedCount& count) {
  return count.stated.size() == 1 && count.stated.front().unit == Unit::kind;
}

std::uint32_t meet_word(Finder& finder, std::uint32_t at, const Word& word) {
  const Search& search = finder.search;
  finder.keep(said_behind(search, at));
  const bool after_around = finder.closed;
  const bool only_turned = finder.chained && !finder.stitched;          // "ch 1, turn | 8 sc"
  const bool first_work = only_turned && is_number_of_work(search, at); // "ch 2, turn | 15 hdc, 15 sts"
  if ((finder.clause || (after_around && !only_turned)) && !first_work) {
    const StatedCount told = as_sentence(search, at);
    if (!only_turned || !names_kind(told)) finder.keep(told); // "3 ch. | 19 dc."
  }
  if (finder.clause && finder.parted) finder.keep(told_in_words(search, at));
  const bool bare = finder.sentence && finder.stitched && is_last_number(search, at);
  if (finder.clause && !first_work && !(only_turned && !finder.sentence) &&
      (finder.closed || bare || (finder.ended && finder.sentence)))
    finder.keep(behind_close(search, at));
  const ConceptClass sort = sort_of(search.sentence, word);
  if (sort == ConceptClass::start && finder.stitched) finder.ended = true;
  finder.stitched =
      finder.stitched || (is_work(search.sentence, word) &&
                          !means(search, at, words::find_concept(search.sentence.vocabulary, "ch")));
  const bool chain = means(search, at, words::find_concept(search.sentence.vocabulary, "ch"));
  finder.chained = finder.chained || chain;
  if (chain) finder.chain = word.end;
  finder.worked = finder.worked || sort != ConceptClass::loops;
  finder.numbered = finder.numbered || word.kind == WordKind::number;
  finder.clause = false;
  finder.closed = closes_round(search, at);
  finder.ended =
      finder.ended || ends_round(search, at) || sort_of(search.sentence, word) == ConceptClass::ending;
  const bool stop = word.end > at && search.sentence.text()[word.end - 1] == '.'; // "…, sl. st. 32 dc"
  const std::uint32_t next = next_word(search, word.end);
  const bool said = stop && pass_total(search, next) != next; // "…, 1 inc. | You have 18 sts"
  if (stop && (finder.ended || said)) finder.clause = finder.sentence = finder.parted = true;
  return std::max(word.end, at + 1);
}

/// "（1目に数える）": what chains are counted as.
bool tells_of_chain(const Search& search, const Bracket& bracket) {
  const Word* one = number_at(search.sentence, bracket.inner_begin);
  if (one == nullptr || one->number != 1) return false;
  for (std::uint32_t at = one->end; at < bracket.inner_end; ++at)
    if (means(search, at, search.sentence.counted) || means(search, at, search.sentence.not_counted))
      return true;
  return false;
}

bool names_work(const Sentence& sentence, const Bracket& bracket) {
  for (std::uint32_t at = bracket.inner_begin; at < bracket.inner_end; ++at)
    for (const Word& word : words_at(sentence, at))
      if (is_work(sentence, word)) return true;
  return false;
}

/// "Ch 3 | (= 1 dc), | turn, 29 dc": behind nothing but a chain a bracket tells what it stands for, where it
/// says so or work follows.
bool tells_worth_of_chain(const Finder& finder, const Bracket& bracket, const StatedCount& count) {
  if (tells_of_chain(finder.search, bracket)) return true;
  if (!finder.chained || finder.stitched) return false;
  const Sentence& sentence = finder.search.sentence;
  if (says_first_stitch(sentence, bracket)) return true;
  if (count.stated.empty()) return false;
  for (std::uint32_t at = bracket.end; at < sentence.size(); ++at)
    for (const Word& word : words_at(sentence, at))
      if (is_work(sentence, word)) return true;
  return false;
}

std::uint32_t step(Finder& finder, std::uint32_t at) {
  const Sentence& sentence = finder.search.sentence;
  const WordsAt words = words_at(sentence, at);
  if (words.empty()) {
    // where no blanks divide the words, one begins a clause
    if (!sentence.vocabulary.blanks_between_words && sentence.text()[at] == ' ') finder.clause = true;
    return at + 1;
  }
  const std::int32_t index = sentence.brackets.at[at];
  if (index != no_bracket) {
    const Bracket& bracket = sentence.brackets.all[static_cast<std::size_t>(index)];
    if (bracket.kind == Passage::open_star) return at + 1;
    const bool stars = bracket.kind == Passage::stars;
    const StatedCount count = stars ? StatedCount{} : in_brackets(finder.search, bracket);
    const bool worth = tells_worth_of_chain(finder, bracket, count);
    if (!stars && !worth) finder.keep_bracket(count, bracket);
    finder.stitched = finder.stitched || (!worth && names_work(sentence, bracket));
    finder.worked = true;
    finder.clause = false;
    finder.closed = true;
    return bracket.end;
  }
  if (words.first->kind == WordKind::mark) return meet_mark(finder, at, words.first->mark);
  const bool slash =
      sentence.text()[at] == '/' && words.first->end == at + 1; // which may be a word for "and" too
  if (slash) return meet_mark(finder, at, '/');
  return meet_word(finder, at, *words.first);
}

} // namespace

StatedCount find_stated(const Sentence& sentence, const std::vector<stitch::StitchKind>& kinds,
                        std::uint32_t least) {
  const Search search{sentence, kinds, concepts_of(sentence.vocabulary)};
  Finder finder{search, {}};
  finder.least = least;
  for (std::uint32_t at = 0; at < sentence.size();) at = step(finder, at);
  return finder.last;
}

} // namespace whorl::pattern
