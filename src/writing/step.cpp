#include "writing/step.hpp"

#include "pattern/limits.hpp"

#include <algorithm>
#include <utility>

namespace whorl::writing {
namespace {

using pattern::Act;
using pattern::Node;
using pattern::NodeId;
using pattern::NodeKind;
using pattern::Tree;
using pattern::Work;

constexpr std::size_t most_steps = 20000; ///< that a line is written out to

/// What surrounds a node.
struct Around {
  std::uint8_t loops = 0, yarn = 0;
  std::size_t depth = 0;
};

class Steps {
public:
  Steps(const Tree& tree, std::uint32_t from) : tree_(tree), from_(from) {}

  void chain(NodeId id, const Around& around) {
    for (; id < tree_.nodes.size(); id = tree_.nodes[id].next)
      if (!is_before(tree_.nodes[id], from_)) node(tree_.nodes[id], around);
  }

  std::vector<Step> take() { return std::move(steps_); }

private:
  void add(const Step& step) {
    if (steps_.size() >= most_steps) return;
    if (!steps_.empty() && may_be_one(steps_.back(), step))
      steps_.back().work.times += step.work.times;
    else
      steps_.push_back(step);
  }

  static bool may_be_one(const Step& before, const Step& step) {
    if (step.sort != Step::Sort::work || before.sort != Step::Sort::work) return false;
    if (step.work.to_end || (step.work.act != Act::stitch && step.work.act != Act::skip)) return false;
    if (step.work.where == pattern::Where::same) return false;
    Step alike = step;
    alike.work.times = before.work.times;
    return alike == before;
  }

  Step step_of(const Node& node, Step::Sort sort, const Around& around) const {
    Step step{sort, node.work, {}, {}, node.round, node.number};
    if (step.work.loops == 0) step.work.loops = around.loops;
    if (step.work.loops == stitch::both) step.work.loops = 0;
    if (step.work.yarn == 0) step.work.yarn = around.yarn;
    if (step.work.act == Act::stitch && step.work.kind < tree_.kinds.size() && sort == Step::Sort::work)
      step.kind = tree_.kinds[step.work.kind].name;
    step.work.kind = 0; // its number depends on what else the pattern uses
    if (node.name > 0 && node.name <= tree_.group_names.size())
      step.group = tree_.group_names[node.name - 1U];
    return step;
  }

  void between(const Node& node, Step::Sort sort, const Around& around) {
    add(step_of(node, sort, around));
    chain(node.child, around);
    add({Step::Sort::close, {}, {}, {}, 0, 0});
  }

  void repeat(const Node& node, const Around& around) {
    if (node.work.to_end) return between(node, Step::Sort::open_repeat, around);
    for (std::uint32_t i = 0; i < node.work.times && steps_.size() < most_steps; ++i)
      chain(node.child, around);
  }

  /// Of the round that is named all is worked again, wherever it stands.
  void refer(const Node& node, const Around& around) {
    if (node.round >= tree_.rounds.size()) return;
    const std::uint32_t from = std::exchange(from_, 0U);
    chain(tree_.rounds[node.round].body, around);
    from_ = from;
  }

  void node(const Node& node, Around around) {
    if (++around.depth > pattern::limit::depth) return;
    switch (node.kind) {
    case NodeKind::work:
      return add(step_of(node, Step::Sort::work, around));
    case NodeKind::repeat:
      return repeat(node, around);
    case NodeKind::group:
      return between(node, Step::Sort::open_group, around);
    case NodeKind::loops:
      around.loops = node.work.loops;
      return chain(node.child, around);
    case NodeKind::yarn:
      around.yarn = node.work.yarn;
      return chain(node.child, around);
    case NodeKind::sequence:
      return chain(node.child, around);
    case NodeKind::reference:
      return refer(node, around);
    case NodeKind::unread:
      return add(step_of(node, Step::Sort::unread, around));
    }
  }

  const Tree& tree_;
  std::uint32_t from_;
  std::vector<Step> steps_;
};

} // namespace

bool is_before(const Node& node, std::uint32_t from) { return !node.span.empty() && node.span.end <= from; }

std::uint32_t begin_of_work(const Tree& tree, const pattern::RoundText& round) {
  std::uint32_t begin = words::cover(round.label_span, round.span).begin;
  if (round.body >= tree.nodes.size()) return begin;
  for (NodeId id = tree.nodes[round.body].child; id < tree.nodes.size(); id = tree.nodes[id].next)
    if (!tree.nodes[id].span.empty()) begin = std::min(begin, tree.nodes[id].span.begin);
  return begin;
}

std::vector<Step> steps_of(const Tree& tree, NodeId body, std::uint32_t from) {
  Steps steps(tree, from);
  steps.chain(body, {});
  return steps.take();
}

} // namespace whorl::writing
