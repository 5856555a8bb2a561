#include "pattern/building.hpp"

#include "pattern/colour.hpp"

#include <algorithm>

namespace whorl::pattern {

void append(std::vector<Node>& nodes, Chain& chain, NodeId id) {
  if (chain.first == no_node)
    chain.first = id;
  else
    nodes[chain.last].next = id;
  chain.last = id;
}

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

namespace {

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

} // namespace

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

namespace {

/// The yarn of all stitches of a piece or passage whose own is not told.
void put_yarn(Building& b, NodeId id, std::uint8_t yarn) {
  Node& node = b.reading.nodes[id];
  if (node.kind == NodeKind::work && node.work.act == Act::stitch && node.work.yarn == 0)
    node.work.yarn = yarn;
  for (NodeId child = node.child; child != no_node; child = b.reading.nodes[child].next)
    put_yarn(b, child, yarn);
}

} // namespace

namespace {

enum class Goes : std::uint8_t { nowhere, elsewhere, into_space };

/// Where the first piece of a node goes that goes anywhere; chains do not.
Goes first_goes(const Building& b, NodeId id) {
  const Node& node = b.reading.nodes[id];
  if (node.work.where == Where::space) return Goes::into_space;
  const bool chain = node.kind == NodeKind::work && node.work.act == Act::stitch &&
                     b.reader.kinds.at(node.work.kind).takes == 0;
  if (node.kind == NodeKind::work) return chain ? Goes::nowhere : Goes::elsewhere;
  Goes goes = Goes::nowhere;
  for (NodeId child = node.child; child != no_node && goes == Goes::nowhere;
       child = b.reading.nodes[child].next)
    goes = first_goes(b, child);
  return goes;
}

Chain& open_chain(Sequence& sequence) {
  return sequence.loops == no_node ? sequence.chain : sequence.in_loops;
}

/// The space that was passed is skipped before what goes into the next.
void put_passed_space(Building& b, Sequence& sequence, Goes next) {
  if (sequence.passed_space == no_node || next == Goes::nowhere) return;
  if (next == Goes::into_space) append(b.reading.nodes, open_chain(sequence), sequence.passed_space);
  sequence.passed_space = no_node;
}

} // namespace

void pass_space(Building& b, Sequence& sequence, Span span) {
  put_passed_space(b, sequence, Goes::into_space); // one after the other
  sequence.passed_space = work_node(b, {.act = Act::skip, .where = Where::space}, span);
}

void end_passed_space(Building& b, Sequence& sequence) {
  Goes first = Goes::nowhere;
  for (NodeId id = sequence.chain.first; id != no_node && first == Goes::nowhere;
       id = b.reading.nodes[id].next)
    first = first_goes(b, id);
  put_passed_space(b, sequence, first);
}

void put(Building& b, Sequence& sequence, NodeId id) {
  put_passed_space(b, sequence, first_goes(b, id));
  if (sequence.yarn != 0) put_yarn(b, id, sequence.yarn);
  if (sequence.next_into != Into::loops) put_into(b, id, sequence.next_into);
  if (!sequence.rest_into) sequence.next_into = Into::loops;
  if (sequence.next_loops != 0) id = in_loops(b, id, sequence.next_loops);
  sequence.next_loops = 0;
  append(b.reading.nodes, open_chain(sequence), id);
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

void put_before(Building& b, Sequence& sequence, NodeId id) {
  Chain& chain = sequence.loops == no_node ? sequence.chain : sequence.in_loops;
  NodeId* link = &chain.first;
  while (*link != chain.last) link = &b.reading.nodes[*link].next;
  b.reading.nodes[id].next = *link;
  *link = id;
}

namespace {

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

} // namespace

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

namespace {

bool is_mark(const Node& node) {
  return node.kind == NodeKind::work && (node.work.act == Act::join || node.work.act == Act::turn);
}

} // namespace

void end_loops(Building& b, Sequence& sequence) {
  if (sequence.next_into == Into::two_parts && sequence.chain.last != no_node)
    put_into(b, sequence.chain.last, Into::two_parts);
  bool works = sequence.chain.last == no_node || sequence.loops == no_node;
  for (NodeId id = sequence.in_loops.first; id != no_node; id = b.reading.nodes[id].next)
    works = works || !is_mark(b.reading.nodes[id]);
  if (works) return close_loops(b, sequence);
  const Work work = b.reading.nodes[sequence.loops].work;
  const Chain marks = sequence.in_loops;
  sequence.loops = no_node;
  sequence.in_loops = {};
  loops_behind(b, sequence, work);
  if (marks.first == no_node) return;
  append(b.reading.nodes, sequence.chain, marks.first);
  sequence.chain.last = marks.last;
}

} // namespace whorl::pattern
