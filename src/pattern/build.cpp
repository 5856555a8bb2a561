#include "pattern/build.hpp"

#include "pattern/bare.hpp"
#include "pattern/colour.hpp"
#include "pattern/placing.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using words::Word;
using words::WordKind;

/// A chain of nodes that grows at its end.
struct Chain {
  NodeId first = no_node;
  NodeId last = no_node;
};

void append(std::vector<Node>& nodes, Chain& chain, NodeId id) {
  if (chain.first == no_node)
    chain.first = id;
  else
    nodes[chain.last].next = id;
  chain.last = id;
}

/// A reading being built from paths.
struct Building {
  const WorkReader& reader;
  Reading& reading;
  bool started = false;                     ///< a ring or chain is there to work into
  std::vector<std::string_view> parts = {}; ///< other parts opened so far, as named
  std::vector<NodeId> bare = {};            ///< increases and decreases that name no stitch, in order
};

/// The pieces of one stretch, in order.
struct Sequence {
  Chain chain;
  NodeId loops = no_node; ///< the loops that hold from here on
  Chain in_loops;
  std::uint8_t next_loops = 0;  ///< loops for the next piece
  Into next_into = Into::loops; ///< the way in for the next piece
  bool rest_into = false;       ///< … and for all that follow
  std::uint8_t yarn = 0;        ///< number in Reading::yarns; 0: as before the line
  std::uint16_t from_chain = 0; ///< the next stitches begin in this chain from the hook
  std::uint32_t uses_in_all = 0;
};

NodeId build_stretch(Building& b, std::int32_t path);

Span span_of(const Building& b, const Path& path) {
  const Match& match = b.reader.matches[static_cast<std::size_t>(path.match)];
  return b.reader.sentence.span(match.begin, match.end);
}

NodeId work_node(Building& b, const Work& work, Span span) {
  return add_node(b.reading.nodes, make_node(NodeKind::work, work, span));
}

NodeId wrap(Building& b, NodeKind kind, const Work& work, NodeId child, Span span) {
  Node node = make_node(kind, work, span);
  node.child = child;
  return add_node(b.reading.nodes, node);
}

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

/// Loops for one node: its own if it is a piece of work, else around it.
NodeId in_loops(Building& b, NodeId id, std::uint8_t loops) {
  Node& node = b.reading.nodes[id];
  if (node.kind == NodeKind::work) {
    node.work.loops = loops;
    return id;
  }
  Work work;
  work.loops = loops;
  return wrap(b, NodeKind::loops, work, id, node.span);
}

/// The way to go in, for a piece of work and all that a passage works.
void put_into(Building& b, NodeId id, Into into) {
  Node& node = b.reading.nodes[id];
  if (node.kind == NodeKind::work && node.work.act == Act::stitch) node.work.into = into;
  for (NodeId child = node.child; child != no_node; child = b.reading.nodes[child].next)
    put_into(b, child, into);
}

/// Number of the yarn that is named in [begin, end) of the line; 0: none is.
std::uint8_t number_of_yarn(Building& b, std::uint32_t begin, std::uint32_t end) {
  const auto found = find_yarn_name(b.reader.sentence, begin, end, true);
  if (!found) return 0;
  const std::string name = written_name(b.reader.sentence, *found);
  auto& yarns = b.reading.yarns;
  const auto known = std::find(yarns.begin(), yarns.end(), name);
  const auto index = known - yarns.begin();
  if (index >= 255) return 0;
  if (known == yarns.end()) yarns.push_back(name);
  return static_cast<std::uint8_t>(index + 1);
}

/// The yarn of all stitches of a piece or passage whose own is not told.
void put_yarn(Building& b, NodeId id, std::uint8_t yarn) {
  Node& node = b.reading.nodes[id];
  if (node.kind == NodeKind::work && node.work.act == Act::stitch && node.work.yarn == 0)
    node.work.yarn = yarn;
  for (NodeId child = node.child; child != no_node; child = b.reading.nodes[child].next)
    put_yarn(b, child, yarn);
}

