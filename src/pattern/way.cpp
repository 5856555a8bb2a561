#include "pattern/way.hpp"

#include "pattern/chain_begun.hpp"
#include "pattern/chain_habit.hpp"
#include "pattern/chat.hpp"
#include "pattern/costs.hpp"
#include "pattern/counted_round.hpp"
#include "pattern/edging.hpp"
#include "pattern/header.hpp"
#include "pattern/limits.hpp"
#include "pattern/number_round.hpp"
#include "pattern/one_line.hpp"
#include "pattern/opening.hpp"
#include "pattern/sizes.hpp"
#include "pattern/stated.hpp"
#include "pattern/text_words.hpp"
#include "pattern/yarn_order.hpp"
#include "words/ascii.hpp"
#include "words/lattice.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::is_digit;
constexpr std::uint32_t longest_tail = 40; ///< bytes of what may be said behind rounds that are named
constexpr std::uint32_t least_chain = 4;   ///< that talk around it cannot mean otherwise

bool is_blank(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }

bool has_work(const Reading& reading, Act act) {
  return std::any_of(reading.nodes.begin(), reading.nodes.end(),
                     [act](const Node& node) { return node.kind == NodeKind::work && node.work.act == act; });
}

bool is_chain(const Reader& reader, const Node& node) {
  return node.kind == NodeKind::work && node.work.act == Act::stitch &&
         node.work.kind < reader.kinds.size() && reader.kinds[node.work.kind].name == "ch";
}

/// How many chains a reading makes before it works into one, and which of them that is; all that it makes
/// where it works into none.
struct ChainsMade {
  std::uint32_t made = 0;
  std::uint16_t into = 0;
};
ChainsMade chains_made(const Reader& reader, const Reading& reading) {
  std::vector<const Node*> nodes; // as they stand in the text
  for (const Node& node : reading.nodes) nodes.push_back(&node);
  std::stable_sort(nodes.begin(), nodes.end(),
                   [](const Node* a, const Node* b) { return a->span.begin < b->span.begin; });
  ChainsMade chains;
  for (const Node* node : nodes) {
    if (node->kind == NodeKind::work && node->work.where == Where::chain) {
      chains.into = node->work.nth;
      return chains;
    }
    if (is_chain(reader, *node)) chains.made += node->work.times;
  }
  return chains;
}

/// Whether a reading makes a chain before it works into one: "sc in 2nd ch from hook, ch 1, turn" does not,
/// nor 鎖の2目めから, which is no chain of one, nor "ch 1, 4 sc, 3 sc in last ch", whose chain only turns.
bool chains_first(const Reader& reader, const Reading& reading) {
  const ChainsMade chains = chains_made(reader, reading);
  return chains.made > 0 && chains.made >= (chains.into != 0 ? chains.into : least_chain);
}

/// Whether a reading itself makes the ring or chain that it is worked into, or opens the loops.
bool brings_start(const Reader& reader, const Reading& reading) {
  return reading.effect.starts && (has_work(reading, Act::ring) || has_work(reading, Act::free_loops) ||
                                   has_work(reading, Act::skipped) || chains_first(reader, reading));
}

/// … where a line above is read with it, whatever the likeliest reading takes its chain for.
bool begins_with(const Reader& reader, const Reading& reading) {
  return brings_start(reader, reading) || (reading.effect.starts && chains_made(reader, reading).made > 0);
}

/// "2 sc in each free front loop": which round left them free is said elsewhere, if at all.
bool opens_unnamed_loops(const Reading& reading) {
  const auto names = [](const Node& node) {
    return node.kind == NodeKind::work && node.work.act == Act::free_loops && node.round != 0;
  };
  return has_work(reading, Act::free_loops) && !has_work(reading, Act::ring) &&
         std::none_of(reading.nodes.begin(), reading.nodes.end(), names);
}

/// "2 dc in ring": which ring is said elsewhere, if at all.
bool only_names_ring(const Reading& reading) {
  const auto& nodes = reading.nodes;
  const auto made = [&nodes](const Node& node) {
    return node.kind == NodeKind::work && node.work.act == Act::ring &&
           std::none_of(nodes.begin(), nodes.end(), [&node](const Node& other) {
             return other.work.where == Where::ring && other.span == node.span;
           });
  };
  return has_work(reading, Act::ring) && std::none_of(nodes.begin(), nodes.end(), made);
}

