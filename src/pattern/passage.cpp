#include "pattern/passage.hpp"

#include "pattern/aside.hpp"
#include "pattern/colour.hpp"
#include "pattern/costs.hpp"
#include "pattern/effect.hpp"
#include "pattern/opening.hpp"
#include "pattern/placing.hpp"
#include "pattern/repeat_words.hpp"
#include "pattern/starting_chain.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::ConceptClass;
using words::Word;
using words::WordKind;

/// A stretch being read: the best paths that end at each of its places.
struct Stretching {
  WorkReader& reader;
  std::uint32_t begin, end;
  Extent extent;
  Stretch rows;
  std::vector<std::int32_t> best; ///< per place: first path, cheapest first
  std::vector<Match> found;

  std::int32_t& at(std::uint32_t place) { return best[place - begin]; }
};

const Meaning& meaning_of_row(WorkReader& reader, std::uint16_t row) {
  if (!reader.meaning_known[row]) {
    reader.meanings[row] = meaning_of(reader.sentence.vocabulary.rows[row].meaning);
    reader.meaning_known[row] = 1;
  }
  return reader.meanings[row];
}

/// Habits come in contradicting pairs of neighbouring bits.
bool are_mixed(std::uint16_t habits) { return (habits & (habits >> 1) & 0x5555) != 0; }

/// Puts a path among those that end where it ends. Of two that do the same, the cheaper stays.
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

bool starts_passage(const Stretching& s, std::uint32_t at) {
  return at < s.end && s.reader.sentence.brackets.at[at] != no_bracket;
}

/// Loops at the head of a line hold to its end; before a piece or bracket for that; behind a piece for that.
bool loops_fit(const Stretching& s, const Path& before, Verb verb, std::uint32_t end) {
  const std::uint32_t next = skip_blanks(s.reader.sentence.text(), end);
  const bool piece_next = next < s.end && !is_separator(s.reader.sentence.text()[next]);
  switch (verb) {
  case Verb::loops_rest:
    return !before.loose && next < s.end;
  case Verb::loops_head:
    return s.extent == Extent::line && before.effect == Effect{} && !before.loose && piece_next &&
           !starts_passage(s, next);
  case Verb::loops_next:
    return piece_next;
  case Verb::loops_behind:
    return before.effect != Effect{} && (before.loose || !piece_next);
  default:
    return true;
  }
}

int habit_cost(const Path& before, std::uint16_t habit, int row_cost) {
  if (habit == 0) return 0;
  if ((before.habits & habit) != 0) return costs.habit_again - std::max(row_cost, costs.habit_again);
  const bool mixes = are_mixed(before.habits | habit) && !are_mixed(before.habits);
  return mixes ? costs.habits_mixed : 0;
}

/// The piece that stands last before the end of a path; nullptr if none does.
const Piece* piece_before(const WorkReader& reader, std::int32_t index) {
  while (index != no_path && reader.paths[static_cast<std::size_t>(index)].taken != Taken::row)
    index = reader.paths[static_cast<std::size_t>(index)].before;
  if (index == no_path) return nullptr;
  return &reader.pieces[static_cast<std::size_t>(reader.paths[static_cast<std::size_t>(index)].match)];
}

bool has_worked(const Path& path) {
  return path.effect.uses != 0 || path.effect.makes != 0 || path.effect.pass_uses != 0;
}

bool is_stitch_piece(const Piece* piece) {
  return piece != nullptr && piece->verb == Verb::stitch && piece->work.act == Act::stitch &&
         !piece->work.to_end;
}

/// Whether an item of a list ends at `end`.
bool ends_item(const Stretching& s, std::uint32_t end) {
  const std::uint32_t next = skip_blanks(s.reader.sentence.text(), end);
  return next >= s.end || is_separator(s.reader.sentence.text()[next]);
}

/// The path before the last piece of a path.
std::int32_t before_piece(const WorkReader& reader, std::int32_t index) {
  while (index != no_path && reader.paths[static_cast<std::size_t>(index)].taken != Taken::row)
    index = reader.paths[static_cast<std::size_t>(index)].before;
  return index == no_path ? no_path : reader.paths[static_cast<std::size_t>(index)].before;
}

/// "Ch 7, miss 1 ch": the work begins in a chain, no stitch is skipped.
bool skips_chain(const Stretching& s, std::int32_t index, const Path& before, std::uint32_t end) {
  const Piece* last = piece_before(s.reader, index);
  if (has_worked(before) || last == nullptr || s.reader.kinds.at(last->work.kind).takes != 0) return false;
  const std::string_view words = s.reader.sentence.text().substr(before.end, end - before.end);
  const std::size_t chain = words.find(" ch");
  return last->verb == Verb::stitch && chain != std::string_view::npos &&
         words.find("sp") == std::string_view::npos;
}

