#include "pattern/build.hpp"

#include "pattern/bare.hpp"
#include "pattern/building.hpp"
#include "pattern/effect.hpp"
#include "pattern/reference.hpp"
#include "pattern/spur.hpp"

#include <algorithm>
#include <utility>

namespace whorl::pattern {

namespace {

using words::Word;

NodeId build_stretch(Building& b, std::int32_t path);

/// "Inc in every 3rd st": two plain, one increase, to the end.
NodeId every_node(Building& b, const Piece& piece, Span span) {
  Work one = piece.work;
  one.nth = 0;
  one.to_end = false;
  one.leave = 0;
  one.times = 1;
  Work plain = one;
  plain.in_one = 1;
  plain.kind = piece.plain;
  plain.times = piece.work.nth - static_cast<std::uint32_t>(b.reader.kinds.at(one.kind).takes);
  Chain chain;
  if (piece.skipping) plain.act = Act::skip;
  if (plain.times > 0) append(b.reading.nodes, chain, work_node(b, plain, span));
  if (piece.bare && plain.times > 0) b.bare.push_back(chain.last);
  append(b.reading.nodes, chain, work_node(b, one, span));
  if (piece.bare) b.bare.push_back(chain.last);
  Work repeat;
  repeat.to_end = piece.work.times == 1;
  repeat.times = piece.work.times;
  repeat.leave = piece.work.leave;
  return wrap(b, NodeKind::repeat, repeat, chain.first, span);
}

/// Another part is opened once, however often it is named.
void open_part(Building& b, Sequence& sequence, Span span, std::string_view name, bool behind) {
  const auto same = [&](std::string_view other) { // "the first leg" is "leg 1"
    const words::Vocabulary& vocabulary = b.reader.sentence.vocabulary;
    return names_part(name, other, vocabulary) == names_part(other, other, vocabulary);
  };
  if (std::any_of(b.parts.begin(), b.parts.end(), same)) return;
  b.parts.push_back(name);
  const NodeId edge = work_node(b, {.act = Act::part_edge}, span);
  if (behind) return put_before(b, sequence, edge);
  put(b, sequence, edge);
}

void put_ring(Building& b, Sequence& sequence, Span span) {
  if (!b.started) put(b, sequence, work_node(b, {.act = Act::ring}, span));
  b.started = true;
}

/// A piece that runs to the end stops before what the line goes on with.
Work with_leave(Work work, const Sequence& sequence, const Path& path, Act opened) {
  if (goes_between(work.where)) return work;     // what follows goes into stitches
  const bool one_side = opened == Act::row_ends; // what follows is worked along another
  if (work.to_end && work.leave == 0 && !one_side) work.leave = sequence.uses_in_all - path.effect.uses;
  return work;
}

/// A flat piece has two sides, which are opened one after the other.
bool may_open_again(Act act) { return act == Act::row_ends || act == Act::all_edges; }

/// The node that opens places, unless the one before it opened the same.
void put_opening(Building& b, Sequence& sequence, const Piece& piece, Act act, std::uint8_t loops,
                 Span span) {
  Work work;
  work.act = act;
  work.loops = loops;
  work.times = piece.evenly ? 0 : 1;
  const NodeId last = sequence.loops == no_node ? sequence.chain.last : sequence.in_loops.last;
  for (const Node& node : b.reading.nodes)
    if (node.kind == NodeKind::work && node.work.act == act && !may_open_again(act) &&
        (act == Act::other_side ? last != no_node && &node == &b.reading.nodes[last]
                                : node.round == piece.round || piece.round == 0))
      return;
  Node node = make_node(NodeKind::work, work, span);
  node.round = piece.round;
  put(b, sequence, add_node(b.reading.nodes, node));
}

/// The first of the stitches goes into the chain that the words before named, the others into the next.
void put_from_chain(Building& b, Sequence& sequence, Work& work, Span span) {
  const bool next = work.where == Where::next || work.where == Where::last; // "in the remaining 6 ch"
  if (sequence.from_chain == 0 || !next || b.reader.kinds.at(work.kind).takes == 0) return;
  work.where = Where::next;
  Work first = work;
  first.where = Where::chain;
  first.nth = sequence.from_chain;
  first.counts = sequence.skipped_count;
  first.times = 1;
  first.to_end = false;
  sequence.from_chain = 0;
  put(b, sequence, work_node(b, first, span));
  if (!work.to_end) --work.times;
}

/// "In 2nd ch of a ch-2" makes the chain, where none was made before.
void put_chains(Building& b, Sequence& sequence, std::uint32_t chains, Span span) {
  const auto chain = b.reader.kinds.find("ch");
  if (chains == 0 || !chain || b.started) return;
  for (const Node& node : b.reading.nodes)
    if (node.kind == NodeKind::work && node.work.act == Act::stitch) return;
  put(b, sequence, work_node(b, {.kind = *chain, .times = chains}, span));
}

/// "Ch 4 (counts as dc and ch 1)": the chains beside those that stand for a stitch.
void put_chains_beside(Building& b, Sequence& sequence, const Path& path, const Piece& piece) {
  Work work = piece.work;
  work.times = piece.chains;
  work.counts = false;
  put(b, sequence, work_node(b, work, span_of(b, path)));
}

/// The name of the other part in the words of a row, as its word in the line.
const Word* part_named(const Building& b, const Path& path) {
  const Match& match = b.reader.matches[static_cast<std::size_t>(path.match)];
  for (std::uint32_t at = match.begin; at < match.end; ++at)
    if (const Word* word = word_meaning(b.reader.sentence, at, b.reader.sentence.leg)) return word;
  return nullptr;
}

Span name_span(const Building& b, const Path& path) {
  const Word* word = part_named(b, path);
  return word == nullptr ? span_of(b, path) : word->span;
}

std::string_view name_of_part(const Building& b, const Path& path) {
  const Word* word = part_named(b, path);
  return word == nullptr ? std::string_view{}
                         : b.reader.sentence.text().substr(word->begin, word->end - word->begin);
}

/// "Sc in each dc and in each ch-1 sp around, | 3 sc in each corner sp", "sc in each st around, | 3 sc in the
/// centre st of each corner": the number of each corner, where the stitch before goes into everything that is
/// open; false if it does not.
bool put_corners(Building& b, const Sequence& sequence, const Work& work) {
  const NodeId last = sequence.loops == no_node ? sequence.chain.last : sequence.in_loops.last;
  const bool centres = work.where == Where::centre;
  const bool corners = work.act == Act::stitch && (work.where == Where::space || centres) && work.to_end;
  if (!corners || last == no_node) return false;
  Node& before = b.reading.nodes[last];
  const bool all = before.kind == NodeKind::work && before.work.act == Act::stitch &&
                   before.work.where == (centres ? Where::next : Where::any) && before.work.to_end &&
                   before.work.kind == work.kind;
  if (all) before.work.in_corner = work.in_one;
  return all;
}

/// "In next 3 ch": the places are chains.
bool names_chain(const Building& b, const Path& path) {
  const Match& match = b.reader.matches[static_cast<std::size_t>(path.match)];
  for (std::uint32_t at = match.begin; at < match.end; ++at) {
    const Word* word = word_meaning(b.reader.sentence, at, b.reader.sentence.chain);
    if (word != nullptr && word->cost == 0) return true;
  }
  return false;
}

/// "Skip next st, dc in next st, | dc in skipped st": what is skipped stands before, with stitches behind it.
bool skips_before(const Building& b, const Sequence& sequence) {
  const auto& nodes = b.reading.nodes;
  const Chain& chain = sequence.loops == no_node ? sequence.chain : sequence.in_loops;
  bool skips = false, works = false;
  for (NodeId id = chain.first; id != no_node; id = nodes[id].next) {
    const bool skip = nodes[id].kind == NodeKind::work && nodes[id].work.act == Act::skip;
    works = !skip && (works || (skips && nodes[id].work.act == Act::stitch));
    skips = skips || skip;
  }
  return skips && works;
}

void put_stitch(Building& b, Sequence& sequence, const Path& path, const Piece& piece) {
  const bool starting = piece.verb == Verb::starting_chain;
  if (!starting) put_chains(b, sequence, piece.chains, span_of(b, path));
  if (piece.work.where == Where::ring) put_ring(b, sequence, span_of(b, path));
  if (piece.work.where == Where::chain) b.started = true;
  const bool crosses = piece.opened == Act::skipped && piece.round == 0 && skips_before(b, sequence);
  if (piece.opened == Act::part_edge)
    open_part(b, sequence, name_span(b, path), name_of_part(b, path), false);
  else if (piece.opened != Act::stitch && !crosses)
    put_opening(b, sequence, piece, piece.opened, piece.opened_loops, span_of(b, path));
  Work work = with_leave(piece.work, sequence, path, piece.opened);
  if (crosses) work.where = Where::skipped, work.to_end = false;
  if (piece.onward) {
    sequence.from_chain = work.nth;
    sequence.skipped_count = std::exchange(work.counts, false);
    work.where = Where::next;
    work.nth = 0;
  }
  if (put_corners(b, sequence, work)) return;
  put_from_chain(b, sequence, work, span_of(b, path));
  if (work.times == 0 && piece.work.times == 1 && !work.to_end) return;
  const NodeId id = work_node(b, work, span_of(b, path));
  if (piece.bare) b.bare.push_back(id);
  if (names_chain(b, path)) b.along_chain.push_back(id);
  put(b, sequence, id);
  if (starting && piece.chains > 0) put_chains_beside(b, sequence, path, piece);
}

/// "20 fsc": the chains, and a stitch into each of them.
void put_foundation(Building& b, Sequence& sequence, const Path& path, const Piece& piece) {
  const auto chain = b.reader.kinds.find("ch");
  if (!chain) return;
  const Span span = span_of(b, path);
  put(b, sequence, work_node(b, {.kind = *chain, .times = piece.work.times + piece.work.nth - 1U}, span));
  sequence.from_chain = piece.work.nth;
  b.started = true;
  Work work = piece.work;
  work.nth = 0;
  put_from_chain(b, sequence, work, span);
  if (work.times > 0) put(b, sequence, work_node(b, work, span));
}

/// A repeat whose last pass stops at the two stars: the repeat, then once more what stands before them.
void put_unfinished(Building& b, Sequence& sequence, const Path& path, const Piece& piece, NodeId child) {
  const std::int32_t bracket = b.reader.matches[static_cast<std::size_t>(path.match)].slots.bracket;
  const std::int32_t last = last_pass(b.reader, path.inner, bracket);
  Work work = with_leave(piece.work, sequence, path, piece.opened);
  if (last != no_path) work.leave += b.reader.paths[static_cast<std::size_t>(last)].effect.uses;
  put(b, sequence, wrap(b, NodeKind::repeat, work, child, span_of(b, path)));
  if (last == no_path) return;
  for (NodeId id = build_stretch(b, last); id != no_node;) {
    const NodeId next = b.reading.nodes[id].next;
    b.reading.nodes[id].next = no_node;
    put(b, sequence, id);
    id = next;
  }
}

void put_passage(Building& b, Sequence& sequence, const Path& path, const Piece& piece) {
  if (piece.work.where == Where::ring) put_ring(b, sequence, span_of(b, path));
  if (piece.work.where == Where::chain) b.started = true;
  const NodeId child = build_stretch(b, path.inner);
  const NodeKind kind = piece.verb == Verb::group ? NodeKind::group : NodeKind::repeat;
  if (piece.part) return put_unfinished(b, sequence, path, piece, child);
  put(b, sequence,
      wrap(b, kind, with_leave(piece.work, sequence, path, piece.opened), child, span_of(b, path)));
}

void into_next(Sequence& sequence, Into into, bool rest) {
  sequence.next_into = into;
  sequence.rest_into = rest;
}

bool is_chain(const Building& b, const Node& node) {
  return node.kind == NodeKind::work && node.work.act == Act::stitch &&
         b.reader.kinds.at(node.work.kind).takes == 0;
}

/// "Ch 3 (counts), turn" at the head of a row is worked on the turned edge.
void put_turn(Building& b, Sequence& sequence, const Path& path, const Piece& piece) {
  const NodeId first = sequence.chain.first, last = sequence.chain.last;
  const auto& nodes = b.reading.nodes;
  const bool alone =
      first != no_node && (first == last || (nodes[first].next == last && is_chain(b, nodes[last])));
  const bool behind_chain =
      alone && sequence.loops == no_node && nodes[first].kind == NodeKind::work && nodes[first].work.counts;
  if (!behind_chain) return put_stitch(b, sequence, path, piece);
  const NodeId turn = work_node(b, piece.work, span_of(b, path));
  b.reading.nodes[turn].next = first;
  sequence.chain.first = turn;
}

/// "Sc in next loop": stitches of the round before, if it is not of chains.
bool takes_loops_for_stitches(const Building& b, const Path& path, const Work& work) {
  if (work.where != Where::next || work.act != Act::stitch) return false;
  const Match& match = b.reader.matches[static_cast<std::size_t>(path.match)];
  if (match.slots.loops != words::no_concept) return false;
  for (std::uint32_t at = match.begin; at < match.end; ++at)
    if (word_meaning(b.reader.sentence, at, b.reader.sentence.chain_loop) != nullptr) return true;
  return false;
}

void put_row(Building& b, Sequence& sequence, const Path& path) {
  const Piece& piece = b.reader.pieces[static_cast<std::size_t>(path.match)];
  if (takes_loops_for_stitches(b, path, piece.work)) b.reading.loops_as_stitches = true;
  switch (piece.verb) {
  case Verb::pass:
    return pass_space(b, sequence, span_of(b, path));
  case Verb::others:
    return;
  case Verb::under_chain:
    if (piece.work.times > 0) put(b, sequence, work_node(b, piece.work, span_of(b, path)));
    return;
  case Verb::foundation:
    return put_foundation(b, sequence, path, piece);
  case Verb::travel:
    return put(b, sequence, work_node(b, piece.work, span_of(b, path)));
  case Verb::turn:
    return put_turn(b, sequence, path, piece);
  case Verb::ring:
    return put_ring(b, sequence, span_of(b, path));
  case Verb::every:
    return put(b, sequence, every_node(b, piece, span_of(b, path)));
  case Verb::repeat:
  case Verb::group:
    return put_passage(b, sequence, path, piece);
  case Verb::loops_rest:
  case Verb::loops_head:
    if (piece.work.into != Into::loops)
      return into_next(sequence, piece.work.into, piece.work.into != Into::two_parts);
    return open_loops(b, sequence, piece.work.loops, span_of(b, path));
  case Verb::loops_next:
    if (piece.work.into != Into::loops) return into_next(sequence, piece.work.into, false);
    sequence.next_loops = piece.work.loops;
    return;
  case Verb::loops_behind:
    return loops_behind(b, sequence, piece.work);
  case Verb::other_side:
  case Verb::opening:
    return put_opening(b, sequence, piece, piece.work.act, piece.work.loops, span_of(b, path));
  case Verb::side_behind:
    return put_before(b, sequence, work_node(b, {.act = Act::other_side}, span_of(b, path)));
  case Verb::part_here:
  case Verb::part_behind:
    return open_part(b, sequence, name_span(b, path), name_of_part(b, path), piece.verb == Verb::part_behind);
  case Verb::from_chain:
    sequence.from_chain = piece.work.nth;
    sequence.skipped_count = piece.work.counts;
    b.started = true;
    return;
  default:
    return put_stitch(b, sequence, path, piece);
  }
}

std::vector<std::int32_t> steps_of(const WorkReader& reader, std::int32_t path) {
  std::vector<std::int32_t> steps;
  for (; path != no_path; path = reader.paths[static_cast<std::size_t>(path)].before) steps.push_back(path);
  std::reverse(steps.begin(), steps.end());
  return steps;
}

NodeId build_stretch(Building& b, std::int32_t path) {
  Sequence sequence;
  sequence.uses_in_all = b.reader.paths[static_cast<std::size_t>(path)].effect.uses;
  Taken before = Taken::nothing;
  for (const std::int32_t index : steps_of(b.reader, path)) {
    const Path& step = b.reader.paths[static_cast<std::size_t>(index)];
    if (step.taken == Taken::row) put_row(b, sequence, step);
    if (step.taken == Taken::passed) put_passed(b, step, before == Taken::passed);
    if (step.taken == Taken::placing) put_placing(b, sequence, step);
    if (step.taken == Taken::yarn) sequence.yarn = number_of_yarn(b, step.begin, step.end);
    if (step.taken == Taken::yarn_behind) yarn_behind(b, sequence, step);
    if (step.taken == Taken::aside) put_aside(b, sequence, step);
    before = step.taken;
  }
  end_loops(b, sequence);
  end_passed_space(b, sequence);
  return sequence.chain.first;
}

/// The stitches that are named beside the increases and decreases that name none.
struct Named {
  bool any = false;
  std::optional<stitch::KindId> only; ///< none if there are several
};

Named named_stitches(const Building& b) {
  Named named;
  for (NodeId id = 0; id < b.reading.nodes.size(); ++id) {
    const Node& node = b.reading.nodes[id];
    const bool is_bare = std::binary_search(b.bare.begin(), b.bare.end(), id);
    if (node.kind != NodeKind::work || node.work.act != Act::stitch || is_bare) continue;
    const stitch::StitchKind& kind = b.reader.kinds.at(node.work.kind);
    if (!may_be_meant(kind)) continue;
    if (named.any && named.only != node.work.kind) return {true, std::nullopt};
    named = {true, node.work.kind};
  }
  return named;
}

/// In a round all of hdc a bare increase or decrease takes that stitch; where none is named, the count or
/// the rounds before tell.
void settle_bare(Building& b) {
  if (b.bare.empty()) return;
  const Named named = named_stitches(b);
  if (named.any && !named.only) {
    b.reading.mixed = b.reading.nodes[b.bare.front()].span;
    return;
  }
  if (!named.any) {
    b.reading.bare = b.bare;
    return;
  }
  Kinds kinds = b.reader.kinds;
  take_stitch(b.reading.nodes, b.bare, *named.only, kinds);
  b.reading.new_kinds = kinds.made;
}

} // namespace

Node make_node(NodeKind kind, const Work& work, Span span) {
  Node node;
  node.kind = kind;
  node.work = work;
  node.span = span;
  return node;
}

NodeId add_node(std::vector<Node>& nodes, const Node& node) {
  nodes.push_back(node);
  return static_cast<NodeId>(nodes.size() - 1);
}

Reading build_reading(const WorkReader& reader, std::int32_t path) {
  Reading reading;
  reading.new_kinds = reader.kinds.made;
  reading.first_new_kind = static_cast<stitch::KindId>(reader.kinds.known.size());
  Building b{reader, reading};
  const Path& last = reader.paths[static_cast<std::size_t>(path)];
  const NodeId first = build_stretch(b, path);
  reading.body = wrap(b, NodeKind::sequence, {}, first, reader.sentence.span(0, last.end));
  settle_bare(b);
  take_spurs(b);
  reading.cost = last.cost;
  reading.habits = last.habits;
  return reading;
}

} // namespace whorl::pattern
