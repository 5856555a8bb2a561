#include "writing/instruction.hpp"

#include "pattern/limits.hpp"
#include "writing/instruction_parts.hpp"

namespace whorl::writing {
namespace {

using pattern::Act;
using pattern::Node;
using pattern::NodeId;
using pattern::NodeKind;
using pattern::Tree;
using pattern::Where;
using pattern::Work;
using Words = std::optional<std::string>;

std::string digits(std::uint64_t n) { return std::to_string(n); }

/// What surrounds a node: the loops that it has to say itself.
struct Around {
  std::uint8_t loops = 0;
  std::size_t depth = 0;
};

bool is_in_ring(const Tree& tree, NodeId id) {
  return id < tree.nodes.size() && tree.nodes[id].kind == NodeKind::work &&
         tree.nodes[id].work.where == Where::ring;
}

bool is_ring(const Node& node) { return node.kind == NodeKind::work && node.work.act == Act::ring; }

class NodeWords {
public:
  NodeWords(const Tree& tree, std::uint32_t from, bool above, const Tongue& tongue, Plainness plainness)
      : tree_(tree), from_(from), above_(above), tongue_(tongue), plainness_(plainness) {}

  Words list(NodeId id, Around around) {
    if (++around.depth > pattern::limit::depth) return std::nullopt;
    std::string text;
    std::uint8_t yarn = 0;
    for (; id < tree_.nodes.size(); id = tree_.nodes[id].next) {
      const Node& node = tree_.nodes[id];
      if (is_passed_over(node)) continue;
      if (is_ring(node) && is_in_ring(tree_, node.next)) continue; // "6 sc in MR" names it
      const bool leg = names_leg(node) && next_work(node) != nullptr, edges = goes_along_edges(node);
      const Words words = leg ? in_leg(node, around) : edges ? along_edges(node) : node_words(node, around);
      if (leg || edges) id = node.next;
      if (!words) return words;
      const Work work = tree_.nodes[id].kind == NodeKind::work ? tree_.nodes[id].work : Work{};
      const Words with = change_to(work, yarn);
      if (!with) return with;
      text += (text.empty() ? std::string_view{} : tongue_.comma());
      text += in_yarn_said(*with, *words, work.act);
    }
    return text.empty() ? Words{} : Words{text};
  }

private:
  /// What stands above the line is left out, or is all that is wanted; passages may begin there and go on.
  bool is_passed_over(const Node& node) const {
    if (!above_) return is_before(node, from_);
    return node.child == pattern::no_node ? !is_before(node, from_)
                                          : node.span.empty() || node.span.begin >= from_;
  }

  /// Where the work goes on to another leg, or to the one that it comes from.
  /// Where an edge is opened for the stitches that follow: the ends of rows, all round a flat piece.
  bool goes_along_edges(const Node& node) const {
    const bool opens =
        node.kind == NodeKind::work && (node.work.act == Act::row_ends || node.work.act == Act::all_edges);
    if (!opens || node.next >= tree_.nodes.size()) return false;
    const Node& next = tree_.nodes[node.next];
    return next.kind == NodeKind::work && next.work.act == Act::stitch && next.work.where == Where::next &&
           next.work.in_one == 1;
  }

  /// "sc in each row end", "8 sc in row ends", "sc evenly around".
  Words along_edges(const Node& node) const {
    const Work& work = tree_.nodes[node.next].work;
    const Words name = tongue_.stitch(tree_, work.kind);
    if (!name || work.leave > 0) return std::nullopt;
    if (node.work.act == Act::all_edges)
      return work.to_end ? tongue_.row("evenly-around", {{}, *name, {}, {}})
                         : tongue_.row("count-evenly-around", {digits(work.times), *name, {}, {}});
    if (work.to_end && node.work.times == 0) return std::nullopt;
    return work.to_end ? tongue_.row("in-row-ends", {{}, *name, {}, {}})
                       : tongue_.row("count-in-row-ends", {digits(work.times), *name, {}, {}});
  }

  bool names_leg(const Node& node) const {
    const bool here = node.kind == NodeKind::sequence && node.child == pattern::no_node && !node.span.empty();
    return here || (node.kind == NodeKind::work && node.work.act == Act::part_edge);
  }

  /// A repeat to the end of nothing but work that runs there itself.
  bool runs_to_end(const Node& node) const {
    if (!node.work.to_end || node.work.leave > 0 || node.child >= tree_.nodes.size()) return false;
    const Node& child = tree_.nodes[node.child];
    return child.next == pattern::no_node && child.kind == NodeKind::work && child.work.to_end;
  }

  const Node* next_work(const Node& node) const {
    if (node.next >= tree_.nodes.size()) return nullptr;
    const Node& next = tree_.nodes[node.next];
    const bool plain = next.kind == NodeKind::work && next.work.act == Act::stitch &&
                       next.work.where == Where::next && !next.work.to_end;
    return plain ? &next : nullptr;
  }

  /// "12 sc in leg 2".
  Words in_leg(const Node& node, Around around) {
    const Words words = node_words(*next_work(node), around);
    return words ? tongue_.sentence("say-in-leg", {digits(++legs_), *words}) : words;
  }

  /// The yarn of a stitch where it is another than that of the stitches before it in the list.
  Words change_to(const Work& work, std::uint8_t& yarn) const {
    if (work.yarn == 0 || work.yarn == yarn) return Words{""};
    yarn = work.yarn;
    return with_yarn(tree_, yarn, tongue_);
  }

