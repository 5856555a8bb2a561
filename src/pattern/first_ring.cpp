#include "pattern/first_ring.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::uint32_t least_in_ring = 3;
constexpr std::uint32_t most_in_ring = 16;
constexpr std::uint32_t least_along = 4; ///< chains that are worked along

bool is_plain(const Work& work) {
  return work.act == Act::stitch && work.where == Where::next && work.into == Into::loops &&
         work.in_one == 1 && !work.to_end && work.loops == 0 && !work.counts;
}

/// Behind the chains that a round stands on; `id` where none stand there.
NodeId behind_standing_chain(const Tree& tree, NodeId id) {
  const Node& node = tree.nodes[id];
  const bool chain = node.kind == NodeKind::work && node.work.act == Act::stitch &&
                     tree.kinds[node.work.kind].name == "ch" &&
                     (node.work.counts || node.work.times < least_along);
  return chain && node.next != no_node ? node.next : id;
}

/// The stitches of a body that is one piece of plain work, perhaps with the chains it stands on before and a
/// join behind; no_node else.
NodeId only_stitches(const Tree& tree, NodeId body) {
  if (body == no_node || tree.nodes[body].kind != NodeKind::sequence || tree.nodes[body].child == no_node)
    return no_node;
  const NodeId child = behind_standing_chain(tree, tree.nodes[body].child);
  for (NodeId rest = tree.nodes[child].next; rest != no_node; rest = tree.nodes[rest].next)
    if (tree.nodes[rest].kind != NodeKind::work || tree.nodes[rest].work.act != Act::join) return no_node;
  const Node& node = tree.nodes[child];
  const bool few = node.work.times >= least_in_ring && node.work.times <= most_in_ring;
  const bool one = few && tree.kinds[node.work.kind].takes == 1 && tree.kinds[node.work.kind].makes == 1;
  return node.kind == NodeKind::work && is_plain(node.work) && one ? child : no_node;
}

/// "6 sc in 2nd ch from hook" with no chain made before: the first piece of a body goes into such a chain,
/// and so does all of it; no_node else.
NodeId only_into_chain(const Tree& tree, const RoundText& round) {
  if (round.body == no_node || round.effect.uses > 1 || round.effect.makes < least_in_ring) return no_node;
  const NodeId child = tree.nodes[round.body].child;
  if (child == no_node || tree.nodes[child].kind != NodeKind::work) return no_node;
  const Work& work = tree.nodes[child].work;
  return work.act == Act::stitch && work.where == Where::chain && work.in_one >= least_in_ring ? child
                                                                                               : no_node;
}

/// Puts the chain before the stitches that go into it.
void begin_in_chain(Read& read, const RoundText& round, NodeId stitches) {
  Tree& tree = read.tree;
  const auto chain =
      std::find_if(tree.kinds.begin(), tree.kinds.end(), [](const auto& kind) { return kind.name == "ch"; });
  if (chain == tree.kinds.end()) return;
  Node node;
  node.kind = NodeKind::work;
  node.work.kind = static_cast<stitch::KindId>(chain - tree.kinds.begin());
  node.work.times = tree.nodes[stitches].work.nth;
  node.next = stitches;
  node.span = {tree.nodes[stitches].span.begin, tree.nodes[stitches].span.begin};
  tree.nodes[round.body].child = static_cast<NodeId>(tree.nodes.size());
  tree.nodes.push_back(node);
}

/// "Ch 7, 5 sc, 3 sc in last ch": stitches directly behind a chain; no_node if the body does not begin so.
NodeId stitches_along(const Tree& tree, const RoundText& round) {
  if (round.body == no_node || round.effect.starts) return no_node;
  const NodeId chain = tree.nodes[round.body].child;
  if (chain == no_node || tree.nodes[chain].kind != NodeKind::work) return no_node;
  const Work& made = tree.nodes[chain].work;
  const stitch::StitchKind& kind = tree.kinds[made.kind];
  NodeId next = tree.nodes[chain].next;
  const auto is_chain = [&tree](const Node& node) {
    return node.kind == NodeKind::work && node.work.act == Act::stitch &&
           tree.kinds[node.work.kind].name == "ch";
  };
  while (next != no_node && is_chain(tree.nodes[next])) next = tree.nodes[next].next; // "ch 8, ch 1 to turn"
  const bool chains =
      made.act == Act::stitch && kind.name == "ch" && !made.counts && made.times >= least_along;
  if (!chains || next == no_node || tree.nodes[next].kind != NodeKind::work) return no_node;
  const Work& work = tree.nodes[next].work;
  return is_plain(work) && tree.kinds[work.kind].takes == 1 ? next : no_node;
}

/// They begin in the second chain from the hook, as is the habit.
void begin_along_chain(Read& read, RoundText& round, NodeId stitches) {
  Tree& tree = read.tree;
  Node& first = tree.nodes[stitches];
  Node rest = first;
  first.work.times = 1;
  first.work.where = Where::chain;
  first.work.nth = 2;
  if (--rest.work.times > 0) {
    first.next = static_cast<NodeId>(tree.nodes.size());
    tree.nodes.push_back(rest);
  }
  round.effect.uses = 0;
  round.effect.starts = true;
}

void begin_in_ring(Read& read, RoundText& round, NodeId stitches) {
  Tree& tree = read.tree;
  Node ring;
  ring.kind = NodeKind::work;
  ring.work.act = Act::ring;
  ring.next = tree.nodes[round.body].child;
  ring.span = {tree.nodes[stitches].span.begin, tree.nodes[stitches].span.begin};
  tree.nodes[stitches].work.where = Where::ring;
  tree.nodes[round.body].child = static_cast<NodeId>(tree.nodes.size());
  tree.nodes.push_back(ring);
  round.effect.uses = 0;
  round.effect.starts = true;
  Finding finding;
  finding.severity = Severity::note;
  finding.code = "ring";
  finding.span = tree.nodes[stitches].span;
  finding.message =
      "nothing says what these stitches go into; they are worked into a magic ring, as is the habit";
  read.findings.push_back(std::move(finding));
}

} // namespace

void begin_in_rings(Read& read) {
  for (std::uint32_t part = 0; part < read.tree.parts.size(); ++part) {
    const std::uint32_t first = read.tree.parts[part].first_round;
    if (first >= end_round(read.tree, part)) continue;
    RoundText& round = read.tree.rounds[first];
    if (const NodeId into = only_into_chain(read.tree, round); into != no_node)
      begin_in_chain(read, round, into);
    if (const NodeId along = stitches_along(read.tree, round); along != no_node)
      begin_along_chain(read, round, along);
    const bool begins = round.from == 1 && round.to == 1 && round.kind == RoundKind::round && round.read &&
                        !round.effect.starts;
    const NodeId stitches = begins ? only_stitches(read.tree, round.body) : no_node;
    if (stitches != no_node) begin_in_ring(read, round, stitches);
  }
}

} // namespace whorl::pattern
