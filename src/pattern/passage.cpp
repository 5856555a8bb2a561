#include "pattern/passage.hpp"

#include "pattern/costs.hpp"
#include "pattern/effect.hpp"
#include "pattern/opening.hpp"
#include "pattern/repeat_words.hpp"
#include "pattern/starting_chain.hpp"
#include "pattern/stretching.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Word;
using words::WordKind;

const Meaning& meaning_of_row(WorkReader& reader, std::uint16_t row) {
  if (!reader.meaning_known[row]) {
    reader.meanings[row] = meaning_of(reader.sentence.vocabulary.rows[row].meaning);
    reader.meaning_known[row] = 1;
  }
  return reader.meanings[row];
}

/// Habits come in contradicting pairs of neighbouring bits.
bool are_mixed(std::uint16_t habits) { return (habits & (habits >> 1) & 0x5555) != 0; }

int habit_cost(const Path& before, std::uint16_t habit, int row_cost) {
  if (habit == 0) return 0;
  if ((before.habits & habit) != 0) return costs.habit_again - std::max(row_cost, costs.habit_again);
  const bool mixes = are_mixed(before.habits | habit) && !are_mixed(before.habits);
  return mixes ? costs.habits_mixed : 0;
}

/// "And in each st around" is the stitch before once more; the match of that, no_path if none can be.
std::int32_t worked_again(WorkReader& reader, std::int32_t index, std::int32_t match) {
  const Piece* last = piece_before(reader, index);
  if (!is_stitch_piece(last) || last->work.kind >= reader.kinds.known.size() + reader.kinds.made.size())
    return no_path;
  Piece again = reader.pieces[static_cast<std::size_t>(match)];
  again.verb = Verb::stitch;
  again.work.kind = last->work.kind;
  again.work.into = last->work.into;
  again.work.in_one = last->work.where == Where::chain ? std::uint16_t{1} : last->work.in_one;
  if (again.again_many != 0) again.work.in_one = again.again_many;
  if (last->work.loops != 0) again.work.loops = last->work.loops;
  again.bare = last->bare;
  reader.matches.push_back(Match(reader.matches[static_cast<std::size_t>(match)]));
  reader.pieces.push_back(again);
  return static_cast<std::int32_t>(reader.pieces.size() - 1);
}

/// A copy of a match that works `piece` instead.
std::int32_t worked_as(WorkReader& reader, std::int32_t match, const Piece& piece) {
  reader.matches.push_back(Match(reader.matches[static_cast<std::size_t>(match)]));
  reader.pieces.push_back(piece);
  return static_cast<std::int32_t>(reader.pieces.size() - 1);
}

/// "Ch 2, 6 sc in first ch": into the chain made first, the one furthest from the hook; the match of that,
/// no_path if no chain was made, or another is named.
std::int32_t worked_into_first_chain(WorkReader& reader, std::int32_t index, std::int32_t match) {
  const Piece* last = piece_before(reader, index);
  if (!is_stitch_piece(last) || !is_chain(reader.kinds.at(last->work.kind))) return no_path;
  const std::uint32_t chains = last->work.times;
  Piece piece = reader.pieces[static_cast<std::size_t>(match)];
  if (chains > 4 || (piece.work.nth > 1 && piece.work.nth != chains)) return no_path;
  piece.work.nth = static_cast<std::uint16_t>(chains);
  piece.made = false;
  return worked_as(reader, match, piece);
}

/// Whether the last word of a match names a chain.
bool ends_with_chain(const WorkReader& reader, std::int32_t match) {
  const Match& found = reader.matches[static_cast<std::size_t>(match)];
  const Sentence& sentence = reader.sentence;
  for (const char* name : {"ch", "chain", "the chains"}) {
    const words::Concept chain = words::find_concept(sentence.vocabulary, name);
    for (std::uint32_t at = found.begin; at < found.end; ++at)
      if (const Word* word = word_meaning(sentence, at, chain); word != nullptr && word->end == found.end)
        return true;
  }
  return false;
}

/// "Rep from * to last 4 sts, sc to end": what a piece that runs to the end finds left by the one before.
std::int32_t worked_in_what_is_left(WorkReader& reader, std::int32_t index, std::int32_t match) {
  const Piece* last = piece_before(reader, index);
  Piece piece = reader.pieces[static_cast<std::size_t>(match)];
  const bool left = last != nullptr && last->work.to_end && last->work.leave > 0;
  const bool plain = piece.verb == Verb::stitch && piece.work.act == Act::stitch && piece.work.to_end &&
                     piece.work.leave == 0 && piece.work.where == Where::next &&
                     reader.kinds.at(piece.work.kind).takes == 1;
  if (!left || !plain) return match;
  piece.work.to_end = false;
  piece.work.times = last->work.leave;
  return worked_as(reader, match, piece);
}

