#include "writing/running.hpp"

#include "pattern/limits.hpp"

#include <optional>
#include <vector>

namespace whorl::writing {
namespace {

using pattern::Act;
using pattern::Node;
using pattern::NodeId;
using pattern::NodeKind;

/// So many stitches, chains and joins too; none: as many as there is room for.
using Stitches = std::optional<std::uint64_t>;

class Counting {
public:
  Counting(const pattern::Tree& tree, const fabric::Fabric& fabric) : tree_(tree), fabric_(fabric) {}

  Running of(std::uint32_t entry) {
    visit(tree_.rounds[entry].body, pattern::no_node, 0);
    for (const fabric::Round& round : fabric_.rounds)
      if (round.text == entry) {
        count(round);
        break;
      }
    return std::move(running_);
  }

private:
  /// What a node is within, and how many stitches it makes before the work goes on behind it.
  struct Within {
    NodeId parent = pattern::no_node;
    Stitches makes;
    std::uint64_t made = 0;
  };

  /// The nodes of a list and all below them; the stitches of one time through.
  Stitches visit(NodeId id, NodeId parent, std::size_t depth) {
    Stitches all = 0;
    if (depth > pattern::limit::depth) return std::nullopt;
    for (; id < tree_.nodes.size(); id = tree_.nodes[id].next) {
      within_[id].parent = parent;
      const Stitches makes = made_by(tree_.nodes[id], id, depth);
      within_[id].makes = makes;
      all = all && makes ? Stitches(*all + *makes) : std::nullopt;
    }
    return all;
  }

  Stitches made_by(const Node& node, NodeId id, std::size_t depth) {
    const pattern::Work& work = node.work;
    if (node.kind == NodeKind::reference || node.kind == NodeKind::unread) return std::nullopt;
    if (node.kind != NodeKind::work) {
      const Stitches inner = visit(node.child, id, depth + 1);
      const bool repeats = node.kind == NodeKind::repeat || node.kind == NodeKind::group;
      if (!inner || (repeats && work.to_end)) return std::nullopt;
      return *inner * (repeats ? work.times : 1U);
    }
    if (work.act == Act::join) return 1;
    if (work.act != Act::stitch) return work.act == Act::travel ? Stitches{} : Stitches{0};
    if (work.to_end) return std::nullopt;
    return std::uint64_t{work.times} * work.in_one;
  }

  void count(const fabric::Round& round) {
    std::uint32_t so_far = 0;
    for (std::uint32_t i = 0; i < round.count; ++i) {
      const fabric::Stitch& stitch = fabric_.stitches[round.first_stitch + i];
      const bool counts = (stitch.flags & fabric::counts) != 0;
      if (counts) ++so_far;
      for (auto at = within_.find(stitch.origin); at != within_.end(); at = within_.find(at->second.parent)) {
        Within& within = at->second;
        ++within.made;
        const bool goes_on = !within.makes || within.made <= *within.makes;
        if (counts && goes_on) running_[at->first] = so_far;
      }
    }
  }

  const pattern::Tree& tree_;
  const fabric::Fabric& fabric_;
  std::map<NodeId, Within> within_;
  Running running_;
};

} // namespace

Running running_of(const pattern::Tree& tree, const fabric::Fabric& fabric, std::uint32_t entry) {
  return Counting(tree, fabric).of(entry);
}

} // namespace whorl::writing
