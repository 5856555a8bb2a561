#include "fabric/mend.hpp"

#include "pattern/terms.hpp"

namespace whorl::fabric {
namespace {

using pattern::Node;
using pattern::NodeId;
using pattern::NodeKind;
using pattern::Tree;

/// What a round should come to.
struct Aim {
  std::int64_t uses = 0;  ///< places more (or fewer) that it has to use
  std::int64_t makes = 0; ///< likewise makes
  bool any_makes = false; ///< no count is stated: only the number of a repeat is certain enough
};

/// The number that this piece of work would need instead of its own; 0 if none.
std::int64_t number_for(const Node& node, const Need& all, const Aim& aim) {
  const std::int64_t times = node.work.times;
  if (times == 0 || node.work.to_end) return 0;
  const std::int64_t uses = static_cast<std::int64_t>(all.uses) / times;
  const std::int64_t makes = static_cast<std::int64_t>(all.makes) / times;
  if (uses == 0 || aim.uses == 0 || aim.uses % uses != 0) return 0;
  const std::int64_t more = aim.uses / uses;
  if (aim.any_makes ? node.kind != NodeKind::repeat : makes * more != aim.makes) return 0;
  return times + more > 0 ? times + more : 0;
}

std::string say(const Tree& tree, const Node& node, std::int64_t number) {
  const std::string instead = " instead of " + std::to_string(node.work.times);
  if (node.kind == NodeKind::repeat) return "repeat " + std::to_string(number) + " times" + instead;
  if (node.work.act == pattern::Act::skip) return "skip " + std::to_string(number) + instead;
  const std::string kind = pattern::spoken(tree.kinds[node.work.kind].name, tree.language);
  return std::to_string(number) + (node.work.in_one > 1 ? " increases" : " " + kind) + instead;
}

bool is_passed_through(NodeKind kind) {
  return kind == NodeKind::sequence || kind == NodeKind::loops || kind == NodeKind::yarn;
}

class Search {
public:
  Search(const Tree& tree, const std::vector<Need>& needs, const Aim& aim)
      : tree_(tree), needs_(needs), aim_(aim) {}

  void look(NodeId id, int depth) {
    const Node& node = tree_.nodes[id];
    if (node.kind == NodeKind::work || node.kind == NodeKind::repeat) return try_number(id);
    if (!is_passed_through(node.kind) || depth > deepest) return;
    for (NodeId child = node.child; child != pattern::no_node; child = tree_.nodes[child].next)
      look(child, depth + 1);
  }

  std::string only_one() const { return found_ == 1 ? text_ : std::string(); }

private:
  void try_number(NodeId id) {
    const Node& node = tree_.nodes[id];
    const std::int64_t number = number_for(node, need_of(tree_, id, needs_), aim_);
    if (number == 0) return;
    if (++found_ == 1) text_ = say(tree_, node, number);
  }

  const Tree& tree_;
  const std::vector<Need>& needs_;
  const Aim& aim_;
  int found_ = 0;
  std::string text_;
};

} // namespace

std::string mend(const Tree& tree, const std::vector<Need>& needs, std::uint32_t index, std::uint64_t open) {
  const pattern::RoundText& text = tree.rounds[index];
  const Need& need = needs[index];
  if (text.body == pattern::no_node || need.to_end || need.starts || need.hurdle != Hurdle::nothing ||
      need.spaces > 0)
    return {};
  if (need.uses >= beyond || need.makes >= beyond || text.stated.size() > 1) return {};
  Aim aim;
  aim.uses = static_cast<std::int64_t>(open) - static_cast<std::int64_t>(need.uses);
  aim.any_makes = text.stated.empty();
  if (!aim.any_makes)
    aim.makes = static_cast<std::int64_t>(text.stated.front().count) - static_cast<std::int64_t>(need.makes);
  Search search(tree, needs, aim);
  search.look(text.body, 0);
  return search.only_one();
}

} // namespace whorl::fabric