  /// Loops that hold for all that follows are said once before it.
  Words in_loops(const Node& node, Around around) {
    const bool last = node.next == pattern::no_node;
    const Words loops = loops_in_words(node.work.loops, tongue_);
    if (last && plainness_ == Plainness::usual && loops) {
      const Words head = tongue_.row("loops-rest", {{}, {}, {}, *loops});
      const Words rest = list(node.child, {0, around.depth});
      return head && rest ? Words{*head + " " + *rest} : std::nullopt;
    }
    return list(node.child, {node.work.loops, around.depth});
  }

  /// "with moss 3 sc".
  Words in_yarn(const Node& node, Around around) {
    const Words with = with_yarn(tree_, node.work.yarn, tongue_), rest = list(node.child, around);
    return with && rest ? Words{*with + *rest} : std::nullopt;
  }

  Words node_words(const Node& node, const Around& around) {
    Work work = node.work;
    if (work.loops == 0) work.loops = around.loops;
    switch (node.kind) {
    case NodeKind::work:
      if (is_of_other(work)) return of_other(tree_, work, {node.round, node.number}, tongue_);
      return work_in_words(tree_, work, tongue_, plainness_);
    case NodeKind::repeat: {
      const Words inner = list(node.child, around);
      return inner && !runs_to_end(node) ? repeated(work, *inner, tongue_) : inner;
    }
    case NodeKind::loops:
      return in_loops(node, around);
    case NodeKind::yarn:
      return in_yarn(node, around);
    case NodeKind::group: {
      const Words inner = node.name == 0 ? list(node.child, around) : std::nullopt;
      return inner ? in_one_place(work, *inner, tongue_) : inner;
    }
    case NodeKind::sequence:
      return list(node.child, around);
    case NodeKind::reference:
      return as_round(tree_, {node.round, node.number}, tongue_);
    case NodeKind::unread:
      break;
    }
    return std::nullopt;
  }

  const Tree& tree_;
  std::uint32_t from_;
  bool above_; ///< what is typed before `from`, and nothing else
  const Tongue& tongue_;
  Plainness plainness_;
  std::uint32_t legs_ = 0; ///< so many are named
};

/// Steps in words, from one place to the closing that belongs to it.
class StepWords {
public:
  StepWords(const Tree& tree, const std::vector<Step>& steps, const Tongue& tongue, Plainness plainness)
      : tree_(tree), steps_(steps), tongue_(tongue), plainness_(plainness) {}

  Words list() {
    std::string text;
    std::uint8_t yarn = 0;
    for (; at_ < steps_.size() && steps_[at_].sort != Step::Sort::close; ++at_) {
      if (is_named_ring()) continue;
      const Act act = steps_[at_].sort == Step::Sort::work ? steps_[at_].work.act : Act::stitch;
      const std::uint8_t in_yarn =
          steps_[at_].sort == Step::Sort::work ? steps_[at_].work.yarn : std::uint8_t{0};
      const bool changes = in_yarn != 0 && in_yarn != yarn;
      if (changes) yarn = in_yarn;
      const Words with = changes ? with_yarn(tree_, yarn, tongue_) : Words{""}, words = one();
      if (!words || !with) return std::nullopt;
      text += (text.empty() ? std::string_view{} : tongue_.comma());
      text += in_yarn_said(*with, *words, act);
    }
    return text.empty() ? Words{} : Words{text};
  }

private:
  bool is_named_ring() const {
    return steps_[at_].sort == Step::Sort::work && steps_[at_].work.act == Act::ring &&
           at_ + 1 < steps_.size() && steps_[at_ + 1].work.where == Where::ring;
  }

  Words one() {
    const Step step = steps_[at_];
    if (step.sort == Step::Sort::unread || !step.group.empty()) return std::nullopt;
    Work work = step.work;
    if (step.sort == Step::Sort::work) {
      const auto kind = stitch::find_kind(tree_.kinds, step.kind);
      if (!step.kind.empty() && !kind) return std::nullopt;
      work.kind = kind.value_or(stitch::KindId{0});
      if (is_of_other(work)) return of_other(tree_, work, {step.round, step.number}, tongue_);
      return work_in_words(tree_, work, tongue_, plainness_);
    }
    ++at_;
    const Words inner = list();
    if (!inner) return inner;
    return step.sort == Step::Sort::open_repeat ? repeated(work, *inner, tongue_)
                                                : in_one_place(work, *inner, tongue_);
  }

  const Tree& tree_;
  const std::vector<Step>& steps_;
  const Tongue& tongue_;
  Plainness plainness_;
  std::size_t at_ = 0;
};

} // namespace

std::optional<std::string> instruction(const Tree& tree, NodeId body, std::uint32_t from,
                                       const Tongue& tongue, Plainness plainness) {
  return NodeWords(tree, from, false, tongue, plainness).list(body, {});
}

std::optional<std::string> instruction_above(const Tree& tree, NodeId body, std::uint32_t from,
                                             const Tongue& tongue) {
  return NodeWords(tree, from, true, tongue, Plainness::usual).list(body, {});
}

std::optional<std::string> instruction(const Tree& tree, const std::vector<Step>& steps, const Tongue& tongue,
                                       Plainness plainness) {
  return StepWords(tree, steps, tongue, plainness).list();
}

} // namespace whorl::writing