/// "Ch 2, 12 sc around the first leg, | 2 sc in ch": one into each chain of the bridge, where that has as
/// many.
std::int32_t worked_along_bridge(WorkReader& reader, std::int32_t index, std::int32_t match) {
  Piece piece = reader.pieces[static_cast<std::size_t>(match)];
  const bool many = piece.verb == Verb::stitch && piece.work.act == Act::stitch && piece.work.in_one > 1 &&
                    piece.work.times == 1 && piece.work.where == Where::next && !piece.work.to_end;
  if (!many || !ends_with_chain(reader, match)) return match;
  bool part = false, bridge = false;
  for (; index != no_path; index = reader.paths[static_cast<std::size_t>(index)].before) {
    const Path& step = reader.paths[static_cast<std::size_t>(index)];
    if (step.taken != Taken::row) continue;
    const Piece& before = reader.pieces[static_cast<std::size_t>(step.match)];
    part = part || before.verb == Verb::part_here || before.verb == Verb::part_behind ||
           before.opened == Act::part_edge;
    bridge = bridge || (before.verb == Verb::stitch && is_chain(reader.kinds.at(before.work.kind)) &&
                        before.work.times == piece.work.in_one);
  }
  if (!part || !bridge) return match;
  piece.work.times = piece.work.in_one;
  piece.work.in_one = 1;
  return worked_as(reader, match, piece);
}

/// "Sc, inc around" goes round as a whole rather than in its last stitch only.
int cost_beside_list(const Stretching& s, const Path& before, const Piece& piece, const Match& match) {
  if (!piece.work.to_end) return 0;
  if (piece.verb == Verb::repeat && match.slots.bracket == s.rows.list)
    return -std::min(match.cost, costs.plain_list);
  return piece.verb == Verb::stitch && has_worked(before) ? costs.only_last_around : 0;
}

/// "Skip next | dc": the piece before ends with a word for the next place, and a stitch stands right behind
/// it.
bool splits_next(const Stretching& s, const Path& before, const Match& found) {
  if (before.taken != Taken::row) return false;
  const Sentence& sentence = s.reader.sentence;
  const WordsAt first = words_at(sentence, found.begin);
  if (std::none_of(first.begin(), first.end(), [&](const Word& word) { return is_work(sentence, word); }))
    return false;
  for (std::uint32_t at = before.begin; at < found.begin; ++at)
    if (const Word* next = word_meaning(sentence, at, sentence.next);
        next != nullptr && skip_blanks(sentence.text(), next->end) == found.begin)
      return true;
  return false;
}

} // namespace

void offer(Stretching& s, Path path) {
  auto& paths = s.reader.paths;
  std::int32_t* link = &s.at(path.end);
  std::size_t kept = 0;
  std::int32_t* slot = nullptr;
  for (; *link != no_path; link = &paths[static_cast<std::size_t>(*link)].next, ++kept) {
    const Path& other = paths[static_cast<std::size_t>(*link)];
    if (slot == nullptr && path.cost < other.cost) slot = link;
    const bool same = s.reader.most == 1 || (other.effect == path.effect && other.loose == path.loose);
    if (!same) continue;
    if (slot == nullptr) return;
    *link = other.next;
    break;
  }
  if (slot == nullptr) slot = link;
  if (slot == link && *link == no_path && kept >= s.reader.most) return;
  path.next = *slot;
  const auto index = static_cast<std::int32_t>(paths.size());
  // The link may lie in the vector that is about to grow.
  *slot = index;
  paths.push_back(path);
  std::size_t rank = 0;
  for (std::int32_t* tail = &s.at(path.end); *tail != no_path;
       tail = &paths[static_cast<std::size_t>(*tail)].next)
    if (++rank > s.reader.most) {
      *tail = no_path;
      break;
    }
}

Path after(const Path& before, std::int32_t index, Taken taken, std::uint32_t begin, std::uint32_t end) {
  Path path;
  path.cost = before.cost;
  path.lost = before.lost;
  path.habits = before.habits;
  path.effect = before.effect;
  path.taken = taken;
  path.before = index;
  path.begin = begin;
  path.end = end;
  return path;
}

