#include "pattern/bare.hpp"

#include "pattern/limits.hpp"

#include <optional>

namespace whorl::pattern {

namespace {

/// What stitches stand in the rounds looked at.
struct Seen {
  std::optional<stitch::KindId> only;
  bool several = false;
};

void look(const Tree& tree, NodeId body, Seen& seen) {
  std::vector<NodeId> open{body};
  while (!open.empty() && !seen.several) {
    const NodeId id = open.back();
    open.pop_back();
    if (id == no_node) continue;
    const Node& node = tree.nodes[id];
    open.push_back(node.child);
    if (id != body) open.push_back(node.next);
    if (node.kind != NodeKind::work || node.work.act != Act::stitch) continue;
    const stitch::StitchKind& kind = tree.kinds[node.work.kind];
    if (!may_be_meant(kind)) continue;
    seen.several = seen.only && *seen.only != node.work.kind;
    seen.only = node.work.kind;
  }
}

} // namespace

/// A single crochet that the list tells apart from the plain one ("Y = yarn under sc") is meant by no bare
/// word.
bool may_be_meant(const stitch::StitchKind& kind) {
  const stitch::StitchKind& single = stitch::single_crochet();
  if (kind.own && kind.name != single.name && kind.moves == single.moves) return false;
  return kind.counts && kind.takes == 1 && kind.close == stitch::Close::none;
}

void take_stitch(std::vector<Node>& nodes, const std::vector<NodeId>& bare, stitch::KindId stitch,
                 Kinds& kinds) {
  if (kinds.at(stitch).name == "sc") return;
  for (const NodeId id : bare) {
    Work& work = nodes[id].work;
    const int takes = kinds.at(work.kind).takes;
    if (takes == 1) work.kind = stitch;
    if (takes > 1)
      if (const auto kind = kinds.together(stitch, static_cast<std::uint32_t>(takes))) work.kind = *kind;
  }
}

void settle_by_rounds_before(Tree& tree, std::uint32_t part, const std::vector<NodeId>& bare, NodeId offset) {
  if (bare.empty() || part >= tree.parts.size()) return;
  Seen seen;
  int looked = 0;
  for (auto round = tree.rounds.size();
       round-- > tree.parts[part].first_round && !seen.several && looked < limit::lines_back; ++looked)
    look(tree, tree.rounds[round].body, seen);
  if (!seen.only || seen.several) return;
  std::vector<NodeId> moved;
  for (const NodeId id : bare) moved.push_back(id + offset);
  Kinds kinds{tree.kinds, {}};
  take_stitch(tree.nodes, moved, *seen.only, kinds);
  const std::vector<stitch::StitchKind> made = kinds.made;
  tree.kinds.insert(tree.kinds.end(), made.begin(), made.end());
}

} // namespace whorl::pattern
