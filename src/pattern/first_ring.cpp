#include "pattern/first_ring.hpp"

namespace whorl::pattern {

namespace {

constexpr std::uint32_t least_in_ring = 3;
constexpr std::uint32_t most_in_ring = 16;

bool is_plain(const Work& work) {
  return work.act == Act::stitch && work.where == Where::next && work.into == Into::loops &&
         work.in_one == 1 && !work.to_end && work.loops == 0 && !work.counts;
}

/// The stitches of a body that is one piece of plain work; no_node else.
NodeId only_stitches(const Tree& tree, NodeId body) {
  if (body == no_node || tree.nodes[body].kind != NodeKind::sequence) return no_node;
  const NodeId child = tree.nodes[body].child;
  if (child == no_node || tree.nodes[child].next != no_node) return no_node;
  const Node& node = tree.nodes[child];
  const bool few = node.work.times >= least_in_ring && node.work.times <= most_in_ring;
  const bool one = few && tree.kinds[node.work.kind].takes == 1 && tree.kinds[node.work.kind].makes == 1;
  return node.kind == NodeKind::work && is_plain(node.work) && one ? child : no_node;
}

void begin_in_ring(Read& read, RoundText& round, NodeId stitches) {
  Tree& tree = read.tree;
  Node ring;
  ring.kind = NodeKind::work;
  ring.work.act = Act::ring;
  ring.next = stitches;
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
    const bool begins = round.from == 1 && round.to == 1 && round.kind == RoundKind::round && round.read &&
                        !round.effect.starts;
    const NodeId stitches = begins ? only_stitches(read.tree, round.body) : no_node;
    if (stitches != no_node) begin_in_ring(read, round, stitches);
  }
}

} // namespace whorl::pattern