/// Whether a piece may stand behind what a path has read.
bool fits_behind(const Stretching& s, std::int32_t index, const Path& before, const Piece& piece,
                 std::uint32_t end) {
  const bool same =
      piece.work.where == Where::same && (piece.verb == Verb::stitch || piece.verb == Verb::group);
  if (same && !has_worked(before)) return false;
  switch (piece.verb) {
  case Verb::starting_chain:
  case Verb::travel:
    return s.extent == Extent::line && !has_worked(before);
  case Verb::under_chain: {
    const Piece* last = piece_before(s.reader, index);
    if (last != nullptr && last->verb == Verb::turn)
      last = piece_before(s.reader, before_piece(s.reader, index));
    return last != nullptr && last->verb == Verb::starting_chain;
  }
  case Verb::skip:
    return !skips_chain(s, index, before, end);
  case Verb::other_side:
    return before.effect.starts || s.reader.sentence.text().substr(before.end, 4) != "turn";
  case Verb::side_behind:
  case Verb::part_behind:
    return before.loose && is_stitch_piece(piece_before(s.reader, index));
  case Verb::from_chain: {
    const Piece* last = piece_before(s.reader, index);
    return last == nullptr || s.reader.kinds.at(last->work.kind).takes == 0;
  }
  default:
    break;
  }
  if (piece.alone) return s.extent != Extent::line && !before.loose && ends_item(s, end);
  if (!piece.here) return loops_fit(s, before, piece.verb, end);
  const Piece* last = piece_before(s.reader, index);
  return last == nullptr || last->verb != Verb::starting_chain;
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

void offer_row(Stretching& s, std::int32_t index, std::int32_t match, std::int32_t inner,
               const Effect& worked) {
  Effect effect = worked;
  if (s.reader.pieces[static_cast<std::size_t>(match)].verb == Verb::again) {
    match = worked_again(s.reader, index, match);
    if (match == no_path) return;
    effect = effect_of(s.reader.pieces[static_cast<std::size_t>(match)], {}, s.reader.kinds);
  }
  const Match& found = s.reader.matches[static_cast<std::size_t>(match)];
  const Piece& piece = s.reader.pieces[static_cast<std::size_t>(match)];
  const Path before = s.reader.paths[static_cast<std::size_t>(index)];
  if (!fits_behind(s, index, before, piece, found.end)) return;
  const auto& row = s.reader.sentence.vocabulary.rows[found.row];
  Path path = after(before, index, Taken::row, found.begin, skip_blanks(s.reader.sentence.text(), found.end));
  path.cost += found.cost + habit_cost(before, row.habit, row.cost);
  const bool behind =
      piece.verb == Verb::loops_behind || piece.verb == Verb::side_behind || piece.verb == Verb::part_behind;
  if (before.loose && !behind) path.cost += costs.no_separator;
  if (before.effect.pass_uses != 0 && effect.pass_uses != 0) path.cost += costs.second_to_end;
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

/// One row for all paths that end where it begins.
void offer_match(Stretching& s, std::uint32_t place, Match found) {
  WorkReader& reader = s.reader;
  const auto piece = settled_piece(reader, found);
  if (!piece || found.end > s.end) return;
  const auto match = static_cast<std::int32_t>(reader.matches.size());
  reader.matches.push_back(found);
  reader.pieces.push_back(*piece);
  std::vector<std::int32_t> inner{no_path};
  if (found.slots.bracket != no_bracket) {
    read_inside(reader, found.slots.bracket);
    inner = reader.inside[static_cast<std::size_t>(found.slots.bracket)];
  }
  for (const std::int32_t content : inner) {
    const Effect once =
        content == no_path ? Effect{} : reader.paths[static_cast<std::size_t>(content)].effect;
    Effect effect = effect_with_opening(*piece, once, reader.kinds);
    if (piece->part) effect = with_last_pass(reader, effect, content, found.slots.bracket);
    for (std::int32_t index = s.at(place); index != no_path;
         index = reader.paths[static_cast<std::size_t>(index)].next)
      offer_row(s, index, match, content, effect);
  }
}

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

/// A word passed over. Inside a passage that is repeated only fillers may be: an instruction is never lost
/// there.
void offer_passing(Stretching& s, std::uint32_t place) {
  for (const Word& word : words_at(s.reader.sentence, place)) {
    if (word.end > s.end) continue;
    if (is_link(s, word))
      offer_for_all(s, place, Taken::separator, word.end, 0, false);
    else if (may_pass(s) || sort_of(s.reader.sentence, word) == ConceptClass::filler || word.mark == '!')
      offer_for_all(s, place, Taken::passed, word.end, passing_cost(s, word), true, lost_by_passing(s, word));
  }
}

bool begins_clause(const Stretching& s, std::uint32_t place) {
  const std::string_view text = s.reader.sentence.text();
  std::uint32_t at = place;
  while (at > s.begin && text[at - 1] == ' ') --at;
  return at == s.begin || is_separator(text[at - 1]) || text[at - 1] == '!' || text[at - 1] == ')';
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
  offer_placing(s, place);
  offer_opening(s, place);
  offer_aside(s, place);
  offer_yarn(s, place);
  offer_definition(s, place);
}

/// A list begins with the line, or behind a colon.
void add_list(Stretching& s) {
  const std::uint32_t stop = find_repeat(s.reader.sentence, s.begin, s.end);
  const std::string_view text = s.reader.sentence.text();
  std::uint32_t begin = s.begin;
  for (std::uint32_t at = s.begin; at < stop; ++at)
    if (text[at] == ':') begin = skip_blanks(text, at + 1);
  const std::uint32_t end = trim_separators(text, begin, stop);
  if (stop == s.end || end <= begin) return;
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
  Stretching s{reader, begin, end, extent, {end, no_bracket, 0}, {}, {}};
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
