#include "pattern/part_order.hpp"

#include <algorithm>

namespace whorl::pattern {

std::vector<NodeId> nodes_in(const Tree& tree, NodeId body) {
  std::vector<NodeId> found, waiting{body};
  while (!waiting.empty()) {
    const NodeId id = waiting.back();
    waiting.pop_back();
    if (id >= tree.nodes.size()) continue;
    found.push_back(id);
    waiting.push_back(tree.nodes[id].next);
    waiting.push_back(tree.nodes[id].child);
  }
  return found;
}

bool names_round(const Node& node) {
  if (node.kind == NodeKind::reference) return true;
  const Act act = node.work.act;
  return node.kind == NodeKind::work &&
         (act == Act::free_loops || act == Act::skipped || act == Act::part_edge);
}

bool goes_through_two(const Node& node) {
  return node.kind == NodeKind::work && node.work.act == Act::stitch && node.work.into == Into::two_parts;
}

namespace {

/// Where parts and rounds come to stand.
struct Move {
  std::uint32_t part, before;
  std::uint32_t first, last, to; ///< rounds of the part, and where they go

  std::uint32_t of_part(std::uint32_t one) const {
    return one == part ? before : one >= before && one < part ? one + 1 : one;
  }
  std::uint32_t of_round(std::uint32_t round) const {
    if (round >= first && round < last) return round - first + to;
    return round >= to && round < first ? round + (last - first) : round;
  }
};

void move_nodes(Tree& tree, const Move& move) {
  for (Node& node : tree.nodes) {
    const bool side = node.kind == NodeKind::work && node.work.act == Act::other_side && node.round != 0;
    if (names_round(node) && node.round != no_round) node.round = move.of_round(node.round);
    if (side) node.round = move.of_round(node.round - 1) + 1; // the round before that index is meant
  }
}

/// What is placed stays behind the same round of its part.
void move_placings(Tree& tree, const std::vector<Part>& before, const Move& move) {
  for (Placing& placing : tree.placings) {
    const std::uint32_t behind =
        placing.after_round - std::min(placing.after_round, before[placing.part].first_round);
    placing.part = move.of_part(placing.part);
    if (placing.sewn != no_node) placing.sewn = move.of_part(placing.sewn);
    placing.after_round = tree.parts[placing.part].first_round + behind;
  }
  std::stable_sort(tree.placings.begin(), tree.placings.end(),
                   [](const Placing& a, const Placing& b) { return a.part < b.part; });
}

} // namespace

bool can_be_made_before(const Tree& tree, std::uint32_t part, std::uint32_t before) {
  const std::uint32_t first = tree.parts[part].first_round, end = end_round(tree, part);
  if (part <= before || first == end || !tree.rounds[first].effect.starts) return false;
  bool alone = true;
  for (std::uint32_t round = first; round < end; ++round)
    for (const NodeId id : nodes_in(tree, tree.rounds[round].body)) {
      const Node& node = tree.nodes[id];
      const bool own = node.round >= first || node.round < tree.parts[before].first_round;
      alone = alone && !goes_through_two(node) && (own || !names_round(node));
    }
  return alone;
}

void make_before(Tree& tree, std::uint32_t part, std::uint32_t before) {
  const Move move{part, before, tree.parts[part].first_round, end_round(tree, part),
                  tree.parts[before].first_round};
  const std::vector<Part> parts = tree.parts;
  const auto rounds = tree.rounds.begin();
  std::rotate(rounds + move.to, rounds + move.first, rounds + move.last);
  for (RoundText& round : tree.rounds) round.part = move.of_part(round.part);
  for (std::uint32_t i = 0; i < parts.size(); ++i) {
    Part& moved = tree.parts[move.of_part(i)] = parts[i];
    const bool between = i >= before && i < part;
    moved.first_round = i == part ? move.to
                        : between ? parts[i].first_round + (move.last - move.first)
                                  : parts[i].first_round;
  }
  move_nodes(tree, move);
  move_placings(tree, parts, move);
}

} // namespace whorl::pattern