/// Whether what stands in a span joins its chain into a ring.
bool closes_ring(const Reading& reading, Span span) {
  return std::any_of(reading.nodes.begin(), reading.nodes.end(), [span](const Node& node) {
    return node.kind == NodeKind::work && node.work.act == Act::join && node.span.begin >= span.begin &&
           node.span.end <= span.end;
  });
}

} // namespace

Span trimmed(const Source& source, Span span) {
  const std::string_view text = source.at(span);
  const std::string_view inner = trim(text);
  const auto begin = span.begin + static_cast<std::uint32_t>(inner.data() - text.data());
  return {begin, begin + static_cast<std::uint32_t>(inner.size())};
}

bool is_clean(const Way& way) {
  return !way.readings.empty() && way.readings.front().passed_over.empty() &&
         way.readings.front().cost <= cost::clean;
}

bool does_work(const Way& way) {
  if (way.readings.empty()) return false;
  const Effect& effect = way.readings.front().effect;
  return effect.uses + effect.makes + effect.pass_uses + effect.pass_makes > 0 || effect.starts;
}

namespace {

/// Whether the words of a line may mean something of which `is_it` is true.
template <typename Test> bool any_concept(const Reader& reader, Span span, Test is_it) {
  const auto lattice = words::lattice(words::fold(reader.source.at(span), span.begin), reader.vocabulary);
  return std::any_of(lattice.words.begin(), lattice.words.end(), [&](const words::Word& word) {
    return word.kind == words::WordKind::phrase && word.means < reader.vocabulary.concepts.size() &&
           is_it(word.means, reader.vocabulary.concepts[word.means].sort);
  });
}

} // namespace

bool names_stitches(const Reader& reader, Span span) {
  const words::Concept increase = words::find_concept(reader.vocabulary, "increase");
  return any_concept(reader, span, [increase](words::Concept means, words::ConceptClass sort) {
    return sort == words::ConceptClass::stitch || sort == words::ConceptClass::decrease || means == increase;
  });
}

bool names_concept(const Reader& reader, Span span, const char* name) {
  const words::Concept wanted = words::find_concept(reader.vocabulary, name);
  return any_concept(reader, span,
                     [wanted](words::Concept means, words::ConceptClass) { return means == wanted; });
}

bool names_ring(const Reader& reader, Span span) {
  return any_concept(reader, span, [](words::Concept, words::ConceptClass sort) {
    return sort == words::ConceptClass::start;
  });
}

bool places_something(const Reader& reader, Span span) {
  const auto placings = read_placings(reader.source.at(span), span, reader.vocabulary);
  return std::any_of(placings.begin(), placings.end(), [](const Placing& p) { return p.what != What::note; });
}

bool names_a_thing(const Reader& reader, Span span) {
  const auto placings = read_placings(reader.source.at(span), span, reader.vocabulary);
  return std::all_of(placings.begin(), placings.end(), [](const Placing& p) {
    return p.what == What::eye || p.what == What::bead || p.what == What::marker;
  });
}

/// The count that stands before the work is what each reading states that states none itself.
void state_count_before(const Reader& reader, Way& way) {
  const Span span = way.label.count;
  const std::string_view typed = reader.source.at(span);
  const bool bracketed = typed.front() == '(' || typed.front() == '[';
  // A count is only looked for behind work.
  const std::string before = bracketed ? "sc " : "sc (";
  const std::string text = before + std::string(typed) + (bracketed ? "" : ")");
  const auto begin = static_cast<std::uint32_t>(span.begin - before.size());
  const StatedCount count = find_stated(look_up(text, begin, reader.vocabulary), reader.kinds);
  if (count.stated.empty()) return;
  if (!way.stated) way.stated = count.stated.front().count;
  for (Reading& reading : way.readings)
    if (reading.stated.empty()) reading.stated = count.stated;
}

Way way_of(const Reader& reader, const Label& label, std::uint32_t end) {
  Way way;
  way.label = label;
  way.work = {std::min(label.work, end), end};
  read_way(reader, way, Effort::cheapest);
  return way;
}

