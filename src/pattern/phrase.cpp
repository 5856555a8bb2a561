#include "pattern/phrase.hpp"

#include "pattern/aside.hpp"

namespace whorl::pattern {

namespace {

using words::ConceptClass;
using words::Element;
using words::RowStep;
using words::Slot;
using words::Word;
using words::WordKind;

/// One walk down the tree of rows.
struct Walk {
  const Sentence& sentence;
  const Stretch& stretch;
  std::vector<Match>& out;
  Furthest* furthest;
  std::uint32_t begin;
};

bool is_stitch(ConceptClass sort) { return sort == ConceptClass::stitch; }

void keep_work(Slots& slots, words::Concept means) {
  if (slots.work == words::no_concept)
    slots.work = means;
  else if (slots.second == words::no_concept)
    slots.second = means;
}

bool take_number(Slots& slots, Slot slot, std::uint32_t number) {
  switch (slot) {
  case Slot::count:
    slots.count = number;
    return true;
  case Slot::many:
    slots.many = number;
    return true;
  case Slot::few:
    slots.many = number;
    return number >= 2 && number <= 5;
  case Slot::nth:
    slots.nth = number;
    return true;
  case Slot::leave:
    slots.leave = number;
    return true;
  case Slot::of:
    slots.of = number;
    return true;
  case Slot::again:
    return slots.count == number;
  default:
    return false;
  }
}

bool take_mark(const Walk& walk, Slot slot, const Word& word) {
  switch (slot) {
  case Slot::separator:
    return word.mark == ',' || word.mark == ';' || word.mark == '.' || word.mark == '-';
  case Slot::colon:
    return word.mark == ':';
  case Slot::hyphen:
    return word.mark == '-';
  case Slot::open:
    return word.mark == '(' || word.mark == '[';
  case Slot::close:
    return word.mark == ')' || word.mark == ']';
  case Slot::star:
    return walk.sentence.brackets.stars[word.begin] == StarRole::reference;
  default:
    return false;
  }
}

bool take_phrase(const Walk& walk, Slots& slots, const Element& element, const Word& word) {
  const ConceptClass sort = sort_of(walk.sentence, word);
  switch (element.slot) {
  case Slot::concept_named:
    if (word.means != element.means) return false;
    if (is_work(walk.sentence, word)) keep_work(slots, word.means);
    if (sort == ConceptClass::loops) slots.loops = word.means;
    return true;
  case Slot::concept_class:
    if (sort != element.sort) return false;
    if (is_work(walk.sentence, word)) keep_work(slots, word.means);
    if (sort == ConceptClass::loops) slots.loops = word.means;
    return true;
  case Slot::work:
    if (!is_work(walk.sentence, word)) return false;
    keep_work(slots, word.means);
    return true;
  case Slot::place:
    if (is_stitch(sort) && slots.place == words::no_concept) slots.place = word.means;
    return sort == ConceptClass::place || is_stitch(sort);
  default:
    return false;
  }
}

/// True if the word is a star that stands for "times", where that concept is wanted.
bool is_times_star(const Walk& walk, const Element& element, const Word& word) {
  return word.mark == '*' && element.slot == Slot::concept_named &&
         walk.sentence.brackets.stars[word.begin] == StarRole::times && element.means == walk.sentence.times;
}

/// True if an element of this slot may take a word of this kind at all; spares most of the work.
bool may_take(Slot slot, const Word& word) {
  switch (slot) {
  case Slot::concept_named:
    return word.kind == WordKind::phrase || word.mark == '*';
  case Slot::concept_class:
  case Slot::work:
  case Slot::place:
    return word.kind == WordKind::phrase;
  case Slot::count:
  case Slot::many:
  case Slot::few:
  case Slot::nth:
  case Slot::leave:
  case Slot::of:
  case Slot::again:
    return word.kind == WordKind::number;
  case Slot::group:
  case Slot::square:
  case Slot::stars:
  case Slot::passage:
  case Slot::list:
    return false;
  case Slot::name:
    return word.kind == WordKind::unknown;
  default:
    return word.kind == WordKind::mark;
  }
}

bool take_word(const Walk& walk, Slots& slots, const Element& element, const Word& word) {
  if (element.glued && !word.glued) return false;
  if (word.kind == WordKind::number) return take_number(slots, element.slot, word.number);
  if (word.kind == WordKind::phrase) return take_phrase(walk, slots, element, word);
  if (word.kind == WordKind::mark)
    return take_mark(walk, element.slot, word) || is_times_star(walk, element, word);
  return element.slot == Slot::name;
}

bool takes_passage(Slot slot, Passage kind) {
  switch (slot) {
  case Slot::group:
    return kind != Passage::open_star && kind != Passage::list;
  case Slot::square:
    return kind == Passage::square;
  case Slot::stars:
    return kind == Passage::stars;
  case Slot::passage:
    return kind == Passage::open_star;
  default:
    return false;
  }
}

void reach(Walk& walk, std::uint32_t step, std::uint32_t at, const Slots& slots, int cost);

void take_passage(Walk& walk, std::uint32_t step, const Element& element, std::int32_t index, Slots slots,
                  int cost) {
  const Bracket& bracket = walk.sentence.brackets.all[static_cast<std::size_t>(index)];
  if (bracket.end > walk.stretch.end || slots.bracket != no_bracket) return;
  if (!takes_passage(element.slot, bracket.kind) &&
      (element.slot != Slot::list || bracket.kind != Passage::list))
    return;
  slots.bracket = index;
  reach(walk, step, bracket.end, slots, cost);
}

/// ".; " is one separator.
std::uint32_t behind_marks(const Walk& walk, std::uint32_t at) {
  const std::string_view text = walk.sentence.text();
  std::uint32_t end = at;
  for (std::uint32_t next = skip_blanks(text, end);
       next < walk.stretch.end && std::string_view(",;.").find(text[next]) != std::string_view::npos;
       next = skip_blanks(text, end))
    end = next + 1;
  return end;
}

void try_step(Walk& walk, std::uint32_t step, std::uint32_t at, const Slots& slots, int cost) {
  const Element& element = walk.sentence.vocabulary.row_tree.steps[step].element;
  if (const std::int32_t index = walk.sentence.brackets.at[at]; index != no_bracket)
    take_passage(walk, step, element, index, slots, cost);
  if (element.slot == Slot::list && walk.stretch.list != no_bracket && at == walk.stretch.list_begin)
    take_passage(walk, step, element, walk.stretch.list, slots, cost);
  for (const Word& word : words_at(walk.sentence, at)) {
    if (word.end > walk.stretch.end || !may_take(element.slot, word)) continue;
    if (element.slot == Slot::concept_named && word.kind == WordKind::phrase && word.means != element.means)
      continue;
    Slots taken = slots;
    if (!take_word(walk, taken, element, word)) continue;
    const std::uint32_t end = element.slot == Slot::separator ? behind_marks(walk, word.end) : word.end;
    const bool space = element.slot == Slot::place && word.means == walk.sentence.space;
    const int own = element.slot == Slot::name ? 0 : word.cost; // that it is unknown is what is wanted
    reach(walk, step, end, taken, cost + own + (space ? 1 : 0));
  }
}

void remember(Walk& walk, std::uint32_t step, std::uint32_t at) {
  Furthest& furthest = *walk.furthest;
  if (step == 0 || at < furthest.at) return;
  if (at > furthest.at) furthest = {at, walk.begin, {}};
  furthest.steps.push_back(step);
}

void go_on(Walk& walk, std::uint32_t step, std::uint32_t at, const Slots& slots, int cost) {
  const auto& steps = walk.sentence.vocabulary.row_tree.steps;
  if (walk.furthest != nullptr) remember(walk, step, at);
  if (at >= walk.stretch.end) return;
  for (std::uint32_t child = steps[step].child; child != words::no_step; child = steps[child].sibling)
    try_step(walk, child, at, slots, cost);
}

/// Where the text goes on behind a filler word at `at`; `at` if none stands there.
std::uint32_t behind_filler(const Walk& walk, std::uint32_t at) {
  for (const Word& word : words_at(walk.sentence, at))
    if (sort_of(walk.sentence, word) == ConceptClass::filler && word.end < walk.stretch.end)
      return skip_blanks(walk.sentence.text(), word.end);
  return at;
}

/// "2 tog" stands at `at`.
bool says_together(const Walk& walk, std::uint32_t at) {
  const Word* number = at < walk.stretch.end ? number_at(walk.sentence, at) : nullptr;
  if (number == nullptr) return false;
  const words::Concept together = words::find_concept(walk.sentence.vocabulary, "together");
  return word_meaning(walk.sentence, skip_blanks(walk.sentence.text(), number->end), together) != nullptr;
}

/// Behind the full stop of an abbreviation ("Inc. in each sc."); `at` if none stands there.
std::uint32_t behind_abbreviation(const Walk& walk, std::uint32_t at) {
  const std::string_view text = walk.sentence.text();
  if (at == 0 || at + 1 >= walk.stretch.end || text[at] != '.' || text[at - 1] < 'a' || text[at - 1] > 'z')
    return at;
  const std::uint32_t next = skip_blanks(text, at + 1);
  const bool letter = next < walk.stretch.end && text[next] >= 'a' && text[next] <= 'z';
  const bool goes_on = next > at + 1 && (letter || says_together(walk, next));
  return goes_on ? next : at;
}

/// Stands behind a step: the rows that end here, then those that go on, a filler word passed over.
void reach(Walk& walk, std::uint32_t step, std::uint32_t at, const Slots& slots, int cost) {
  const words::RowTree& tree = walk.sentence.vocabulary.row_tree;
  for (std::uint32_t end = tree.steps[step].end; end != words::no_step; end = tree.ends[end].next)
    walk.out.push_back({tree.ends[end].row, walk.begin, at,
                        cost + walk.sentence.vocabulary.rows[tree.ends[end].row].cost, slots});
  if (tree.steps[step].child == words::no_step) return;
  if (const std::uint32_t gloss = behind_gloss(walk.sentence, at); gloss != at)
    go_on(walk, step, skip_blanks(walk.sentence.text(), gloss), slots, cost);
  std::uint32_t next = skip_blanks(walk.sentence.text(), behind_sizes(walk.sentence, at));
  for (int fillers = 0; fillers < 3; ++fillers) {
    go_on(walk, step, next, slots, cost);
    if (const std::uint32_t after = behind_abbreviation(walk, next); after != next)
      go_on(walk, step, after, slots, cost + 1);
    const std::uint32_t behind = behind_filler(walk, next);
    if (behind == next) break;
    next = behind;
  }
}

} // namespace

void match_rows(const Sentence& sentence, std::uint32_t at, const Stretch& stretch, std::vector<Match>& out,
                Furthest* furthest) {
  Walk walk{sentence, stretch, out, furthest, at};
  go_on(walk, 0, at, {}, 0);
}

} // namespace whorl::pattern
