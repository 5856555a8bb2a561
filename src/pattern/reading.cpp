#include "pattern/reading.hpp"

#include "pattern/bare.hpp"
#include "pattern/bare_count.hpp"
#include "pattern/build.hpp"
#include "pattern/costs.hpp"
#include "pattern/first_stitch_told.hpp"
#include "pattern/other_readings.hpp"
#include "pattern/passage.hpp"
#include "pattern/placing.hpp"
#include "pattern/stated.hpp"
#include "pattern/stuck.hpp"
#include "pattern/times_ahead.hpp"
#include "words/ascii.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {

namespace {

using words::ConceptClass;
using words::Word;

/// The text of a line and how it divides: work, stated count, tail.
struct Parts {
  std::string_view text;
  std::uint32_t begin; ///< its first byte in the file
  StatedCount count;
};

bool works_something(const Reading& reading) {
  return std::any_of(reading.nodes.begin(), reading.nodes.end(), [](const Node& node) {
    return node.kind == NodeKind::work && (node.work.act == Act::stitch || node.work.act == Act::ring);
  });
}

NodeId* end_of_children(Reading& reading) {
  NodeId* link = &reading.nodes[reading.body].child;
  while (*link != no_node) link = &reading.nodes[*link].next;
  return link;
}

/// A magic ring whose stitches only the count names: "MR (6)".
void fill_ring(Reading& reading, const StatedCount& count, const Kinds& kinds) {
  const auto sc = kinds.find("sc");
  if (!reading.effect.starts || reading.effect.makes != 0 || count.stated.empty() || !sc) return;
  const bool only_ring = std::all_of(reading.nodes.begin(), reading.nodes.end(), [](const Node& node) {
    return node.kind == NodeKind::sequence || node.work.act == Act::ring;
  });
  if (!only_ring) return;
  const Work work{.where = Where::ring, .kind = *sc, .times = count.stated.front().count};
  const NodeId id = add_node(reading.nodes, make_node(NodeKind::work, work, count.stated.front().span));
  *end_of_children(reading) = id;
  reading.cost += costs.ring_alone;
}

/// "inc x 6 (12 hdc)": the count names the stitch.
void settle_by_count(WorkReader& reader, Reading& reading) {
  if (reading.bare.empty() || reading.stated.size() != 1 || reading.stated.front().unit != Unit::kind) return;
  const stitch::KindId kind = reading.stated.front().kind;
  if (kind >= reader.kinds.known.size() || reader.kinds.at(kind).takes != 1) return;
  Kinds kinds{reader.kinds.known, reading.new_kinds};
  take_stitch(reading.nodes, reading.bare, kind, kinds);
  reading.new_kinds = kinds.made;
  reading.bare.clear();
}

void set_text(Reading& reading, const Parts& parts) {
  for (Placing& placing : reading.placings)
    placing.text = std::string(parts.text.substr(placing.span.begin - parts.begin, placing.span.length()));
}

bool is_round_act(Verb verb) { return verb == Verb::join || verb == Verb::turn || verb == Verb::start_here; }

/// The longest row at `at` that does something to the round itself, or is work.
const Match* longest(const std::vector<Match>& found, const Sentence& sentence, Verb& verb) {
  const Match* best = nullptr;
  for (const Match& match : found) {
    const Verb its = meaning_of(sentence.vocabulary.rows[match.row].meaning).verb;
    if (best != nullptr && match.end <= best->end) continue;
    best = &match;
    verb = its;
  }
  return best;
}

/// A node of the round itself behind the stitches.
void add_act(WorkReader& reader, const Match& row, Reading& reading) {
  const Sentence& sentence = reader.sentence;
  const auto piece =
      piece_of(sentence, row, meaning_of(sentence.vocabulary.rows[row.row].meaning), reader.kinds);
  if (!piece) return;
  const NodeId id =
      add_node(reading.nodes, make_node(NodeKind::work, piece->work, sentence.span(row.begin, row.end)));
  *end_of_children(reading) = id;
}

/// The row at the head of a clause that joins, turns or moves the start; none if the clause says something
/// else.
std::optional<Match> round_act_at(const Sentence& sentence, std::uint32_t at) {
  std::vector<Match> found;
  match_rows(sentence, at, {sentence.size(), no_bracket, 0}, found);
  Verb verb = Verb::pass;
  const Match* row = longest(found, sentence, verb);
  if (row == nullptr || !is_round_act(verb)) return std::nullopt;
  return *row;
}

std::uint32_t behind_word(const Sentence& sentence, std::uint32_t at) {
  const WordsAt words = words_at(sentence, at);
  return skip_blanks(sentence.text(), words.empty() ? at + 1 : std::max(words.first->end, at + 1));
}

std::uint32_t behind_conjunction(const Sentence& sentence, std::uint32_t at) {
  const Word* link = word_meaning(sentence, at, sentence.conjunction);
  return link == nullptr ? at : skip_blanks(sentence.text(), link->end);
}

/// Behind the count stand joins and turns, things placed, notes.
void read_tail(WorkReader& reader, const Parts& parts, Reading& reading) {
  const Sentence& sentence = reader.sentence;
  const auto keep_note = [&](std::uint32_t begin, std::uint32_t end) {
    const auto placings = placings_in(sentence, begin, end);
    reading.placings.insert(reading.placings.end(), placings.begin(), placings.end());
  };
  std::uint32_t note = skip_blanks(sentence.text(), parts.count.end);
  bool clause = true;
  for (std::uint32_t at = note; at < sentence.size();) {
    const std::uint32_t head = clause ? behind_conjunction(sentence, at) : at; // "(6) and join"
    const auto act = clause ? round_act_at(sentence, head) : std::nullopt;
    clause = is_separator(sentence.text()[at]) || sentence.text()[at] == '!';
    if (!act) {
      at = behind_word(sentence, at);
      continue;
    }
    keep_note(note, at);
    add_act(reader, *act, reading);
    note = at = skip_blanks(sentence.text(), act->end);
  }
  keep_note(note, sentence.size());
}

Reading finish(WorkReader& reader, const Parts& parts, std::int32_t path) {
  Reading reading = build_reading(reader, path);
  reading.effect = effect_of(reader, reading);
  fill_ring(reading, parts.count, reader.kinds);
  if (!parts.count.stated.empty()) read_tail(reader, parts, reading);
  reading.stated = parts.count.stated;
  settle_by_count(reader, reading);
  reading.effect = effect_of(reader, reading);
  set_text(reading, parts);
  return reading;
}

/// Whether the work is one passage that says how often it is done: "*2 sc, inc; rep from * 3 times".
bool says_times(const Reading& reading) {
  NodeId id = reading.body;
  while (id != no_node && reading.nodes[id].kind == NodeKind::sequence && reading.nodes[id].next == no_node)
    id = reading.nodes[id].child;
  if (id == no_node || reading.nodes[id].next != no_node) return false;
  const Node& node = reading.nodes[id];
  return node.kind == NodeKind::repeat && !node.work.to_end && node.work.times > 1;
}

bool may_repeat(const Reading& reading) {
  return !says_times(reading) && reading.effect.pass_uses == 0 && !reading.effect.starts &&
         reading.effect.uses > 0;
}

/// Keeps the cheapest of those that do not do the same; where many differ in a small word, the cheapest that
/// goes round takes the last place, so that it is not lost.
void keep_best(std::vector<Reading>& readings, std::size_t most) {
  std::stable_sort(readings.begin(), readings.end(),
                   [](const Reading& a, const Reading& b) { return a.cost < b.cost; });
  const auto goes_round = [](const Reading& reading) { return reading.effect.pass_uses > 0; };
  std::vector<Reading> kept;
  for (Reading& reading : readings) {
    const bool known = std::any_of(kept.begin(), kept.end(), [&reading](const Reading& other) {
      return other.effect == reading.effect;
    });
    if (!known && kept.size() < most) {
      kept.push_back(std::move(reading));
    } else if (!known && most > 1 && goes_round(reading) &&
               std::none_of(kept.begin(), kept.end(), goes_round)) {
      kept.back() = std::move(reading);
      break;
    }
  }
  readings = std::move(kept);
}

std::size_t how_many(Effort effort, std::uint32_t size) {
  if (effort == Effort::cheapest) return 1;
  return static_cast<std::size_t>(size > reading_limits.long_line ? reading_limits.readings_of_long_lines
                                                                  : reading_limits.readings);
}

WorkReader make_reader(Sentence& sentence, const std::vector<stitch::StitchKind>& kinds, std::size_t most) {
  const std::size_t rows = sentence.vocabulary.rows.size();
  WorkReader reader{sentence, {kinds, {}}, false, most};
  reader.meanings.resize(rows);
  reader.meaning_known.resize(rows);
  return reader;
}

/// Where the work ends: at the stated count, or with the line.
std::uint32_t stop_of(const Sentence& sentence, const Parts& parts) {
  return parts.count.stated.empty() ? sentence.size() : parts.count.begin;
}

/// The other ways to take the words of the last reading, which only counts can call for.
void add_others(const WorkReader& reader, bool folded, std::vector<Reading>& readings) {
  const Reading last = readings.back();
  for (const auto way : {into_chains_too, through_two_pieces})
    if (auto other = way(reader, last)) readings.push_back(std::move(*other));
  if (!folded) return;
  if (auto other = through_fold(reader, last)) readings.push_back(std::move(*other));
}

/// Every reading of the work before the count.
std::vector<Reading> readings_of(WorkReader& reader, const Parts& parts, Effort effort) {
  const std::uint32_t begin = skip_blanks(reader.sentence.text(), 0);
  const bool folded = effort == Effort::all && lies_double(reader.sentence);
  std::vector<Reading> readings;
  for (const std::int32_t path : read_stretch(reader, begin, stop_of(reader.sentence, parts), Extent::line)) {
    if (reader.paths[static_cast<std::size_t>(path)].lost >= costs.not_read) continue;
    readings.push_back(finish(reader, parts, path));
    if (!works_something(readings.back())) {
      readings.pop_back();
      continue;
    }
    part_layers(reader, readings.back());
    if (auto joined = joined_at_end(reader, readings.back())) {
      const int cost = readings.back().cost;
      readings.back() = std::move(*joined);
      readings.back().cost = cost;
    }
    if (auto around = all_round(reader, readings.back())) {
      readings.back().cost += costs.repeated_to_end;
      readings.insert(readings.end() - 1, std::move(*around));
    }
    if (auto other = carrying(reader, readings.back())) readings.push_back(std::move(*other));
    if (effort != Effort::all) continue;
    const Reading typed = readings.back();
    add_others(reader, folded, readings);
    if (may_repeat(typed)) readings.push_back(repeated_to_end(reader, typed));
  }
  return readings;
}

/// "dc in each, slst 18": the slip stitch closes the round, the number behind it is the count.
bool behind_slip(const Sentence& sentence, std::uint32_t number) {
  const std::uint32_t end = trim_separators(sentence.text(), 0, number);
  const words::Concept slip = words::find_concept(sentence.vocabulary, "sl st");
  for (std::uint32_t at = end > 20 ? end - 20 : 0; at < end; ++at)
    if (const Word* word = word_meaning(sentence, at, slip); word != nullptr && word->end == end) return true;
  return false;
}

/// Whether a word that nobody knows stands outside the phrases that are known ("hook" in "from hook").
bool has_unknown(const Sentence& sentence) {
  std::uint32_t known = 0;
  for (std::uint32_t at = 0; at < sentence.size(); ++at)
    for (const Word& word : words_at(sentence, at)) {
      if (word.kind == words::WordKind::unknown && at >= known) return true;
      if (word.kind != words::WordKind::unknown) known = std::max(known, word.end);
    }
  return false;
}

/// The readings with a last sentence that is only figures as the count: "dc2tog twice. 4 dc." Where the work
/// before it runs all round, or begins and makes as many, it can be nothing else.
void read_last_sentence(Sentence& sentence, const std::vector<stitch::StitchKind>& kinds, Effort effort,
                        const Parts& whole, std::vector<Reading>& readings) {
  const Parts parts{whole.text, whole.begin, last_sentence_count(sentence, kinds)};
  if (parts.count.stated.empty()) return;
  WorkReader reader = make_reader(sentence, kinds, how_many(effort, sentence.size()));
  for (Reading& reading : readings_of(reader, parts, effort)) {
    const bool all = reading.effect.pass_uses > 0 && reading.effect.uses == 0 && reading.effect.makes == 0;
    const bool starts = reading.effect.starts && reading.effect.pass_uses == 0 &&
                        reading.effect.makes == parts.count.stated.front().count;
    const bool agrees = (all || starts) && !readings.empty();
    reading.cost = agrees ? std::min(reading.cost, readings.front().cost) : reading.cost + costs.bare_count;
    readings.insert(agrees ? readings.begin() : readings.end(), std::move(reading));
  }
}

/// Whether a count is so many passes of what the reading repeats, "2 sc, inc 24", or what it makes, "inc, sc,
/// inc 5".
bool is_sum(const Reading& reading, std::uint32_t count) {
  const Effect& effect = reading.effect;
  if (effect.pass_uses == 0 && effect.makes == count && effect.makes != effect.uses) return true;
  return effect.pass_uses > 0 && effect.pass_makes > 1 && effect.pass_uses != effect.pass_makes &&
         effect.uses == 0 && effect.makes == 0 && count > effect.pass_makes && count % effect.pass_makes == 0;
}

/// Whether a reading begins with as many as are counted where the likeliest works before it begins.
bool begins_better(const Reading& reading, std::uint32_t count, const std::vector<Reading>& readings) {
  const Effect& effect = reading.effect;
  return effect.starts && effect.uses == 0 && effect.pass_uses == 0 && effect.makes == count &&
         !readings.empty() && readings.front().effect.starts && readings.front().effect.uses > 0;
}

/// The readings with the last number as the count, where the line reads no other way or hides it.
void read_bare_count(Sentence& sentence, const std::vector<stitch::StitchKind>& kinds, Effort effort,
                     const Parts& whole, std::vector<Reading>& readings) {
  const Parts parts{whole.text, whole.begin, bare_count(sentence)};
  if (parts.count.stated.empty()) return;
  const bool whole_reads = std::any_of(readings.begin(), readings.end(),
                                       [](const Reading& reading) { return reading.passed_over.empty(); });
  const bool worded = parts.count.worded;
  if (whole_reads && !worded && !may_hide_count(sentence, parts.count.begin)) return;
  WorkReader reader = make_reader(sentence, kinds, how_many(effort, sentence.size()));
  std::vector<Reading> counted = readings_of(reader, parts, effort);
  const std::uint32_t count = parts.count.stated.front().count;
  const bool only_number = counts_unnumbered_list(sentence, parts.count.begin);
  const bool any_fits = std::any_of(counted.begin(), counted.end(),
                                    [count](const Reading& reading) { return is_sum(reading, count); });
  for (Reading& reading : counted) {
    if (!reading.passed_over.empty() || has_unknown(sentence)) continue;
    const bool fits = is_sum(reading, count);
    reading.bare_count = true;
    if (any_fits && !fits && reading.effect.pass_uses == 0 && reading.effect.makes != count) continue;
    const bool closes = behind_slip(sentence, parts.count.begin) &&
                        (reading.effect.pass_uses != 0 || reading.effect.makes == count);
    const bool alone = only_number && reading.effect.pass_uses == 0 && reading.effect.makes == count;
    const bool begins = begins_better(reading, count, readings); // "6 sc in MR | 6 sts"
    reading.cost += closes || worded || alone || begins ? 0 : fits ? costs.count_of_passes : costs.bare_count;
    const bool likelier = (closes || alone || begins) && !readings.empty();
    if (likelier) reading.cost = std::min(reading.cost, readings.front().cost);
    readings.insert(likelier ? readings.begin() : readings.end(), std::move(reading));
  }
}

/// Whether a count is glued to a stitch: "sc(4), inc(2)".
bool is_glued(const Sentence& sentence, const StatedCount& count) {
  if (count.stated.size() != 1 || count.stated.front().unit != Unit::any || count.begin == 0 ||
      sentence.text()[count.begin] != '(')
    return false;
  for (std::uint32_t at = count.begin > 20 ? count.begin - 20 : 0; at < count.begin; ++at)
    for (const words::Word& word : words_at(sentence, at))
      if (word.end == count.begin && is_work(sentence, word)) return true;
  return false;
}

/// The readings with such a number as how often the stitch is worked.
void read_glued_number(Sentence& sentence, const std::vector<stitch::StitchKind>& kinds, const Parts& whole,
                       std::vector<Reading>& readings) {
  if (!is_glued(sentence, whole.count)) return;
  WorkReader reader = make_reader(sentence, kinds, how_many(Effort::all, sentence.size()));
  for (Reading& reading : readings_of(reader, {whole.text, whole.begin, {}}, Effort::all)) {
    reading.cost += costs.bare_count;
    readings.push_back(std::move(reading));
  }
}

/// The readings of the same text retold, at a cost.
void read_retold(const Sentence& sentence, const std::vector<stitch::StitchKind>& kinds, const Parts& whole,
                 const std::optional<std::string>& retold, int cost, std::vector<Reading>& readings) {
  if (!retold) return;
  Sentence told = look_up(*retold, whole.begin, sentence.vocabulary);
  const Parts parts{*retold, whole.begin, find_stated(told, kinds)};
  WorkReader reader = make_reader(told, kinds, how_many(Effort::all, told.size()));
  for (Reading& reading : readings_of(reader, parts, Effort::all)) {
    reading.cost += cost;
    readings.push_back(std::move(reading));
  }
}

/// The readings with how often, which stands ahead, as how often the whole list behind it is worked; and
/// those without what is told of the chains at the head.
void read_retold(const Sentence& sentence, const std::vector<stitch::StitchKind>& kinds, const Parts& whole,
                 std::vector<Reading>& readings) {
  read_retold(sentence, kinds, whole, mark_times_ahead(sentence, whole.text), costs.times_ahead, readings);
  read_retold(sentence, kinds, whole, without_dash_before_times(sentence, whole.text), costs.dash_told,
              readings);
  read_retold(sentence, kinds, whole, without_first_stitch_told(sentence, whole.text), costs.chains_told,
              readings);
}

Stuck too_deep(const Sentence& sentence) {
  Stuck stuck;
  stuck.span = sentence.span(sentence.brackets.deep_at, sentence.brackets.deep_at + 1);
  stuck.too_deep = true;
  return stuck;
}

/// Whether the words before `end` name no stitch, number, ring or loops: "change to white".
bool works_nothing(const Sentence& sentence, std::uint32_t end) {
  for (std::uint32_t at = 0; at < end;) {
    const WordsAt words = words_at(sentence, at);
    if (words.empty()) {
      ++at;
      continue;
    }
    const words::Word& word = *words.first; // "cor" of "trocar de cor" is no chain
    const words::ConceptClass sort = sort_of(sentence, word);
    if (is_work(sentence, word) || word.kind == words::WordKind::number ||
        sort == words::ConceptClass::start || sort == words::ConceptClass::loops)
      return false;
    at = std::max(word.end, at + 1);
  }
  return true;
}

/// "Change colour, 10 sc: 10 sts": where nothing is worked before what looks like the count, the count stands
/// further behind, or there is none: "change colour. 10 sc".
void read_later_count(Sentence& sentence, const std::vector<stitch::StitchKind>& kinds, Effort effort,
                      const Parts& whole, std::vector<Reading>& readings) {
  if (!readings.empty() || whole.count.stated.empty() || !works_nothing(sentence, whole.count.begin)) return;
  const Parts parts{whole.text, whole.begin, find_stated(sentence, kinds, whole.count.begin + 1)};
  WorkReader reader = make_reader(sentence, kinds, how_many(effort, sentence.size()));
  readings = readings_of(reader, parts, effort);
}

} // namespace