namespace {

/// "as Rnd 6, but without increases": the words behind the rounds that are named say how it is worked.
bool says_even(const Reader& reader, const Reference& reference) {
  if (reference.tail.empty() || reference.tail.length() > longest_tail) return false;
  return names_concept(reader, reference.tail, "even");
}

/// "as Rnd 3, but increasing in every 4th st", "the same, only with 3 between, so (3 sc, inc) x 6": where the
/// work begins that is told behind the rounds that are named; no number if none is.
std::optional<std::uint32_t> work_behind(const Reader& reader, const Reference& reference) {
  if (reference.tail.empty()) return std::nullopt;
  const words::Folded folded = words::fold(reader.source.at(reference.tail), reference.tail.begin);
  std::size_t at = end_of_text_word(reader.vocabulary, folded.text, 0, TextWord::but);
  if (at == 0) return std::nullopt;
  at = std::min(folded.text.find_first_not_of(" ,", at), folded.text.size());
  return folded.from[at];
}

/// Reads a way that names rounds, but tells its own work behind them.
bool read_behind_reference(const Reader& reader, Way& way, Effort effort) {
  const auto begin = work_behind(reader, *way.reference);
  if (!begin) return false;
  Way behind = way;
  behind.work = {*begin, way.work.end};
  behind.reference.reset();
  read_way(reader, behind, effort);
  if (behind.reference || !is_clean(behind) || !does_work(behind)) return false;
  constexpr std::uint32_t least = 3; // "but 2 dc in the last st" is no whole round
  const Effect& effect = behind.readings.front().effect;
  if (effect.pass_uses == 0 && effect.uses < least && !effect.starts) return false;
  const std::uint32_t from = way.work.begin;
  way = std::move(behind);
  way.work.begin = from;
  return true;
}

/// Adds the readings of work that brackets behind its count explain: "12 sc (inc in each st)".
void add_explained(const Reader& reader, Way& way, std::string_view text, Span span, Effort effort) {
  const auto work = work_explained(reader, way, text);
  if (!work) return;
  Stuck stuck;
  std::vector<Reading> told = read_work(*work, {0, 0}, reader.vocabulary, reader.kinds, effort, stuck);
  if (told.empty() || !told.front().passed_over.empty() || told.front().stated.empty()) return;
  point_at(told, span);
  for (Reading& reading : told) ++reading.cost;
  const bool none = way.readings.empty() || !way.readings.front().passed_over.empty();
  way.readings.insert(none ? way.readings.begin() : way.readings.end(), told.begin(), told.end());
}

/// Takes a round that nothing is told of but its count for plain, where it reads no other way.
void go_on_plainly(const Reader& reader, Way& way, std::string_view text, Span span, Effort effort) {
  if (!way.readings.empty() && way.readings.front().passed_over.empty()) return;
  const auto work = work_plainly(reader, way, text);
  if (!work) return;
  Stuck stuck;
  std::vector<Reading> plain =
      read_work(*work, {0, 0}, *words::find_vocabulary("en-US"), reader.kinds, effort, stuck);
  if (plain.empty()) return;
  plain.resize(1);
  point_at(plain, span);
  take_stitch_before(plain);
  way.readings = std::move(plain);
}

} // namespace

namespace {

/// "Join in a front loop of Rnd 9, working upside down": what grows from free loops leads to no other side of
/// a chain; how the piece is held is told.
void hold_upside_down(std::vector<Reading>& readings) {
  const auto does = [](const Node& node, Act act) {
    return node.kind == NodeKind::work && node.work.act == act;
  };
  for (Reading& reading : readings) {
    const auto opens = [&does](const Node& node) { return does(node, Act::free_loops); };
    if (std::none_of(reading.nodes.begin(), reading.nodes.end(), opens)) continue;
    for (Node& node : reading.nodes)
      if (does(node, Act::other_side)) node.kind = NodeKind::sequence, node.work = {};
  }
}

} // namespace

