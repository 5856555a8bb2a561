#include "writing/used.hpp"

#include <algorithm>

namespace whorl::writing {
namespace {

void add(std::vector<Used>& all, const Used& used) {
  if (std::find(all.begin(), all.end(), used) == all.end()) all.push_back(used);
}

void add_work(std::vector<Used>& all, const pattern::Tree& tree, const pattern::Work& work) {
  if (work.act == pattern::Act::join)
    if (const auto slip = stitch::find_kind(tree.kinds, "sl st")) add(all, {*slip});
  if (work.act != pattern::Act::stitch || work.kind >= tree.kinds.size()) return;
  add(all, {work.kind, std::max<std::uint16_t>(1, work.in_one), work.into});
}

/// The nodes of a line in the order of its text. No recursion: what is still to come waits in a stack.
void add_line(std::vector<Used>& all, const pattern::Tree& tree, pattern::NodeId body) {
  std::vector<pattern::NodeId> waiting{body};
  while (!waiting.empty()) {
    const pattern::NodeId id = waiting.back();
    waiting.pop_back();
    if (id >= tree.nodes.size()) continue;
    const pattern::Node& node = tree.nodes[id];
    if (node.kind == pattern::NodeKind::work) add_work(all, tree, node.work);
    waiting.push_back(node.next);
    waiting.push_back(node.child);
  }
}

} // namespace

std::vector<Used> used_stitches(const pattern::Tree& tree) {
  std::vector<Used> all;
  for (const pattern::RoundText& round : tree.rounds) add_line(all, tree, round.body);
  return all;
}

} // namespace whorl::writing
