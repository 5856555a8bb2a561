#include "pattern/opening.hpp"

#include "pattern/named_loop.hpp"
#include "pattern/word_names.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::ConceptClass;
using words::Word;
using words::WordKind;

/// "4 rnd", "4th round" at `place`: the number, and `at` behind both; 0 if that does not stand there.
std::uint32_t numbered_round(const Sentence& sentence, std::uint32_t place, std::uint32_t& at) {
  const Word* number = number_at(sentence, place);
  if (number == nullptr) return 0;
  std::uint32_t next = behind(sentence, *number);
  if (is_named(sentence, next, {"ordinal"})) next = behind(sentence, *words_at(sentence, next).first);
  if (!is_named(sentence, next, {"round", "row"})) return 0;
  at = words_at(sentence, next).first->end;
  return number->number;
}

/// Behind "of", "in the", "on".
std::uint32_t behind_small_words(const Sentence& sentence, std::uint32_t at) {
  std::uint32_t next = skip_blanks(sentence.text(), at);
  for (int small = 0; small < 3 && is_named(sentence, next, {"with", "filler", "from", "in"}); ++small)
    next = behind(sentence, *words_at(sentence, next).first);
  return next;
}

/// "of st 5 | of Rnd 6", "of the first st | in Rnd 6", "of any st | of Rnd 6": where the stitch ends; `at` if
/// none stands there.
std::uint32_t behind_stitch(const Sentence& sentence, std::uint32_t at) {
  std::uint32_t next = at;
  if (const Word* number = number_at(sentence, next)) { // "5th"
    next = behind(sentence, *number);
    if (!is_named(sentence, next, {"ordinal"})) return at;
    next = behind(sentence, *words_at(sentence, next).first);
  }
  while (next < sentence.size() && is_named(sentence, next, {"first", "last", "each", "next"}))
    next = behind(sentence, *words_at(sentence, next).first);
  if (!is_named(sentence, next, {"st"})) return at;
  const std::uint32_t stitch = words_at(sentence, next).first->end;
  const Word* number = number_at(sentence, skip_blanks(sentence.text(), stitch));
  const std::uint32_t end = number == nullptr ? stitch : number->end;
  return end == stitch && next == at ? at : behind_small_words(sentence, end);
}

/// "of Rnd 6" from `at`: the number, and `at` behind it; 0 and `at` as it was if that does not stand there.
std::uint32_t round_named(const Sentence& sentence, std::uint32_t& at) {
  const std::uint32_t next = behind_stitch(sentence, behind_small_words(sentence, at));
  if (const std::uint32_t number = numbered_round(sentence, next, at); number != 0) return number;
  for (const Word& word : words_at(sentence, next)) {
    const std::string_view name = name_of(sentence, word);
    if (name != "round" && name != "row") continue;
    const Word* number = number_at(sentence, behind(sentence, word));
    if (number == nullptr) continue;
    at = number->end;
    return number->number;
  }
  return 0;
}

/// Behind "of the chain"; `at` if that does not stand there.
std::uint32_t behind_chain(const Sentence& sentence, std::uint32_t at) {
  std::uint32_t next = skip_blanks(sentence.text(), at);
  constexpr int most_words = 5; // "of each of 5 foundation chs"
  for (int small = 0; small < most_words; ++small) {
    const Word* number = number_at(sentence, next);
    if (number == nullptr && !is_named(sentence, next, {"with", "filler", "from", "each", "foundation"}))
      break;
    next = behind(sentence, number != nullptr ? *number : *words_at(sentence, next).first);
  }
  return next != at && is_named(sentence, next, {"chain"}) ? words_at(sentence, next).first->end : at;
}

/// What stands at a place.
struct Scan {
  const Sentence& sentence;
  bool unused = false; ///< "free", "left over" stood before
  bool leaves = false; ///< "leave": what is unworked is left so now
  std::optional<Opening> found;
};

bool names_loops(const Sentence& sentence, std::uint32_t at);