void offer_row(Stretching& s, std::int32_t index, std::int32_t match, std::int32_t inner,
               const Effect& worked) {
  Effect effect = worked;
  if (s.reader.pieces[static_cast<std::size_t>(match)].verb == Verb::again) {
    match = worked_again(s.reader, index, match);
    if (match == no_path) return;
    effect = effect_of(s.reader.pieces[static_cast<std::size_t>(match)], {}, s.reader.kinds);
  }
  if (const Piece& made = s.reader.pieces[static_cast<std::size_t>(match)];
      made.made && made.verb == Verb::stitch) {
    match = worked_into_first_chain(s.reader, index, match);
    if (match == no_path) return;
  }
  if (const std::int32_t left = worked_in_what_is_left(s.reader, index, match); left != match) {
    match = left;
    effect = effect_of(s.reader.pieces[static_cast<std::size_t>(match)], {}, s.reader.kinds);
  }
  if (const std::int32_t along = worked_along_bridge(s.reader, index, match); along != match) {
    match = along;
    effect = effect_of(s.reader.pieces[static_cast<std::size_t>(match)], {}, s.reader.kinds);
  }
  const Match& found = s.reader.matches[static_cast<std::size_t>(match)];
  const Piece& piece = s.reader.pieces[static_cast<std::size_t>(match)];
  const Path before = s.reader.paths[static_cast<std::size_t>(index)];
  if (!fits_behind(s, index, before, piece, found.end)) return;
  const auto& row = s.reader.sentence.vocabulary.rows[found.row];
  Path path = after(before, index, Taken::row, found.begin, skip_blanks(s.reader.sentence.text(), found.end));
  path.cost += found.cost + habit_cost(before, row.habit, row.cost);
  if (s.plain_list) path.cost += cost_beside_list(s, before, piece, found);
  const bool behind =
      piece.verb == Verb::loops_behind || piece.verb == Verb::side_behind || piece.verb == Verb::part_behind;
  if (before.loose && !behind) path.cost += costs.no_separator;
  if (before.loose && splits_next(s, before, found)) path.cost += costs.behind_next;
  const bool own_edge = piece.opened != Act::stitch; // each side of a flat piece has an end of its own
  if (before.effect.pass_uses != 0 && effect.pass_uses != 0 && !own_edge) path.cost += costs.second_to_end;
  if (piece.verb == Verb::under_chain && piece_before(s.reader, index) == nullptr) path.cost += 3;
  path.habits = static_cast<std::uint16_t>(path.habits | row.habit);
  if (!has_worked(before)) {
    path.cost += piece.cost;
    path.habits = static_cast<std::uint16_t>(path.habits | piece.habits);
  }
  path.match = match;
  path.inner = inner;
  path.loose =
      piece.verb != Verb::loops_rest && piece.verb != Verb::loops_next && piece.verb != Verb::loops_head;
  if (inner != no_path) {
    const Path& passage = s.reader.paths[static_cast<std::size_t>(inner)];
    path.cost += passage.cost;
    path.lost += passage.lost;
    path.habits = static_cast<std::uint16_t>(path.habits | passage.habits);
  }
  const bool behind_end = piece.verb == Verb::stitch && before.effect.pass_uses != 0 &&
                          slips(piece.work, s.reader.kinds.at(piece.work.kind));
  path.effect = behind_end ? before.effect : then(before.effect, effect);
  path.end = std::min(path.end, s.end);
  offer(s, path);
}