void put(Building& b, Sequence& sequence, NodeId id) {
  if (sequence.yarn != 0) put_yarn(b, id, sequence.yarn);
  if (sequence.next_into != Into::loops) put_into(b, id, sequence.next_into);
  if (!sequence.rest_into) sequence.next_into = Into::loops;
  if (sequence.next_loops != 0) id = in_loops(b, id, sequence.next_loops);
  sequence.next_loops = 0;
  append(b.reading.nodes, sequence.loops == no_node ? sequence.chain : sequence.in_loops, id);
}

void close_loops(Building& b, Sequence& sequence) {
  if (sequence.loops == no_node) return;
  Node& node = b.reading.nodes[sequence.loops];
  node.child = sequence.in_loops.first;
  if (node.child != no_node) append(b.reading.nodes, sequence.chain, sequence.loops);
  sequence.loops = no_node;
  sequence.in_loops = {};
}

void open_loops(Building& b, Sequence& sequence, std::uint8_t loops, Span span) {
  close_loops(b, sequence);
  Work work;
  work.loops = loops;
  sequence.loops = wrap(b, NodeKind::loops, work, no_node, span);
}

/// Puts a node before the last piece.
void put_before(Building& b, Sequence& sequence, NodeId id) {
  Chain& chain = sequence.loops == no_node ? sequence.chain : sequence.in_loops;
  NodeId* link = &chain.first;
  while (*link != chain.last) link = &b.reading.nodes[*link].next;
  b.reading.nodes[id].next = *link;
  *link = id;
}

/// Another part is opened once, however often it is named.
void part_behind(Building& b, Sequence& sequence, Span span, std::string_view name) {
  if (std::find(b.parts.begin(), b.parts.end(), name) != b.parts.end()) return;
  b.parts.push_back(name);
  put_before(b, sequence, work_node(b, {.act = Act::part_edge}, span));
}

void replace_last(Building& b, Chain& chain, NodeId id) {
  NodeId* link = &chain.first;
  while (*link != chain.last) link = &b.reading.nodes[*link].next;
  *link = id;
  chain.last = id;
}

/// A new yarn that comes in with the joining slip stitch.
void join_in_yarn(Building& b, Sequence& sequence, std::uint8_t yarn) {
  Chain& chain = sequence.loops == no_node ? sequence.chain : sequence.in_loops;
  Work work;
  work.yarn = yarn;
  replace_last(b, chain, wrap(b, NodeKind::yarn, work, chain.last, b.reading.nodes[chain.last].span));
  sequence.yarn = yarn;
}

/// The piece before is in the yarn that the words behind it name.
void yarn_behind(Building& b, Sequence& sequence, const Path& path) {
  const Chain& chain = sequence.loops == no_node ? sequence.chain : sequence.in_loops;
  if (chain.last == no_node) return;
  const std::uint8_t yarn = number_of_yarn(b, path.begin, path.end);
  if (yarn == 0) return;
  Node& node = b.reading.nodes[chain.last];
  if (node.kind == NodeKind::work && node.work.act == Act::join) return join_in_yarn(b, sequence, yarn);
  if (node.kind == NodeKind::work) node.work.yarn = 0;
  put_yarn(b, chain.last, yarn);
}

/// Loops behind a piece replace it in its chain by itself in those loops.
void loops_behind(Building& b, Sequence& sequence, const Work& work) {
  Chain& chain = sequence.loops == no_node ? sequence.chain : sequence.in_loops;
  if (chain.last == no_node) return;
  const NodeId piece = chain.last;
  if (work.into != Into::loops) {
    put_into(b, piece, work.into);
    return;
  }
  const NodeId wrapped = in_loops(b, piece, work.loops);
  if (wrapped == piece) return;
  replace_last(b, chain, wrapped);
}

void put_ring(Building& b, Sequence& sequence, Span span) {
  if (!b.started) put(b, sequence, work_node(b, {.act = Act::ring}, span));
  b.started = true;
}