/// "… of round 3 | of the foot": where the words end that name the part behind a round; `at` if none do.
std::uint32_t behind_part(const Sentence& sentence, std::uint32_t at) {
  constexpr int most_words = 3;
  std::uint32_t next = skip_blanks(sentence.text(), at);
  if (!is_named(sentence, next, {"with", "in", "from"})) return at;
  std::uint32_t end = at;
  for (int words = 0; next < sentence.size() && words <= most_words; ++words) {
    const WordsAt here = words_at(sentence, next);
    const bool small = is_named(sentence, next, {"with", "in", "from", "filler"});
    const bool known = here.empty() || here.first->kind != WordKind::unknown;
    if (known && !small && !is_named(sentence, next, {"leg"})) return end;
    next = behind(sentence, *here.first);
    if (!small) end = here.first->end;
  }
  return end;
}

/// "BLO | behind the skirt": where the words end that name what stands before the loops; `at` if none do.
std::uint32_t behind_what_hides(const Sentence& sentence, std::uint32_t at) {
  std::uint32_t next = skip_blanks(sentence.text(), at);
  if (!is_named(sentence, next, {"behind"})) return at;
  next = behind(sentence, *words_at(sentence, next).first);
  while (is_named(sentence, next, {"filler"})) next = behind(sentence, *words_at(sentence, next).first);
  const WordsAt name = words_at(sentence, next);
  return !name.empty() && name.first->kind == WordKind::unknown ? name.first->end : at;
}

/// Behind the small words, ordinals and words for "free" that stand between a round and its loops.
std::uint32_t behind_words_before_loops(const Sentence& sentence, std::uint32_t at, std::uint32_t end) {
  while (at < end && is_named(sentence, at, {"with", "from", "in", "filler", "unused", "remain", "ordinal"}))
    at = behind(sentence, *words_at(sentence, at).first);
  return at;
}

/// "3rd round's | free front loops": the number of the round that stands directly before loops, where the
/// language puts it so; 0 if none does.
std::uint32_t round_ahead(const Sentence& sentence, std::uint32_t begin) {
  for (std::uint32_t at = 0; at < begin; ++at) {
    std::uint32_t next = at;
    const std::uint32_t number = numbered_round(sentence, at, next);
    if (number == 0) continue;
    next = behind_words_before_loops(sentence, skip_blanks(sentence.text(), next), begin);
    if (const Word* const nth = number_at(sentence, next); nth != nullptr && next < begin)
      next = behind_words_before_loops(sentence, behind(sentence, *nth), begin); // "the 5th | free loop"
    if (next == begin) return number;
  }
  return 0;
}

/// "… free loop | no. 5", "… free loop | 5": where the number of the loop ends; `at` if it has none there.
std::uint32_t behind_loop_number(const Sentence& sentence, std::uint32_t at) {
  std::uint32_t next = skip_blanks(sentence.text(), at);
  const bool before = number_at(sentence, next) == nullptr && is_named(sentence, next, {"ordinal"});
  if (before) next = behind(sentence, *words_at(sentence, next).first);
  const Word* const number = number_at(sentence, next);
  return number == nullptr ? at : number->end;
}

void find_round(const Sentence& sentence, Opening& opening) {
  std::uint32_t end = opening.end;
  opening.round = round_named(sentence, end);
  if (opening.round == 0) {
    end = behind_loop_number(sentence, opening.end);
    opening.round = round_named(sentence, end);
  }
  if (opening.round != 0) opening.end = behind_part(sentence, end);
}

void meet_skipped(Scan& scan, std::uint32_t at, const Word& word) {
  if (names_loops(scan.sentence, behind(scan.sentence, word))) return; // "the unworked loops"
  Opening opening{Act::skipped, 0, 0, at, word.end};
  const WordsAt place = words_at(scan.sentence, behind(scan.sentence, word));
  for (const Word& next : place)
    if (sort_of(scan.sentence, next) == ConceptClass::place) opening.end = std::max(opening.end, next.end);
  const std::uint32_t counted = skip_blanks(scan.sentence.text(), opening.end);
  if (word_meaning(scan.sentence, counted, scan.sentence.counted) != nullptr) return; // "… are the first dc"
  find_round(scan.sentence, opening);
  const bool holds = is_named(scan.sentence, at, {"hold"}); // "the cap held upside down"
  if (holds && opening.end == word.end && opening.round == 0) return;
  scan.found = opening;
}

/// "front loops | left over": where the words end that say behind loops that they are free; `at` if none do.
std::uint32_t behind_unused(const Sentence& sentence, std::uint32_t at) {
  const std::uint32_t next = skip_blanks(sentence.text(), at);
  for (const Word& word : words_at(sentence, next))
    if (word.kind == WordKind::phrase && (word.means == sentence.unused || word.means == sentence.skipped))
      return word.end;
  return at;
}

