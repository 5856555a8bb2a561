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

const char* group_row(const Work& work) {
  switch (work.where) {
  case Where::next:
    return work.to_end ? "group-in-each" : "group-in-next";
  case Where::same:
    return "group-in-same";
  case Where::last:
    return "group-in-last";
  case Where::ring:
    return "group-in-ring";
  case Where::space:
    return work.to_end ? "group-in-spaces" : "group-in-space";
  case Where::between:
    return work.to_end ? "group-in-gaps" : "group-in-gap";
  default:
    return "";
  }
}

/// Several stitches into one place.
Words in_one_place(const Work& work, const std::string& list, const Tongue& tongue) {
  if (work.to_end && work.leave > 0) return std::nullopt;
  Words one = tongue.row(group_row(work), {{}, {}, list, {}});
  if (!one || work.times == 1 || work.to_end) return one;
  return tongue.row("group-times", {digits(work.times), {}, *one, {}});
}

/// What a step says of another round or part.
struct Named {
  std::uint32_t round = 0;
  std::uint16_t number = 0;
};

bool is_of_other(const Work& work) {
  return work.act == Act::free_loops || work.act == Act::part_edge || work.act == Act::skipped ||
         (work.act == Act::stitch && work.into == pattern::Into::two_parts);
}

/// The number of a round that is named, or none where the entry gives several.
Words number_of(const Tree& tree, const Named& named) {
  if (named.number != 0) return digits(named.number);
  if (named.round >= tree.rounds.size()) return std::nullopt;
  const pattern::RoundText& round = tree.rounds[named.round];
  return round.from > 0 && round.from == round.to && round.again == 0 ? Words{std::to_string(round.from)}
                                                                      : std::nullopt;
}

Words as_round(const Tree& tree, const Named& named, const Tongue& tongue) {
  const Words number = number_of(tree, named);
  return number ? tongue.sentence("say-as-round", {*number}) : number;
}

/// Into loops that another round left free, or through another part.
Words of_other(const Tree& tree, const Work& work, const Named& named, const Tongue& tongue) {
  if (named.round >= tree.rounds.size() || tree.parts.empty()) return std::nullopt;
  const std::string& part = tree.parts[tree.rounds[named.round].part].name;
  if (work.act == Act::stitch) {
    const Words name = tongue.stitch(tree, work.kind);
    const bool plain = name && !work.to_end && work.in_one == 1 && !part.empty();
    return plain ? tongue.sentence("say-through-parts", {digits(work.times), *name, part}) : std::nullopt;
  }
  const Words number = number_of(tree, named), loops = loops_in_words(work.loops, tongue);
  if (!number || !loops || work.act != Act::free_loops || work.nth != 0) return std::nullopt;
  return part.empty() ? tongue.sentence("say-in-free-loops", {*number, *loops})
                      : tongue.sentence("say-in-free-loops-of", {*number, *loops, part});
}

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
      if (is_before(node, from_) != above_) continue;
      if (is_ring(node) && is_in_ring(tree_, node.next)) continue; // "6 sc in MR" names it
      const bool leg = names_leg(node) && next_work(node) != nullptr;
      const Words words = leg ? in_leg(node, around) : node_words(node, around);
      if (leg) id = node.next;
      if (!words) return words;
      const Words with =
          change_to(tree_.nodes[id].kind == NodeKind::work ? tree_.nodes[id].work : Work{}, yarn);
      if (!with) return with;
      text += (text.empty() ? std::string_view{} : tongue_.comma());
      text += *with + *words;
    }
    return text.empty() ? Words{} : Words{text};
  }

private:
  /// Where the work goes on to another leg, or to the one that it comes from.
  bool names_leg(const Node& node) const {
    const bool here = node.kind == NodeKind::sequence && node.child == pattern::no_node && !node.span.empty();
    return here || (node.kind == NodeKind::work && node.work.act == Act::part_edge);
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