/// A piece that runs to the end stops before what the line goes on with.
Work with_leave(Work work, const Sequence& sequence, const Path& path) {
  if (work.to_end && work.leave == 0) work.leave = sequence.uses_in_all - path.effect.uses;
  return work;
}

/// The node that opens places, unless the one before it opened the same.
void put_opening(Building& b, Sequence& sequence, const Piece& piece, Act act, std::uint8_t loops,
                 Span span) {
  Work work;
  work.act = act;
  work.loops = loops;
  const NodeId last = sequence.loops == no_node ? sequence.chain.last : sequence.in_loops.last;
  for (const Node& node : b.reading.nodes)
    if (node.kind == NodeKind::work && node.work.act == act &&
        (act == Act::other_side ? last != no_node && &node == &b.reading.nodes[last]
                                : node.round == piece.round || piece.round == 0))
      return;
  Node node = make_node(NodeKind::work, work, span);
  node.round = piece.round;
  put(b, sequence, add_node(b.reading.nodes, node));
}

/// The first of the stitches goes into the chain that the words before named, the others into the next.
void put_from_chain(Building& b, Sequence& sequence, Work& work, Span span) {
  if (sequence.from_chain == 0 || work.where != Where::next || b.reader.kinds.at(work.kind).takes == 0)
    return;
  Work first = work;
  first.where = Where::chain;
  first.nth = sequence.from_chain;
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

void put_stitch(Building& b, Sequence& sequence, const Path& path, const Piece& piece) {
  put_chains(b, sequence, piece.chains, span_of(b, path));
  if (piece.work.where == Where::ring) put_ring(b, sequence, span_of(b, path));
  if (piece.work.where == Where::chain) b.started = true;
  if (piece.opened != Act::stitch)
    put_opening(b, sequence, piece, piece.opened, piece.opened_loops, span_of(b, path));
  Work work = with_leave(piece.work, sequence, path);
  if (piece.onward) {
    sequence.from_chain = work.nth;
    work.where = Where::next;
    work.nth = 0;
  }
  put_from_chain(b, sequence, work, span_of(b, path));
  if (work.times == 0 && piece.work.times == 1 && !work.to_end) return;
  const NodeId id = work_node(b, work, span_of(b, path));
  if (piece.bare) b.bare.push_back(id);
  put(b, sequence, id);
}

/// A repeat whose last pass stops at the two stars: the repeat, then once more what stands before them.
void put_unfinished(Building& b, Sequence& sequence, const Path& path, const Piece& piece, NodeId child) {
  const std::int32_t bracket = b.reader.matches[static_cast<std::size_t>(path.match)].slots.bracket;
  const std::int32_t last = last_pass(b.reader, path.inner, bracket);
  Work work = with_leave(piece.work, sequence, path);
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
  const NodeId child = build_stretch(b, path.inner);
  const NodeKind kind = piece.verb == Verb::group ? NodeKind::group : NodeKind::repeat;
  if (piece.part) return put_unfinished(b, sequence, path, piece, child);
  put(b, sequence, wrap(b, kind, with_leave(piece.work, sequence, path), child, span_of(b, path)));
}

void into_next(Sequence& sequence, Into into, bool rest) {
  sequence.next_into = into;
  sequence.rest_into = rest;
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

/// "Ch 3 (counts), turn" at the head of a row is worked on the turned edge.
void put_turn(Building& b, Sequence& sequence, const Path& path, const Piece& piece) {
  const NodeId only = sequence.chain.first;
  const bool behind_chain = only != no_node && only == sequence.chain.last && sequence.loops == no_node &&
                            b.reading.nodes[only].kind == NodeKind::work && b.reading.nodes[only].work.counts;
  if (!behind_chain) return put_stitch(b, sequence, path, piece);
  put_before(b, sequence, work_node(b, piece.work, span_of(b, path)));
}

void put_row(Building& b, Sequence& sequence, const Path& path) {
  const Piece& piece = b.reader.pieces[static_cast<std::size_t>(path.match)];
  switch (piece.verb) {
  case Verb::pass:
  case Verb::travel:
  case Verb::under_chain:
    return;
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
    if (piece.work.into != Into::loops) return into_next(sequence, piece.work.into, true);
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
  case Verb::part_behind:
    return part_behind(b, sequence, name_span(b, path), name_of_part(b, path));
  case Verb::from_chain:
    sequence.from_chain = piece.work.nth;
    b.started = true;
    return;
  default:
    return put_stitch(b, sequence, path, piece);
  }
}

bool is_instruction(const Sentence& sentence, const Word& word) {
  return word.kind == WordKind::number || is_work(sentence, word) || word.mark == '(' || word.mark == ')';
}

/// The word that a path passed over.
const Word* word_passed(const Sentence& sentence, const Path& path) {
  for (const Word& word : words_at(sentence, path.begin))
    if (skip_blanks(sentence.text(), word.end) == path.end || word.end == path.end) return &word;
  return nullptr;
}

/// Words passed over that nobody knows are kept as a note, those next to each other together.
void keep_note(Building& b, Span span, bool joined) {
  auto& placings = b.reading.placings;
  if (joined && !placings.empty() && placings.back().what == What::note)
    placings.back().span = cover(placings.back().span, span);
  else
    placings.push_back(make_note(span));
}

/// A word alone between two commas stands where a stitch would: nobody adds a note so.
bool stands_for_stitch(const Sentence& sentence, const Path& path) {
  const std::string_view text = sentence.text();
  std::uint32_t before = path.begin;
  while (before > 0 && text[before - 1] == ' ') --before;
  const bool comma_before = before == 0 || text[before - 1] == ',';
  return comma_before && path.end < text.size() && text[path.end] == ',';
}

/// "sc in blorp": a word behind "in" where a stitch still wants its place.
bool stands_for_place(const Building& b, const Path& path) {
  if (path.before == no_path) return false;
  const Path& in = b.reader.paths[static_cast<std::size_t>(path.before)];
  if (in.taken != Taken::passed || in.before == no_path) return false;
  if (word_meaning(b.reader.sentence, in.begin, b.reader.sentence.in) == nullptr) return false;
  const Path& row = b.reader.paths[static_cast<std::size_t>(in.before)];
  if (row.taken != Taken::row) return false;
  const Piece& piece = b.reader.pieces[static_cast<std::size_t>(row.match)];
  return piece.verb == Verb::stitch && !piece.work.to_end && piece.work.times == 1 &&
         piece.work.where == Where::next;
}

void put_passed(Building& b, const Path& path, bool joined) {
  const Sentence& sentence = b.reader.sentence;
  const Word* word = word_passed(sentence, path);
  if (word == nullptr) return;
  const bool unknown = word->kind == WordKind::unknown;
  if (is_instruction(sentence, *word) ||
      (unknown && (stands_for_stitch(sentence, path) || stands_for_place(b, path))))
    b.reading.passed_over.push_back(word->span);
  else if (unknown)
    keep_note(b, word->span, joined);
}

/// What stands behind a change of yarn is in the new one.
void put_placing(Building& b, Sequence& sequence, const Path& path) {
  const std::vector<Placing> all = placings_in(b.reader.sentence, path.begin, path.end);
  const bool changes =
      std::any_of(all.begin(), all.end(), [](const Placing& p) { return p.what == What::change; });
  const std::uint8_t yarn = changes ? number_of_yarn(b, path.begin, path.end) : std::uint8_t{0};
  if (yarn != 0) sequence.yarn = yarn;
  b.reading.placings.insert(b.reading.placings.end(), all.begin(), all.end());
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
    if (step.taken == Taken::aside) keep_note(b, b.reader.sentence.span(step.begin, step.end), false);
    before = step.taken;
  }
  close_loops(b, sequence);
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
    if (!kind.counts || kind.takes != 1) continue;
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
  if (named.any && !named.only) return;
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
  reading.cost = last.cost;
  reading.habits = last.habits;
  return reading;
}

} // namespace whorl::pattern
