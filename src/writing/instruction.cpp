#include "writing/instruction.hpp"

#include "pattern/limits.hpp"

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

/// "(list) x 3", "(list) around".
Words repeated(const Work& work, const std::string& list, const Tongue& tongue) {
  if (!work.to_end) return tongue.row("group-times", {digits(work.times), {}, list, {}});
  if (work.leave == 0) return tongue.row("group-around", {{}, {}, list, {}});
  return tongue.row("to-last", {digits(work.leave), "(" + list + ")", {}, {}});
}

/// Several stitches into one place.
Words in_one_place(const Work& work, const std::string& list, const Tongue& tongue) {
  if (work.where != Where::next || work.to_end) return std::nullopt;
  Words one = tongue.row("group-in-next", {{}, {}, list, {}});
  if (!one || work.times == 1) return one;
  return tongue.row("group-times", {digits(work.times), {}, *one, {}});
}

class NodeWords {
public:
  NodeWords(const Tree& tree, std::uint32_t from, const Tongue& tongue, Plainness plainness)
      : tree_(tree), from_(from), tongue_(tongue), plainness_(plainness) {}

  Words list(NodeId id, Around around) const {
    if (++around.depth > pattern::limit::depth) return std::nullopt;
    std::string text;
    for (; id < tree_.nodes.size(); id = tree_.nodes[id].next) {
      const Node& node = tree_.nodes[id];
      if (is_before(node, from_)) continue;
      if (is_ring(node) && is_in_ring(tree_, node.next)) continue; // "6 sc in MR" names it
      const Words words = node_words(node, around);
      if (!words) return words;
      text += (text.empty() ? std::string_view{} : tongue_.comma());
      text += *words;
    }
    return text.empty() ? Words{} : Words{text};
  }

private:
  /// Loops that hold for all that follows are said once before it.
  Words in_loops(const Node& node, Around around) const {
    const bool last = node.next == pattern::no_node;
    const char* const name = node.work.loops == stitch::back    ? "back loops"
                             : node.work.loops == stitch::front ? "front loops"
                             : node.work.loops == stitch::third ? "third loop"
                                                                : "";
    const Words loops = tongue_.word(name);
    if (last && plainness_ == Plainness::usual && loops) {
      const Words head = tongue_.row("loops-rest", {{}, {}, {}, *loops});
      const Words rest = list(node.child, {0, around.depth});
      return head && rest ? Words{*head + " " + *rest} : std::nullopt;
    }
    return list(node.child, {node.work.loops, around.depth});
  }

  /// "with moss 3 sc".
  Words in_yarn(const Node& node, Around around) const {
    const Words with = tongue_.word("with"), rest = list(node.child, around);
    if (!with || !rest || node.work.yarn == 0 || node.work.yarn > tree_.yarns.size()) return std::nullopt;
    return *with + " " + tree_.yarns[node.work.yarn - 1U] + " " + *rest;
  }

  Words node_words(const Node& node, const Around& around) const {
    Work work = node.work;
    if (work.loops == 0) work.loops = around.loops;
    switch (node.kind) {
    case NodeKind::work:
      return node.work.yarn != 0 ? std::nullopt : work_in_words(tree_, work, tongue_, plainness_);
    case NodeKind::repeat: {
      const Words inner = list(node.child, around);
      return inner ? repeated(work, *inner, tongue_) : inner;
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
    case NodeKind::unread:
      break;
    }
    return std::nullopt;
  }

  const Tree& tree_;
  std::uint32_t from_;
  const Tongue& tongue_;
  Plainness plainness_;
};

/// Steps in words, from one place to the closing that belongs to it.
class StepWords {
public:
  StepWords(const Tree& tree, const std::vector<Step>& steps, const Tongue& tongue, Plainness plainness)
      : tree_(tree), steps_(steps), tongue_(tongue), plainness_(plainness) {}

  Words list() {
    std::string text;
    for (; at_ < steps_.size() && steps_[at_].sort != Step::Sort::close; ++at_) {
      if (is_named_ring()) continue;
      const Words words = one();
      if (!words) return words;
      text += (text.empty() ? std::string_view{} : tongue_.comma());
      text += *words;
    }
    return text.empty() ? Words{} : Words{text};
  }

private:
  bool is_named_ring() const {
    return steps_[at_].sort == Step::Sort::work && steps_[at_].work.act == Act::ring && at_ + 1 < steps_.size() &&
           steps_[at_ + 1].work.where == Where::ring;
  }

  Words one() {
    const Step step = steps_[at_];
    if (step.sort == Step::Sort::unread || step.work.yarn != 0 || !step.group.empty()) return std::nullopt;
    Work work = step.work;
    if (step.sort == Step::Sort::work) {
      const auto kind = stitch::find_kind(tree_.kinds, step.kind);
      if (!step.kind.empty() && !kind) return std::nullopt;
      work.kind = kind.value_or(stitch::KindId{0});
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

std::optional<std::string> instruction(const Tree& tree, NodeId body, std::uint32_t from, const Tongue& tongue,
                                       Plainness plainness) {
  return NodeWords(tree, from, tongue, plainness).list(body, {});
}

std::optional<std::string> instruction(const Tree& tree, const std::vector<Step>& steps, const Tongue& tongue,
                                       Plainness plainness) {
  return StepWords(tree, steps, tongue, plainness).list();
}

} // namespace whorl::writing