std::vector<Reading> read_work(std::string_view text, Span span, const words::Vocabulary& vocabulary,
                               const std::vector<stitch::StitchKind>& kinds, Effort effort, Stuck& stuck) {
  Sentence sentence = look_up(text, span.begin, vocabulary);
  if (sentence.brackets.too_deep) return stuck = too_deep(sentence), std::vector<Reading>{};
  const Parts parts{text, span.begin, find_stated(sentence, kinds)};
  WorkReader reader = make_reader(sentence, kinds, how_many(effort, sentence.size()));
  std::vector<Reading> readings = readings_of(reader, parts, effort);
  read_later_count(sentence, kinds, effort, parts, readings);
  if (parts.count.stated.empty()) read_last_sentence(sentence, kinds, effort, parts, readings);
  if (parts.count.stated.empty()) read_bare_count(sentence, kinds, effort, parts, readings);
  if (effort == Effort::all) read_glued_number(sentence, kinds, parts, readings);
  if (effort == Effort::all) read_retold(sentence, kinds, parts, readings);
  keep_best(readings, reader.most);
  if (readings.empty()) {
    WorkReader again = make_reader(sentence, kinds, 1);
    again.lenient = true;
    stuck = stuck_at(again, skip_blanks(sentence.text(), 0), stop_of(sentence, parts), text, span.begin);
  }
  return readings;
}

} // namespace whorl::pattern
