#include "writing/instruction.hpp"

#include "pattern/limits.hpp"
#include "writing/name.hpp"

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

/// "with moss ", where another yarn is taken.
Words with_yarn(const Tree& tree, std::uint8_t number, const Tongue& tongue) {
  if (number == 0 || number > tree.yarns.size()) return std::nullopt;
  const std::string yarn = tongue.named(tree.yarns[number - 1U]);
  const std::string_view blank = tongue.words().blanks_between_words ? " " : "";
  if (has_words(tongue.say(), "say-in-yarn")) return tongue.say()("say-in-yarn", {yarn}).append(blank);
  const Words with = tongue.word("with");
  return with ? Words{*with + " " + yarn + " "} : std::nullopt;
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
    std::uint8_t yarn = 0;
    for (; id < tree_.nodes.size(); id = tree_.nodes[id].next) {
      const Node& node = tree_.nodes[id];
      if (is_before(node, from_)) continue;
      if (is_ring(node) && is_in_ring(tree_, node.next)) continue; // "6 sc in MR" names it
      const Words words = node_words(node, around);
      if (!words) return words;
      const Words with = change_to(node.kind == NodeKind::work ? node.work : Work{}, yarn);
      if (!with) return with;
      text += (text.empty() ? std::string_view{} : tongue_.comma());
      text += *with + *words;
    }
    return text.empty() ? Words{} : Words{text};
  }

private:
  /// The yarn of a stitch where it is another than that of the stitches before it in the list.
  Words change_to(const Work& work, std::uint8_t& yarn) const {
    if (work.yarn == 0 || work.yarn == yarn) return Words{""};
    yarn = work.yarn;
    return with_yarn(tree_, yarn, tongue_);
  }

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
    const Words with = with_yarn(tree_, node.work.yarn, tongue_), rest = list(node.child, around);
    return with && rest ? Words{*with + *rest} : std::nullopt;
  }

  Words node_words(const Node& node, const Around& around) const {
    Work work = node.work;
    if (work.loops == 0) work.loops = around.loops;
    switch (node.kind) {
    case NodeKind::work:
      return work_in_words(tree_, work, tongue_, plainness_);
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
    std::uint8_t yarn = 0;
    for (; at_ < steps_.size() && steps_[at_].sort != Step::Sort::close; ++at_) {
      if (is_named_ring()) continue;
      const std::uint8_t in_yarn =
          steps_[at_].sort == Step::Sort::work ? steps_[at_].work.yarn : std::uint8_t{0};
      const bool changes = in_yarn != 0 && in_yarn != yarn;
      if (changes) yarn = in_yarn;
      const Words with = changes ? with_yarn(tree_, yarn, tongue_) : Words{""}, words = one();
      if (!words || !with) return std::nullopt;
      text += (text.empty() ? std::string_view{} : tongue_.comma());
      text += *with + *words;
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
  return NodeWords(tree, from, tongue, plainness).list(body, {});
}

std::optional<std::string> instruction(const Tree& tree, const std::vector<Step>& steps, const Tongue& tongue,
                                       Plainness plainness) {
  return StepWords(tree, steps, tongue, plainness).list();
}

} // namespace whorl::writing
