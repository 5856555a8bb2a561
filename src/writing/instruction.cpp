#include "writing/instruction.hpp"

#include "pattern/limits.hpp"
#include "writing/begun_words.hpp"
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
  bool lines = false;   ///< each step in a line
  bool in_star = false; ///< stars do not stand within stars
  bool at_end = false;  ///< what ends here ends the line
};

bool is_in_ring(const Tree& tree, NodeId id) {
  return id < tree.nodes.size() && tree.nodes[id].kind == NodeKind::work &&
         tree.nodes[id].work.where == Where::ring;
}

bool is_ring(const Node& node) { return node.kind == NodeKind::work && node.work.act == Act::ring; }

class NodeWords {
public:
  NodeWords(const Tree& tree, std::uint32_t from, bool above, const Tongue& tongue, Plainness plainness,
            const Manner& manner)
      : tree_(tree), from_(from), above_(above), tongue_(tongue), plainness_(plainness), manner_(manner) {}

  Words list(NodeId id, Around around) {
    if (++around.depth > pattern::limit::depth) return std::nullopt;
    std::string text;
    std::uint8_t yarn = 0;
    for (; id < tree_.nodes.size(); id = tree_.nodes[id].next) {
      const Node& node = tree_.nodes[id];
      if (is_passed_over(node) || (node.kind == NodeKind::work && is_said_above(node.work))) continue;
      if (is_ring(node) && is_in_ring(tree_, node.next)) continue; // "6 sc in MR" names it
      const bool leg = names_leg(node) && next_work(node) != nullptr, edges = goes_along_edges(node);
      const Words words = leg ? in_leg(node, around) : edges ? along_edges(node) : node_words(node, around);
      if (leg || edges) id = node.next;
      if (!words) return words;
      const Work work = tree_.nodes[id].kind == NodeKind::work ? tree_.nodes[id].work : Work{};
      const Words with = change_to(work, yarn);
      if (!with) return with;
      const std::string_view comma = around.lines ? std::string_view("\n") : tongue_.comma();
      text += text.empty() ? std::string_view{} : comma;
      text += in_yarn_said(*with, *words, work.act) + so_far(id, around);
    }
    return text.empty() ? Words{} : Words{text};
  }

private:
  /// " (5 so far)" behind a step in a line of its own that makes stitches.
  std::string so_far(NodeId id, const Around& around) const {
    if (!around.lines || goes_on_below(tree_.nodes[id])) return {};
    if (around.at_end && manner_.count_behind && tree_.nodes[id].next == pattern::no_node) return {};
    const auto count = manner_.lines->find(id);
    if (count == manner_.lines->end()) return {};
    const std::string number = digits(count->second);
    Words words = tongue_.row("so-far", {number, {}, {}, {}});
    if (!words) words = tongue_.row("count-so-far", {number, {}, {}, {}});
    return words ? " " + *words : std::string();
  }

  /// What only stands around other steps, which are written in lines of their own.
  static bool goes_on_below(const Node& node) {
    return node.kind == NodeKind::sequence || node.kind == NodeKind::loops || node.kind == NodeKind::yarn;
  }

  /// Where the lines of a list part that of a repeat is written with stars.
  bool has_stars(NodeId id, const Around& around) const {
    const Node& node = tree_.nodes[id];
    const bool several = node.child < tree_.nodes.size() && tree_.nodes[node.child].next != pattern::no_node;
    if (around.in_star || node.work.leave > 0 || (!node.work.to_end && node.work.times < 2)) return false;
    return around.lines ? several : manner_.stars != nullptr && manner_.stars->count(id) > 0;
  }

  /// "*sc, inc; repeat from * 5 more times".
  Words with_stars(const Node& node, Around around) {
    around.in_star = true;
    around.at_end = false;
    const Words inner = list(node.child, around);
    if (!inner) return inner;
    const Words all = node.work.to_end
                          ? tongue_.row("star-around", {{}, {}, *inner, {}})
                          : tongue_.row("star-more", {digits(node.work.times - 1), {}, *inner, {}});
    return all && around.lines ? in_own_line(*all, *inner) : all;
  }

  /// What stands behind the list of a repeat, in a line of its own.
  static std::string in_own_line(std::string all, const std::string& inner) {
    const std::size_t begin = all.find(inner);
    if (begin == std::string::npos) return all;
    std::size_t end = begin + inner.size();
    if (end < all.size() && all[end] == '*') ++end;
    std::size_t next = end;
    for (const std::string_view mark : {";", ",", "、", "，", "；", " "})
      if (std::string_view(all).substr(next, mark.size()) == mark) next += mark.size();
    return all.replace(end, next - end, "\n");
  }

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
    if (last && plainness_ != Plainness::places && loops) {
      const Words head = tongue_.row("loops-rest", {{}, {}, {}, *loops});
      const Words rest = list(node.child, {0, around.depth, around.lines, around.in_star, around.at_end});
      return head && rest ? Words{*head + " " + *rest} : std::nullopt;
    }
    around.loops = node.work.loops;
    return list(node.child, around);
  }

  /// "with moss 3 sc".
  Words in_yarn(const Node& node, Around around) {
    const Words with = with_yarn(tree_, node.work.yarn, tongue_), rest = list(node.child, around);
    return with && rest ? Words{*with + *rest} : std::nullopt;
  }

  bool does_not_count(const Node& node) const {
    return manner_.not_counting != nullptr &&
           manner_.not_counting->count(static_cast<NodeId>(&node - tree_.nodes.data())) > 0;
  }

  static Around in_brackets(Around around) {
    around.lines = false;
    around.in_star = true;
    return around;
  }

  Words node_words(const Node& node, Around around) {
    around.at_end = around.at_end && node.next == pattern::no_node;
    Work work = node.work;
    if (work.loops == 0) work.loops = around.loops;
    switch (node.kind) {
    case NodeKind::work:
      if (does_not_count(node))
        if (Words chain = tongue_.sentence("say-high-chain", {digits(work.times)})) return chain;
      if (is_of_other(work)) return of_other(tree_, work, {node.round, node.number}, tongue_);
      return work_in_words(tree_, work, tongue_, plainness_);
    case NodeKind::repeat: {
      const auto id = static_cast<NodeId>(&node - tree_.nodes.data());
      if (has_stars(id, around)) return with_stars(node, around);
      const Words inner = list(node.child, in_brackets(around));
      return inner && !runs_to_end(node) ? repeated(work, *inner, tongue_) : inner;
    }
    case NodeKind::loops:
      return in_loops(node, around);
    case NodeKind::yarn:
      return in_yarn(node, around);
    case NodeKind::group: {
      const Words inner = node.name == 0 ? list(node.child, in_brackets(around)) : std::nullopt;
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
  Manner manner_;
  std::uint32_t legs_ = 0; ///< so many are named
};

} // namespace

std::optional<std::string> instruction(const Tree& tree, NodeId body, std::uint32_t from,
                                       const Tongue& tongue, Plainness plainness, const Manner& manner) {
  return NodeWords(tree, from, false, tongue, plainness, manner)
      .list(body, {0, 0, manner.lines != nullptr, false, true});
}

std::optional<std::string> instruction_above(const Tree& tree, NodeId body, std::uint32_t from,
                                             const Tongue& tongue) {
  return NodeWords(tree, from, true, tongue, Plainness::usual, {}).list(body, {});
}

} // namespace whorl::writing