void read_way(const Reader& reader, Way& way, Effort effort) {
  if (way.label.behind_rows) effort = Effort::all;
  way.reference = way.above.empty()
                      ? read_reference(reader.source.at(way.work), way.work.begin, reader.vocabulary)
                      : std::nullopt;
  if (way.reference && says_even(reader, *way.reference)) {
    way.readings = read_work(reader.source.at({way.reference->tail.begin, way.work.end}),
                             {way.reference->tail.begin, way.work.end}, reader.vocabulary, reader.kinds,
                             effort, way.stuck);
    way.effort = effort;
    way.stated = count_at_end(reader.source.at(way.work));
    way.reference.reset();
    return;
  }
  if (way.reference && read_behind_reference(reader, way, effort)) return;
  if (way.reference) {
    way.readings.clear();
    way.effort = Effort::all;
    way.stated = count_at_end(reader.source.at(way.work));
    return;
  }
  const Span span{way.above.empty() ? way.work.begin : way.above.begin, way.work.end};
  const std::string_view typed = reader.source.at(span);
  way.stuck = {};
  auto work = work_by_count(reader, way, typed);
  if (!work) work = work_at_both_ends(reader, way, typed);
  if (!work) work = work_evenly(reader, way, typed);
  if (work) {
    way.readings =
        read_work(*work, {0, 0}, *words::find_vocabulary("en-US"), reader.kinds, effort, way.stuck);
    point_at(way.readings, span);
    way.effort = effort;
    way.stated = way.readings.empty() || way.readings.front().stated.empty()
                     ? std::nullopt
                     : std::optional(way.readings.front().stated.front().count);
    return;
  }
  if (constexpr std::uint32_t added = 3; span.begin >= added && is_number_alone(reader, way, typed)) {
    way.readings = read_work("sc " + without_unit(reader, typed), {span.begin - added, span.end},
                             reader.vocabulary, reader.kinds, effort, way.stuck);
    take_stitch_before(way.readings);
    way.effort = effort;
    way.stated = count_at_end(typed);
    return;
  }
  const bool as_typed =
      way.above.empty() && !way.label.loops_aside && typed.find_first_of("\r\n") == std::string_view::npos;
  std::string text = as_typed ? std::string(typed) : text_to_read(reader, way);
  put_yarns_behind(text, reader.vocabulary);
  blank_sizes(text);
  const std::vector<Span> told = habits_told_in(reader, span);
  for (const Span habit : told) std::fill_n(text.begin() + (habit.begin - span.begin), habit.length(), ' ');
  way.readings = read_work(text, span, reader.vocabulary, reader.kinds, effort, way.stuck);
  way.effort = effort;
  way.stated = count_at_end(reader.source.at(way.work));
  add_explained(reader, way, text, span, effort);
  read_without_chat(reader, way, effort);
  for (const Span habit : told) keep_note(reader, habit, way.readings);
  go_on_plainly(reader, way, text, span, effort);
  spread_evenly(reader, way.readings, span, effort);
  if (!way.above.empty() || way.label.from == 1) begin_in_chain(way.readings, reader.kinds);
  if (!way.label.count.empty()) state_count_before(reader, way);
  if (way.label.behind_rows) prefer_edges(way.readings);
  hold_upside_down(way.readings);
}

namespace {

bool only_starts(const Reader& reader, const Reading& reading) {
  const auto starts = [&](const Node& node) {
    if (node.work.to_end) return false; // nothing is there to go round
    if (node.kind == NodeKind::repeat) return true;
    return node.kind != NodeKind::work || node.work.act == Act::ring || node.work.act == Act::join ||
           is_chain(reader, node);
  };
  const bool long_chain = std::any_of(reading.nodes.begin(), reading.nodes.end(), [&](const Node& node) {
    return is_chain(reader, node) && node.work.times >= least_chain;
  });
  const int most = long_chain ? cost::talk_about_start : cost::clean_start;
  return reading.passed_over.empty() && reading.stated.empty() && reading.cost <= most &&
         std::all_of(reading.nodes.begin(), reading.nodes.end(), starts);
}

bool closes_ring(const Reading& reading) {
  return std::any_of(reading.nodes.begin(), reading.nodes.end(), [](const Node& node) {
    return node.kind == NodeKind::work && (node.work.act == Act::join || node.work.act == Act::ring);
  });
}

} // namespace

