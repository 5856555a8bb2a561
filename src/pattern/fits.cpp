#include "pattern/colour.hpp"
#include "pattern/effect.hpp"
#include "pattern/opening.hpp"
#include "pattern/stretching.hpp"
#include "pattern/word_names.hpp"

#include <algorithm>

namespace whorl::pattern {

const Piece* piece_before(const WorkReader& reader, std::int32_t index) {
  while (index != no_path && reader.paths[static_cast<std::size_t>(index)].taken != Taken::row)
    index = reader.paths[static_cast<std::size_t>(index)].before;
  if (index == no_path) return nullptr;
  return &reader.pieces[static_cast<std::size_t>(reader.paths[static_cast<std::size_t>(index)].match)];
}

/// How many chains the last pieces make: "20 ch, 1 ch to turn".
std::uint32_t chains_before(const WorkReader& reader, std::int32_t index) {
  std::uint32_t chains = 0;
  for (; index != no_path; index = reader.paths[static_cast<std::size_t>(index)].before) {
    const Path& step = reader.paths[static_cast<std::size_t>(index)];
    if (step.taken != Taken::row) continue;
    const Work& work = reader.pieces[static_cast<std::size_t>(step.match)].work;
    if (work.act != Act::stitch || reader.kinds.at(work.kind).takes != 0) break;
    chains += work.times;
  }
  return chains;
}

bool has_worked(const Path& path) {
  return path.effect.uses != 0 || path.effect.makes != 0 || path.effect.pass_uses != 0;
}

bool is_stitch_piece(const Piece* piece) {
  return piece != nullptr && piece->verb == Verb::stitch && piece->work.act == Act::stitch &&
         !piece->work.to_end;
}

namespace {

bool starts_passage(const Stretching& s, std::uint32_t at) {
  return at < s.end && s.reader.sentence.brackets.at[at] != no_bracket;
}

/// Behind small words that stand at the end of a clause, "in the back loops | only,"; `at` if more follows
/// them.
std::uint32_t behind_last_fillers(const Stretching& s, std::uint32_t at) {
  const Sentence& sentence = s.reader.sentence;
  for (std::uint32_t next = at; next < s.end;) {
    const WordsAt words = words_at(sentence, next);
    if (words.empty() || is_separator(sentence.text()[next])) return words.empty() ? at : next;
    if (sort_of(sentence, *words.first) != words::ConceptClass::filler) return at;
    next = skip_blanks(sentence.text(), words.first->end);
    if (next >= s.end) return next;
  }
  return at;
}

/// Whether an item of a list ends at `end`.
bool ends_item(const Stretching& s, std::uint32_t end) {
  const std::uint32_t next = skip_blanks(s.reader.sentence.text(), end);
  return next >= s.end || is_separator(s.reader.sentence.text()[next]);
}

/// The longest word at a place that works nothing and tells no number: a small word, a place, an unknown one;
/// nullptr if work or anything else stands there.
const words::Word* idle_word(const Sentence& sentence, std::uint32_t at) {
  const words::Word* idle = nullptr;
  for (const words::Word& word : words_at(sentence, at)) {
    if (is_work(sentence, word)) return nullptr;
    const words::ConceptClass sort = sort_of(sentence, word);
    const bool is_idle = word.kind == words::WordKind::unknown || sort == words::ConceptClass::filler ||
                         sort == words::ConceptClass::place;
    if (is_idle && (idle == nullptr || word.end > idle->end)) idle = &word;
  }
  return idle;
}

/// Whether nothing but words for the hand stands between loops and the end of a clause: "stecht in das
/// hintere Maschenglied | ein", "arka ilmeğe | batırın".
bool only_hand_follows(const Stretching& s, std::uint32_t at) {
  const Sentence& sentence = s.reader.sentence;
  while (at < s.end && !is_separator(sentence.text()[at])) {
    if (starts_passage(s, at)) return false;
    const words::Word* word = idle_word(sentence, at);
    if (word == nullptr) { // the German "ein" is a number too
      const std::uint32_t letters = end_of_letters(sentence, at);
      return letters != at && number_at(sentence, at) != nullptr && ends_item(s, letters);
    }
    at = skip_blanks(sentence.text(), word->end);
  }
  return true;
}

/// Loops at the head of a line hold to its end; before a piece or bracket for that; behind a piece for that.
bool loops_fit(const Stretching& s, const Path& before, Verb verb, std::uint32_t end) {
  const std::uint32_t next = behind_last_fillers(s, skip_blanks(s.reader.sentence.text(), end));
  const char mark = next < s.end ? s.reader.sentence.text()[next] : '.';
  const bool worked = before.effect != Effect{};
  const bool piece_next = !is_separator(mark) && !(worked && only_hand_follows(s, next));
  switch (verb) {
  case Verb::loops_rest:
    return !before.loose && next < s.end;
  case Verb::loops_head:
    return s.extent != Extent::passage && before.effect == Effect{} && !before.loose && piece_next &&
           !starts_passage(s, next);
  case Verb::loops_next:
    return piece_next && mark != '!';
  case Verb::loops_behind:
    return worked && (before.loose || !piece_next || mark == '!');
  default:
    return true;
  }
}

/// The path before the last piece of a path.
std::int32_t before_piece(const WorkReader& reader, std::int32_t index) {
  while (index != no_path && reader.paths[static_cast<std::size_t>(index)].taken != Taken::row)
    index = reader.paths[static_cast<std::size_t>(index)].before;
  return index == no_path ? no_path : reader.paths[static_cast<std::size_t>(index)].before;
}

/// Whether chains are named in [begin, end), and no space of theirs.
bool names_chain(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  const words::Concept ch = words::find_concept(sentence.vocabulary, "ch");
  const words::Concept chain = words::find_concept(sentence.vocabulary, "chain");
  bool named = false;
  for (std::uint32_t at = begin; at < end; ++at) {
    if (word_meaning(sentence, at, sentence.space) != nullptr) return false;
    named =
        named || word_meaning(sentence, at, ch) != nullptr || word_meaning(sentence, at, chain) != nullptr;
  }
  return named;
}

/// Whether a word may as well be one for any stitch: the Polish "oczko".
bool names_place(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  const words::Concept st = words::find_concept(sentence.vocabulary, "st");
  for (std::uint32_t at = begin; at < end; ++at)
    if (word_meaning(sentence, at, st) != nullptr) return true;
  return false;
}

/// "Ch 7, miss 1 ch": the work begins in a chain, no stitch is skipped; "ch 2, miss 2 ch" misses others.
bool skips_chain(const Stretching& s, std::int32_t index, const Path& before, const Piece& piece,
                 std::uint32_t end) {
  const Piece* last = piece_before(s.reader, index);
  if (has_worked(before) || last == nullptr || s.reader.kinds.at(last->work.kind).takes != 0) return false;
  if (last->work.times <= piece.work.times) return false;
  if (last->verb != Verb::stitch || !names_chain(s.reader.sentence, before.end, end)) return false;
  return s.extent == Extent::line || !names_place(s.reader.sentence, before.end, end);
}

/// "Sl st to join" is one slip stitch.
bool goes_on_from_slip(const Stretching& s, std::int32_t index, const Path& before) {
  const Piece* last = piece_before(s.reader, index);
  if (!is_stitch_piece(last) || s.reader.kinds.at(last->work.kind).name != "sl st") return false;
  while (s.reader.paths[static_cast<std::size_t>(index)].taken != Taken::row)
    index = s.reader.paths[static_cast<std::size_t>(index)].before;
  const std::uint32_t end = s.reader.paths[static_cast<std::size_t>(index)].end;
  return s.reader.sentence.text().substr(end, before.end - end).find_first_of(",;.") ==
         std::string_view::npos;
}

/// Whether a line names a stitch, besides increases and decreases: then a number without one lacks it.
bool names_stitch(const Stretching& s) {
  for (std::uint32_t at = s.begin; at < s.end; ++at)
    for (const words::Word& word : words_at(s.reader.sentence, at))
      if (sort_of(s.reader.sentence, word) == words::ConceptClass::stitch) return true;
  return false;
}

/// A number by itself is so many stitches in a passage, before a yarn, and in a line that names none and
/// states its count.
bool stands_for_stitches(const Stretching& s, std::uint32_t begin, std::uint32_t end) {
  const Sentence& sentence = s.reader.sentence;
  const std::uint32_t next = skip_blanks(sentence.text(), end);
  if (sentence.yarns && next < s.end && yarn_mark_at(sentence, next, false, true, s.end)) return true;
  if (s.extent != Extent::line) return ends_item(s, end);
  while (begin > s.begin && sentence.text()[begin - 1] == ' ') --begin;
  const bool begins = begin == s.begin || is_separator(sentence.text()[begin - 1]);
  return begins && s.end < sentence.size() && ends_item(s, end) && !names_stitch(s);
}

/// The piece before, or before the turn that stands there; nullptr if there is none.
const Piece* piece_before_turn(const Stretching& s, std::int32_t index) {
  const Piece* last = piece_before(s.reader, index);
  return last != nullptr && last->verb == Verb::turn ? piece_before(s.reader, before_piece(s.reader, index))
                                                     : last;
}

bool stands_on_base(const Stretching& s, std::int32_t index) {
  const Piece* last = piece_before_turn(s, index);
  return last != nullptr && last->verb == Verb::starting_chain;
}

/// Whether the clause in [begin, end) works nothing but slip stitches, wherever these go.
bool only_slips(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  for (std::uint32_t at = begin; at < end; ++at)
    for (const words::Word& word : words_at(sentence, at))
      if (is_work(sentence, word)) return sentence.vocabulary.concepts[word.means].name == "sl st";
  return true;
}

/// "(Ch 3, 2 dc, ch 2, 3 dc) in corner sp": a bracket before which nothing but slip stitches is worked.
bool heads_group(const Stretching& s) {
  if (s.extent != Extent::passage) return false;
  const Sentence& sentence = s.reader.sentence;
  std::uint32_t clause = 0;
  for (std::uint32_t at = 0; at < s.begin; ++at) {
    const bool ends = std::string_view(",;.:").find(sentence.text()[at]) != std::string_view::npos;
    if (!ends && at + 1 < s.begin) continue;
    if (!only_slips(sentence, clause, at)) return false;
    clause = at + 1;
  }
  return true;
}

/// "Sl st to first 2-ch sp, | (ch 3, 2 dc, …) in same sp" leads to the group that the round begins with; it
/// works nothing.
bool leads_to_space(const Stretching& s, const Path& before, const Piece& piece) {
  if (piece.verb != Verb::stitch || s.extent != Extent::line || has_worked(before)) return false;
  if (s.reader.kinds.at(piece.work.kind).name != "sl st" || piece.work.to_end) return false;
  const Sentence& sentence = s.reader.sentence;
  const std::uint32_t begin = skip_blanks(sentence.text(), before.end);
  const auto at_slip = [&](const words::Word& word) { return is_work(sentence, word); };
  const WordsAt first = words_at(sentence, begin);
  if (std::none_of(first.begin(), first.end(), at_slip)) return false;
  const auto clause = std::min<std::size_t>(sentence.text().find_first_of(",;.", begin), s.end);
  const std::size_t next = sentence.text().find_first_of("([,;.*", clause + 1);
  if (next >= s.end || (sentence.text()[next] != '(' && sentence.text()[next] != '[')) return false;
  for (std::uint32_t at = begin; at < clause; ++at)
    if (const words::Word* space = word_meaning(sentence, at, sentence.space);
        space != nullptr && skip_blanks(sentence.text(), space->end) == clause)
      return true;
  return false;
}

/// "Dc in each st around, sl st": behind work that goes to the end a slip stitch by itself joins the round.
bool only_joins(const Stretching& s, std::int32_t index, const Path& before, const Piece& piece,
                std::uint32_t end) {
  const Piece* last = piece_before(s.reader, index);
  if (piece.verb != Verb::stitch || last == nullptr || !last->work.to_end) return false;
  if (s.reader.kinds.at(piece.work.kind).name != "sl st" || piece.work.where != Where::next) return false;
  const WordsAt words = words_at(s.reader.sentence, skip_blanks(s.reader.sentence.text(), before.end));
  return !words.empty() && words.first->end == end;
}

/// Whether free loops were opened before: among them there is no chain space.
bool has_opened(const Stretching& s, std::int32_t index) {
  for (; index != no_path; index = s.reader.paths[static_cast<std::size_t>(index)].before) {
    const Path& path = s.reader.paths[static_cast<std::size_t>(index)];
    if (path.taken != Taken::row) continue;
    const Piece& piece = s.reader.pieces[static_cast<std::size_t>(path.match)];
    if (piece.opened == Act::free_loops || piece.work.act == Act::free_loops) return true;
  }
  return false;
}

/// The last piece before that is no chain, or nullptr.
const Piece* last_but_chains(const Stretching& s, std::int32_t index) {
  for (const Piece* last = piece_before(s.reader, index); last != nullptr;
       index = before_piece(s.reader, index), last = piece_before(s.reader, index)) {
    const bool chains = (last->verb == Verb::stitch && last->work.act == Act::stitch &&
                         s.reader.kinds.at(last->work.kind).takes == 0) ||
                        last->verb == Verb::starting_chain;
    if (!chains) return last;
  }
  return nullptr;
}

/// "Sl st in ch-3 sp, ch 3, | (dc, ch 3) in each ch-3 sp around": the chains stand for no stitch, since all
/// the spaces are still to be worked.
bool works_led_space_again(const Stretching& s, std::int32_t index, const Piece& piece) {
  if (piece.work.where != Where::space || !piece.work.to_end) return false;
  const Piece* last = piece_before(s.reader, index);
  const Piece* led = last_but_chains(s, index);
  return last != nullptr && last->verb == Verb::starting_chain && led != nullptr && led->verb == Verb::travel;
}

/// "Chain 16 single crochet in the second chain": a single chain has no second.
bool lacks_chain(const Stretching& s, std::int32_t index, const Piece& piece) {
  if (piece.work.where != Where::chain || piece.verb != Verb::stitch) return false;
  const Piece* last = piece_before(s.reader, index);
  return last != nullptr && last->verb == Verb::stitch && last->work.times < piece.work.nth &&
         is_chain(s.reader.kinds.at(last->work.kind)) && last->work.times == 1 && s.extent == Extent::line;
}

/// "Sl st in next ch-2 sp" at the head of a line leads there: it is no stitch.
bool slips_into_space(const Stretching& s, std::int32_t index, const Piece& piece) {
  return piece.verb == Verb::stitch && piece.work.where == Where::space && !piece.work.to_end &&
         piece.work.times == 1 && s.extent == Extent::line && piece_before(s.reader, index) == nullptr &&
         s.reader.kinds.at(piece.work.kind).name == "sl st";
}

/// "Ch 2, 3 dc in next st, | ch 2, sl st in same st": the chains lead down again, as others led up before.
bool closes_petal(const Stretching& s, std::int32_t index, std::uint32_t begin, std::uint32_t end) {
  const Sentence& sentence = s.reader.sentence;
  const words::Concept same = words::find_concept(sentence.vocabulary, "same");
  bool in_same = false;
  for (std::uint32_t at = begin; at < end; ++at)
    for (const words::Word& word : words_at(sentence, at))
      in_same = in_same || (word.means == same && word.cost == 0);
  const Piece* worked = piece_before(s.reader, index);
  const Piece* up =
      in_same && worked != nullptr ? piece_before(s.reader, before_piece(s.reader, index)) : nullptr;
  const bool chains = up != nullptr && (up->verb == Verb::stitch || up->verb == Verb::starting_chain);
  return chains && is_chain(s.reader.kinds.at(up->work.kind));
}

/// "Ch 5, sl st in first sc" closes the round with its last arch: a picot is closed into one of its chains,
/// or back into what it stands on.
bool closes_round(const Stretching& s, std::uint32_t begin, std::uint32_t end) {
  const Sentence& sentence = s.reader.sentence;
  bool first = false, stitch = false;
  for (std::uint32_t at = begin; at < end; ++at) {
    first = first || is_named(sentence, at, {"first"});
    if (is_named(sentence, at, {"ch", "chain", "sl st"})) continue;
    for (const words::Word& word : words_at(sentence, at)) {
      if (word.kind != words::WordKind::phrase || word.end > end) continue;
      const words::ConceptClass sort = sort_of(sentence, word);
      stitch = stitch || sort == words::ConceptClass::stitch || sort == words::ConceptClass::place;
    }
  }
  return s.extent == Extent::line && first && stitch;
}

/// "2 dc in 4th ch from hook, ch 2, | 3 dc in same ch": a chain was named, and is the same place.
bool is_in_named_chain(const Piece* piece) {
  return piece != nullptr && piece->work.where == Where::chain &&
         (piece->verb == Verb::stitch || piece->verb == Verb::group);
}

/// "From the 2nd chain | in each chain 1 sc": what follows needs no comma.
/// "5 sc and | in the last 2 sc": a clause begins there as well.
bool follows_conjunction(const Stretching& s, const Path& before) {
  return before.taken == Taken::passed &&
         word_meaning(s.reader.sentence, before.begin, s.reader.sentence.conjunction) != nullptr;
}

bool names_first_chain(const Piece* piece) { return piece != nullptr && piece->verb == Verb::from_chain; }

} // namespace

bool fits_behind(const Stretching& s, std::int32_t index, const Path& before, const Piece& piece,
                 std::uint32_t end) {
  const bool same = piece.work.where == Where::same && !piece.based &&
                    (piece.verb == Verb::stitch || piece.verb == Verb::group);
  const Piece* last_work = same || piece.here || piece.led ? last_but_chains(s, index) : nullptr;
  const bool to_space =
      last_work != nullptr && last_work->verb == Verb::travel; // where it led is the same place
  if (same && !has_worked(before) && !to_space) return false;
  if (piece.here && (to_space || is_in_named_chain(last_work))) return false;
  if (piece.led && !to_space) return false;
  if (slips_into_space(s, index, piece)) return false;
  if (lacks_chain(s, index, piece)) return false;
  if (works_led_space_again(s, index, piece)) return false;
  if (piece.heading && piece_before(s.reader, index) != nullptr) return false;
  if (piece.leading && before.loose && !follows_conjunction(s, before) &&
      !names_first_chain(piece_before(s.reader, index)))
    return false;
  if (only_joins(s, index, before, piece, end) || leads_to_space(s, before, piece)) return false;
  if (piece.based && !stands_on_base(s, index)) return false;
  const bool in_space = piece.verb == Verb::stitch && piece.work.where == Where::space;
  if (in_space && before.effect.starts && has_opened(s, index)) return false; // "2 hdc in each free lp"
  switch (piece.verb) {
  case Verb::starting_chain:
  case Verb::travel:
    return (s.extent == Extent::line || (heads_group(s) && piece.verb == Verb::starting_chain)) &&
           !has_worked(before);
  case Verb::under_chain: {
    const Piece* last = piece_before_turn(s, index);
    // "Skip the first st" at the head of a row may be the one under the turning chain of the row before.
    if (last == nullptr) return s.extent == Extent::line && !has_worked(before);
    return last->verb == Verb::starting_chain;
  }
  case Verb::join:
    return !goes_on_from_slip(s, index, before);
  case Verb::picot:
    if (closes_petal(s, index, before.end, end) || closes_round(s, before.end, end)) return false;
    // "Ch 8, sl st in 2nd ch from hook" begins to work along a chain
    return s.extent != Extent::line || has_worked(before) || before.effect.starts;
  case Verb::skip:
    return !skips_chain(s, index, before, piece, end);
  case Verb::other_side:
    return before.effect.starts || !tells_how_it_lies(s.reader.sentence.text().substr(before.end));
  case Verb::side_behind:
  case Verb::part_behind:
    return before.loose && is_stitch_piece(piece_before(s.reader, index));
  case Verb::others: {
    const Piece* last = piece_before(s.reader, index);
    return last != nullptr && last->verb == Verb::every;
  }
  case Verb::from_chain: {
    const Piece* last = piece_before(s.reader, index);
    if (last == nullptr || last->work.act != Act::stitch) return true;
    return last->verb != Verb::starting_chain && chains_before(s.reader, index) >= piece.work.nth;
  }
  default:
    break;
  }
  if (piece.onward) // "3 ch (counts), from the 2nd stitch …" leads along no chain
    if (const Piece* last = piece_before(s.reader, index);
        last != nullptr && last->verb == Verb::starting_chain)
      return false;
  if (piece.alone) return !before.loose && stands_for_stitches(s, before.end, end);
  if (!piece.here) return loops_fit(s, before, piece.verb, end);
  const Piece* last = piece_before(s.reader, index);
  return last == nullptr || last->verb != Verb::starting_chain;
}

} // namespace whorl::pattern