/// Loops are opened where they were free, or are those of an earlier round.
void meet_loops(Scan& scan, std::uint32_t at, const Word& word, std::uint8_t loops) {
  Opening opening{Act::free_loops, loops, 0, at, behind_unused(scan.sentence, word.end)};
  scan.unused = scan.unused || opening.end != word.end;
  const std::uint32_t chain = behind_chain(scan.sentence, word.end);
  if (scan.unused && chain != word.end) {
    scan.found = Opening{Act::other_side, 0, 0, at, chain};
    return;
  }
  const NumberedLoops numbered = loops_numbered(scan.sentence, opening.end);
  if (numbered.first != 0) opening.end = numbered.end;
  find_round(scan.sentence, opening);
  if (opening.round == 0 && scan.unused) opening.round = round_ahead(scan.sentence, opening.begin);
  if (opening.round == 0) opening.end = behind_what_hides(scan.sentence, opening.end);
  if (scan.unused || opening.round != 0 || opening.end != word.end) scan.found = opening;
}

std::uint8_t loops_of(std::string_view name) {
  if (name == "front loops") return stitch::front;
  if (name == "back loops") return stitch::back;
  return 0;
}

bool names_loops(const Sentence& sentence, std::uint32_t at) {
  const WordsAt words = words_at(sentence, at);
  return std::any_of(words.begin(), words.end(), [&](const Word& word) {
    const ConceptClass sort = sort_of(sentence, word);
    return sort == ConceptClass::loops || (sort == ConceptClass::place && is_loop_word(sentence, word));
  });
}

/// "Turn the piece", "upside down" is the other side of a chain where one is worked along; else the work is
/// turned or held so.
bool only_turns(const Sentence& sentence, std::uint32_t at) {
  if (!tells_how_it_lies(sentence.text().substr(at))) return false;
  for (std::uint32_t before = 0; before < at; ++before)
    if (is_named(sentence, before, {"from hook"})) return false;
  return true;
}

void meet(Scan& scan, std::uint32_t at, const Word& word) {
  if (word.kind != WordKind::phrase) return;
  if (scan.found && scan.found->begin == at) return; // the longest phrase stands first
  if (word.means == scan.sentence.side && !only_turns(scan.sentence, at))
    scan.found = Opening{Act::other_side, 0, 0, at, word.end};
  if (word.means == scan.sentence.unused || name_of(scan.sentence, word) == "remain") scan.unused = true;
  if (name_of(scan.sentence, word) == "leave off") scan.leaves = true;
  if (word.means == scan.sentence.skipped && !scan.leaves) meet_skipped(scan, at, word);
  const std::uint8_t loops = loops_of(name_of(scan.sentence, word));
  const bool any_loop =
      sort_of(scan.sentence, word) == ConceptClass::place && is_loop_word(scan.sentence, word);
  if (loops != 0 || (any_loop && scan.unused)) meet_loops(scan, at, word, loops);
}

/// Whether a stitch is named at a place; a chain may be the edge that is spoken of.
bool names_stitch(const Sentence& sentence, std::uint32_t at) {
  const WordsAt words = words_at(sentence, at);
  return std::any_of(words.begin(), words.end(), [&](const Word& word) {
    return is_work(sentence, word) && name_of(sentence, word) != "ch";
  });
}

} // namespace

namespace {

/// "2 sc in each | free front loop", "dc | in skipped st", "2 dc in the 2 | skipped": where the loops or
/// stitches end that follow behind small words; `at` if none do.
std::uint32_t behind_loops(const Sentence& sentence, std::uint32_t at) {
  constexpr int most_words = 4;
  std::uint32_t next = skip_blanks(sentence.text(), at), skipped = at;
  for (int small = 0; small < most_words; ++small) {
    std::uint32_t end = next;
    for (const Word& word : words_at(sentence, next)) {
      if (sort_of(sentence, word) == ConceptClass::loops) return word.end;
      if (small > 0 && sort_of(sentence, word) == ConceptClass::place) return word.end;
      const bool leads = small == 0 && word.means == sentence.in;
      if (leads || sort_of(sentence, word) == ConceptClass::filler) end = std::max(end, word.end);
      if (word.means == sentence.skipped) skipped = word.end;
    }
    if (end == next) return skipped;
    next = skip_blanks(sentence.text(), end);
  }
  return skipped;
}

} // namespace