bool only_starts(const Reader& reader, Span line) {
  Way way = way_of(reader, no_label(line), line.end);
  if (way.readings.empty()) return false;
  if (only_starts(reader, way.readings.front())) return true;
  const auto& nodes = way.readings.front().nodes;
  const auto first =
      std::find_if(nodes.begin(), nodes.end(), [](const Node& node) { return node.kind == NodeKind::work; });
  if (first == nodes.end() || !is_chain(reader, *first)) return false;
  read_way(reader, way, Effort::all); // "ch 24 slst to make a ring": the join may be dearer
  return std::any_of(way.readings.begin(), way.readings.end(), [&](const Reading& reading) {
    return only_starts(reader, reading) && closes_ring(reading);
  });
}

bool names_free_loops(const Reader& reader, Span line) {
  const words::Concept round = words::find_concept(reader.vocabulary, "round");
  const words::Concept row = words::find_concept(reader.vocabulary, "row");
  const words::Concept unused = words::find_concept(reader.vocabulary, "unused");
  const words::Concept skipped = words::find_concept(reader.vocabulary, "skipped");
  const words::Concept leave = words::find_concept(reader.vocabulary, "leave off");
  const words::Concept front_post = words::find_concept(reader.vocabulary, "front post");
  const words::Concept back_post = words::find_concept(reader.vocabulary, "back post");
  bool loops = false, named = false, missed = false, place = false, left = false, numbered = false,
       free = false;
  any_concept(reader, line, [&](words::Concept means, words::ConceptClass sort) {
    const bool post = means == front_post || means == back_post; // the German "um" is "around" too
    loops = loops || (sort == words::ConceptClass::loops && !post);
    named = named || means == round || means == row || means == unused;
    numbered = numbered || means == round || means == row;
    free = free || means == unused;
    missed = missed || means == skipped;
    place = place || sort == words::ConceptClass::place;
    left = left || means == leave;
    return false;
  });
  return (loops && named) || (free && numbered && place) || (missed && place && !left);
}

bool work_into(const Reader& reader, Way& way, Span above) {
  if (way.readings.empty()) return false;
  const Reading& reading = way.readings.front();
  const bool ring = only_names_ring(reading);
  if (brings_start(reader, reading) && !ring && !opens_unnamed_loops(reading)) return false;
  Way below = way;
  below.above = above;
  const auto begins = [&] {
    read_way(reader, below, way.effort);
    return !below.readings.empty() && begins_with(reader, below.readings.front());
  };
  if (!begins()) {
    below.opened = words_that_open_loops(reader.source.at(above), above.begin, reader.vocabulary);
    if (below.opened.empty() || !begins()) return false;
  }
  if (ring && !closes_ring(below.readings.front(), above)) return false;
  way = std::move(below);
  return true;
}

namespace {

/// The number that a text begins with, of at most seven digits; `digits`: how many it has.
std::uint32_t leading_number(std::string_view text, std::size_t& digits) {
  constexpr std::size_t most = 7;
  std::uint32_t value = 0;
  for (digits = 0; digits < text.size() && is_digit(text[digits]) && digits < most; ++digits)
    value = value * 10 + static_cast<std::uint32_t>(text[digits] - '0');
  return value;
}

/// "… to first dc. 28 dc": a sentence of a number and one word.
std::optional<std::uint32_t> count_with_unit(std::string_view text) {
  const std::size_t mark = text.find_last_of(".;:");
  if (mark == std::string_view::npos) return std::nullopt;
  const std::string_view count = trim(text.substr(mark + 1));
  std::size_t digits = 0;
  const std::uint32_t value = leading_number(count, digits);
  const std::string_view unit = count.substr(digits);
  const bool word = unit.size() > 2 && unit[0] == ' ' && trim(unit).find(' ') == std::string_view::npos;
  return digits == 0 || !word ? std::nullopt : std::optional(value);
}

} // namespace

std::optional<std::uint32_t> count_at_end(std::string_view work) {
  std::string_view text = work;
  while (!text.empty() && (is_blank(text.back()) || text.back() == '.')) text.remove_suffix(1);
  if (const auto told = count_with_unit(text)) return told;
  const bool bracket = !text.empty() && (text.back() == ')' || text.back() == ']');
  const std::size_t mark = bracket ? text.find_last_of("([") : text.find_last_of('=');
  if (mark == std::string_view::npos) return std::nullopt;
  const std::string_view count = trim(text.substr(mark + 1));
  std::size_t digits = 0;
  const std::uint32_t value = leading_number(count, digits);
  return digits == 0 ? std::nullopt : std::optional(value);
}

} // namespace whorl::pattern