namespace {

void read_inside(WorkReader& reader, std::int32_t bracket) {
  const auto index = static_cast<std::size_t>(bracket);
  if (reader.inside.size() <= index) {
    reader.inside.resize(reader.sentence.brackets.all.size());
    reader.inside_read.resize(reader.sentence.brackets.all.size());
  }
  if (reader.inside_read[index]) return;
  reader.inside_read[index] = 1;
  const Bracket passage = reader.sentence.brackets.all[index];
  std::vector<std::int32_t> inside =
      read_stretch(reader, passage.inner_begin, passage.inner_end,
                   passage.kind == Passage::list ? Extent::list : Extent::passage);
  reader.inside[index] = std::move(inside);
}

/// The piece of a match, its chains and openings settled.
std::optional<Piece> settled_piece(WorkReader& reader, Match& found) {
  auto piece = piece_of(reader.sentence, found, meaning_of_row(reader, found.row), reader.kinds);
  if (piece && !settle_chains(reader.sentence, found, reader.kinds, *piece)) return std::nullopt;
  if (piece) settle_opening(reader.sentence, found, *piece);
  return piece;
}

/// What a piece does, together with the places that its words open.
Effect effect_with_opening(const Piece& piece, const Effect& inner, const Kinds& kinds) {
  Effect effect = effect_of(piece, inner, kinds);
  effect.starts = effect.starts || piece.opened != Act::stitch;
  return effect;
}

/// A repeat whose last pass is not finished.
Effect with_last_pass(const WorkReader& reader, const Effect& all, std::int32_t inner, std::int32_t bracket) {
  const std::int32_t last = last_pass(reader, inner, bracket);
  return last == no_path ? all : then(all, reader.paths[static_cast<std::size_t>(last)].effect);
}

/// "Repeat from * to **" behind more work: the last passage before it that two stars end; no_bracket if there
/// is none.
std::int32_t passage_before(const Sentence& sentence, std::uint32_t place) {
  const auto& all = sentence.brackets.all;
  for (std::size_t index = all.size(); index-- > 0;)
    if (all[index].kind == Passage::stars && all[index].end <= place &&
        sentence.text().substr(all[index].inner_end, 2) == "**")
      return static_cast<std::int32_t>(index);
  return no_bracket;
}

/// "1 sc 1 bo": two stitches with their numbers, which no word puts one into the other.
bool only_lists(const Sentence& sentence, const Match& found) {
  if (found.slots.place == words::no_concept) return false;
  int stitches = 0;
  for (std::uint32_t at = found.begin; at < found.end;) {
    const WordsAt words = words_at(sentence, at);
    if (words.empty()) {
      ++at;
      continue;
    }
    const bool work =
        std::any_of(words.begin(), words.end(), [&](const Word& w) { return is_work(sentence, w); });
    if (!work && number_at(sentence, at) == nullptr) return false;
    stitches += work;
    at = std::max(words.first->end, at + 1);
  }
  return stitches > 1;
}

/// Whether chains at the head of a passage stand for a stitch: what is repeated has no round's head.
bool counts_chain_at_head(const WorkReader& reader, std::int32_t path) {
  for (; path != no_path; path = reader.paths[static_cast<std::size_t>(path)].before) {
    const Path& step = reader.paths[static_cast<std::size_t>(path)];
    if (step.taken == Taken::row &&
        reader.pieces[static_cast<std::size_t>(step.match)].verb == Verb::starting_chain)
      return true;
  }
  return false;
}

/// "… in last ch. On the other side with 3 sc": a chain of so many is told in one sentence.
bool leaves_sentence(const Sentence& sentence, const Match& found) {
  const std::string_view text = sentence.text();
  for (std::uint32_t at = found.begin + 1; at + 1 < found.end; ++at)
    if (text[at - 1] == '.' && text[at] == ' ' && sentence.folded.capital[at + 1]) return true;
  return false;
}

/// A piece that a row is, for all paths that end where it begins.
void offer_piece(Stretching& s, std::uint32_t place, const Match& found, const Piece& piece) {
  WorkReader& reader = s.reader;
  const auto match = static_cast<std::int32_t>(reader.matches.size());
  reader.matches.push_back(found);
  reader.pieces.push_back(piece);
  std::vector<std::int32_t> inner{no_path};
  if (found.slots.bracket != no_bracket) {
    read_inside(reader, found.slots.bracket);
    inner = reader.inside[static_cast<std::size_t>(found.slots.bracket)];
  }
  const bool repeats = piece.verb == Verb::repeat && (piece.work.to_end || piece.work.times > 1);
  for (const std::int32_t content : inner) {
    if (repeats && content != no_path && counts_chain_at_head(reader, content)) continue;
    const Effect once =
        content == no_path ? Effect{} : reader.paths[static_cast<std::size_t>(content)].effect;
    Effect effect = effect_with_opening(piece, once, reader.kinds);
    if (piece.part) effect = with_last_pass(reader, effect, content, found.slots.bracket);
    for (std::int32_t index = s.at(place); index != no_path;
         index = reader.paths[static_cast<std::size_t>(index)].next)
      offer_row(s, index, match, content, effect);
  }
}

/// One row for all paths that end where it begins.
void offer_match(Stretching& s, std::uint32_t place, Match found) {
  WorkReader& reader = s.reader;
  if (only_lists(reader.sentence, found)) return;
  if (meaning_of_row(reader, found.row).back) {
    found.slots.bracket = passage_before(reader.sentence, place);
    if (found.slots.bracket == no_bracket) return;
  }
  const auto piece = settled_piece(reader, found);
  if (!piece || found.end > s.end) return;
  if (piece->verb == Verb::stitch && is_chain(reader.kinds.at(piece->work.kind)) &&
      leaves_sentence(reader.sentence, found))
    return;
  offer_piece(s, place, found, *piece);
  if (const auto counting = with_skipped_counted(reader.sentence, found, reader.kinds, *piece))
    offer_piece(s, place, found, *counting);
}

/// No row begins with a comma; most places of a line typed out are one.
bool begins_no_row(const Stretching& s, std::uint32_t place) {
  const WordsAt words = words_at(s.reader.sentence, place);
  return !words.empty() && words.first->kind == WordKind::mark && is_separator(words.first->mark) &&
         s.rows.list_begin != place;
}

void step_from(Stretching& s, std::uint32_t place) {
  if (begins_no_row(s, place)) return offer_passing(s, place);
  std::vector<Match> found;
  found.swap(s.found);
  found.clear();
  match_rows(s.reader.sentence, place, s.rows, found);
  for (const Match& match : found) offer_match(s, place, match);
  found.swap(s.found);
  offer_passing(s, place);
  offer_others(s, place);
}

/// Behind the loops that a list begins with and small words beside them, "back loops only | sc, inc, 6
/// times": they hold for all of it.
std::uint32_t behind_head_loops(const Sentence& sentence, std::uint32_t begin, std::uint32_t end) {
  bool loops = false;
  for (std::uint32_t at = begin; at < end;) {
    const WordsAt words = words_at(sentence, at);
    if (words.empty()) return loops ? at : begin;
    const words::ConceptClass sort = sort_of(sentence, *words.first);
    if (sort != words::ConceptClass::loops && !(loops && sort == words::ConceptClass::filler))
      return loops ? at : begin;
    loops = true;
    at = skip_blanks(sentence.text(), words.first->end);
  }
  return begin;
}

/// A list begins with the line, or behind a colon. "6 times: 2 sc, inc" has its list behind it.
void add_list(Stretching& s) {
  const std::uint32_t ahead = behind_repeat(s.reader.sentence, s.begin, s.end);
  const std::uint32_t stop = ahead != s.begin ? s.end : find_repeat(s.reader.sentence, s.begin, s.end);
  const std::string_view text = s.reader.sentence.text();
  std::uint32_t begin = behind_leading_repeat(s.reader.sentence, s.begin);
  for (std::uint32_t at = s.begin; at < stop; ++at)
    if (text[at] == ':') begin = skip_blanks(text, at + 1);
  if (s.extent == Extent::line) begin = behind_head_loops(s.reader.sentence, begin, stop);
  if (stop < s.end) begin = behind_beginning(s.reader.sentence, begin, stop);
  std::uint32_t end = trim_separators(text, begin, stop);
  const words::Span then = then_repeated(s.reader.sentence, s.begin, s.end);
  if (!then.empty()) begin = then.begin, end = then.end;
  if ((stop == s.end && ahead == s.begin && then.empty()) || end <= begin) return;
  const words::Concept around = words::find_concept(s.reader.sentence.vocabulary, "around");
  if (s.extent == Extent::line && stop < s.end && word_meaning(s.reader.sentence, stop, around) != nullptr) {
    const std::uint32_t first = behind_first_chains(s.reader.sentence, begin, end);
    s.plain_list = is_plain_list(s.reader.sentence, first, end);
    if (s.plain_list) begin = first;
  }
  auto& all = s.reader.sentence.brackets.all;
  s.rows.list = static_cast<std::int32_t>(all.size());
  s.rows.list_begin = begin;
  all.push_back({Passage::list, begin, begin, end, end});
}

std::vector<std::int32_t> ending_at(Stretching& s) {
  std::vector<std::int32_t> all;
  for (std::int32_t index = s.at(s.end); index != no_path;
       index = s.reader.paths[static_cast<std::size_t>(index)].next)
    all.push_back(index);
  return all;
}

} // namespace

std::int32_t last_pass(const WorkReader& reader, std::int32_t inner, std::int32_t bracket) {
  const Bracket& passage = reader.sentence.brackets.all[static_cast<std::size_t>(bracket)];
  std::uint32_t mark = passage.inner_begin;
  while (mark < passage.inner_end && reader.sentence.brackets.stars[mark] != StarRole::last) ++mark;
  if (mark == passage.inner_end) return no_path;
  while (inner != no_path && reader.paths[static_cast<std::size_t>(inner)].end > mark)
    inner = reader.paths[static_cast<std::size_t>(inner)].before;
  return inner;
}

std::vector<std::int32_t> read_stretch(WorkReader& reader, std::uint32_t begin, std::uint32_t end,
                                       Extent extent) {
  if (begin >= end) return {};
  Stretching s{reader, begin, end, extent, {end, no_bracket, 0}, {}, {}, false};
  s.best.assign(end - begin + 1, no_path);
  if (extent != Extent::list) add_list(s);
  Path start;
  start.begin = start.end = begin;
  offer(s, start);
  for (std::uint32_t place = begin; place < end; ++place)
    if (s.at(place) != no_path) step_from(s, place);
  return ending_at(s);
}

} // namespace whorl::pattern