bool tells_how_it_lies(std::string_view text) {
  return text.substr(0, 4) == "turn" || text.substr(0, 11) == "upside down";
}

std::optional<Opening> opening_in(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  if (!sentence.opens) return std::nullopt;
  Scan scan{sentence, false, false, std::nullopt};
  for (std::uint32_t at = begin; at < end;) {
    const WordsAt words = words_at(sentence, at);
    std::uint32_t next = words.empty() ? at + 1 : std::max(words.first->end, at + 1);
    for (const Word& word : words) {
      if (word.end <= end) meet(scan, at, word);
      if (name_of(sentence, *words.first) == "next") next = std::min(next, word.end); // "the other side"
    }
    if (scan.found && scan.found->begin == at) next = std::max(next, scan.found->end);
    at = next;
  }
  return scan.found;
}

namespace {

/// "Return to Rnd 4. | Attach yarn to the front loops.": the round that the sentence before names; 0 if none.
std::uint32_t round_before(const Sentence& sentence, std::uint32_t begin) {
  for (std::uint32_t at = 0; at < begin; ++at) {
    if (names_stitch(sentence, at)) return 0;
    if (!is_named(sentence, at, {"hop"})) continue;
    std::uint32_t next = words_at(sentence, at).first->end;
    if (const std::uint32_t round = round_named(sentence, next); round != 0) return round;
  }
  return 0;
}

} // namespace

std::optional<Opening> opening_of_clause(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  if (!sentence.opens) return std::nullopt;
  std::uint32_t stop = begin;
  const bool attaches =
      is_named(sentence, skip_blanks(sentence.text(), begin), {"attach", "join", "join on"});
  const auto joins = [&](std::uint32_t at) { // "attach yarn with a sl st to any front loop"
    return attaches &&
           word_meaning(sentence, at, words::find_concept(sentence.vocabulary, "sl st")) != nullptr;
  };
  while (stop < end && (!names_stitch(sentence, stop) || joins(stop))) ++stop;
  auto opening = opening_in(sentence, begin, stop);
  if (opening || !attaches) return opening;
  const std::uint32_t round = round_before(sentence, begin);
  if (round == 0) return std::nullopt;
  for (std::uint32_t at = begin; at < stop; ++at)
    for (const Word& word : words_at(sentence, at))
      if (const std::uint8_t loops = loops_of(name_of(sentence, word)); loops != 0)
        return Opening{Act::free_loops, loops, round, at, word.end};
  return std::nullopt;
}

words::Span words_that_open_loops(std::string_view text, std::uint32_t begin,
                                  const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(text, begin, vocabulary);
  const auto opening = opening_in(sentence, 0, sentence.size());
  if (!opening || opening->act != Act::free_loops) return {};
  return sentence.span(opening->begin, opening->end);
}

bool opens_other_side(std::string_view text, const words::Vocabulary& vocabulary) {
  const Sentence sentence = look_up(text, 0, vocabulary);
  const auto opening = opening_in(sentence, 0, sentence.size());
  if (opening) return opening->act == Act::other_side;
  bool joins = false;
  for (std::uint32_t at = 0; at < sentence.size(); ++at) {
    joins = joins || is_named(sentence, at, {"attach", "link", "join"});
    if (joins && is_named(sentence, at, {"foundation"}) && behind_chain(sentence, at) != at) return true;
  }
  return false;
}

Piece piece_of(const Opening& opening) {
  Piece piece;
  piece.verb = Verb::opening;
  piece.work.act = opening.act;
  piece.work.loops = opening.loops;
  piece.round = opening.round;
  return piece;
}

void settle_opening(const Sentence& sentence, Match& match, Piece& piece) {
  if (!sentence.opens || piece.work.act != Act::stitch || piece.opened != Act::stitch) return;
  const auto opening = opening_in(sentence, match.begin, behind_loops(sentence, match.end));
  if (!opening) return;
  piece.opened = opening->act;
  piece.opened_loops = opening->loops;
  piece.round = opening->round;
  match.end = std::max(match.end, opening->end);
}

} // namespace whorl::pattern
