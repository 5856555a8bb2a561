#include "pattern/named_rounds.hpp"

#include "pattern/named_loop.hpp"
#include "pattern/reference.hpp"
#include "pattern/sentence_around.hpp"

#include <algorithm>
#include <optional>

namespace whorl::pattern {

namespace {

/// Whether some node of a body is such a one.
template <typename Test> bool any_node(const Tree& tree, NodeId body, Test is_it) {
  std::vector<NodeId> open{body};
  while (!open.empty()) {
    const NodeId id = open.back();
    open.pop_back();
    if (id == no_node) continue;
    const Node& node = tree.nodes[id];
    if (is_it(node)) return true;
    open.push_back(node.child);
    open.push_back(node.next);
  }
  return false;
}

/// The last round before `before` of which `is_it` is true.
template <typename Test>
std::optional<std::uint32_t> last_round(const Tree& tree, std::uint32_t before, Test is_it) {
  for (std::uint32_t round = before; round-- > 0;)
    if (is_it(tree.rounds[round])) return round;
  return std::nullopt;
}

bool has_number(const RoundText& round, int number) { return round.from <= number && number <= round.to; }

/// The round of this number: of the same part, else of the nearest before.
std::optional<std::uint32_t> round_of_number(const Tree& tree, std::uint32_t before, int number) {
  return last_round(tree, before, [number](const RoundText& round) { return has_number(round, number); });
}

/// The same, of the part that the words name: "round 3 of the foot"; of the nearest before if they name none.
std::optional<std::uint32_t> round_of_part(const Tree& tree, std::uint32_t before, int number,
                                           std::string_view words, const Reader& reader) {
  std::optional<std::uint32_t> best;
  int most = 0;
  for (std::uint32_t round = 0; round < before; ++round) {
    if (!has_number(tree.rounds[round], number)) continue;
    const int shared = names_part(words, tree.parts[tree.rounds[round].part].name, reader.vocabulary);
    if (shared > 0 && shared >= most) best = round, most = shared;
  }
  return best ? best : round_of_number(tree, before, number);
}

std::string_view behind_number(std::string_view words) {
  const std::size_t digit = words.find_first_of("0123456789");
  return digit == std::string_view::npos ? std::string_view{} : words.substr(digit + 1);
}

/// The round that left loops free where no number is said: the last that was worked in the other loops only.
std::optional<std::uint32_t> round_with_free_loops(const Tree& tree, std::uint32_t before,
                                                   std::uint8_t loops) {
  return last_round(tree, before, [&](const RoundText& round) {
    return any_node(tree, round.body, [loops](const Node& node) {
      return node.work.act == Act::stitch && node.work.loops != 0 && node.work.loops != stitch::both &&
             (loops == 0 || (node.work.loops & loops) == 0);
    });
  });
}

/// The last round that skipped several stitches side by side, else the last that skipped any.
std::optional<std::uint32_t> round_that_skipped(const Tree& tree, std::uint32_t before) {
  const auto skipped = [&](std::uint32_t least) {
    return last_round(tree, before, [&](const RoundText& round) {
      return any_node(tree, round.body, [least](const Node& node) {
        return node.kind == NodeKind::work && node.work.act == Act::skip && node.work.times >= least;
      });
    });
  };
  const auto several = skipped(2);
  return several ? several : skipped(1);
}

constexpr int most_number = 0xFFFF;

void take_round(Tree& tree, Node& node, std::optional<std::uint32_t> round, int number) {
  if (!round) return;
  node.round = *round;
  const RoundText& text = tree.rounds[*round];
  node.number = static_cast<std::uint16_t>(number != 0 && text.from != text.to ? number : 0);
}

/// The part that the words of a node name best; the nearest before where they name none.
std::uint32_t part_named(const Tree& tree, std::string_view words, const Reader& reader) {
  std::uint32_t best = 0;
  int most = -1;
  const auto last = static_cast<std::uint32_t>(tree.parts.size() - 1);
  for (std::uint32_t part = 0; part <= last; ++part) {
    if (end_round(tree, part) == tree.parts[part].first_round + (part == last ? 1 : 0)) continue;
    if (end_round(tree, part) == tree.parts[part].first_round) continue;
    const int shared = names_part(words, tree.parts[part].name, reader.vocabulary);
    if (part == last && shared <= most) break;
    if (shared >= most) best = part;
    most = std::max(most, shared);
  }
  return best;
}

void name_part(Tree& tree, Node& node, const Reader& reader) {
  if (tree.parts.size() < 2) return;
  const std::uint32_t part = part_named(tree, reader.source.at(node.span), reader);
  if (part + 1 == tree.parts.size()) { // it is what the round goes on from anyway
    const NodeId next = node.next;
    const Span span = node.span;
    node = Node{};
    node.next = next;
    node.span = span;
    return;
  }
  const std::uint32_t end = end_round(tree, part);
  if (end > tree.parts[part].first_round) node.round = end - 1;
}

/// "sc in the 3rd free loop | , sc in next 5 loops"
std::string_view first_clause(const RoundText& round, const Reader& reader) {
  const std::string_view work =
      reader.source.at({std::min(round.label_span.end, round.span.end), round.span.end});
  return work.substr(0, work.find(','));
}

/// The loop that the sentence of an opening tells it begins in, else another of its line, else the first that
/// is worked into.
std::uint16_t loop_begun_in(const Tree& tree, const Node& node, const Reader& reader) {
  const std::uint16_t loop = loop_named(sentence_around(reader.source, node.span), reader.vocabulary);
  if (loop != 0) return loop;
  const Span line = reader.source.line(reader.source.line_of(node.span.begin));
  const std::uint16_t other = loop_named(reader.source.at(line), reader.vocabulary);
  return other != 0 ? other : loop_named(first_clause(tree.rounds.back(), reader), reader.vocabulary);
}

/// In which loop an opening begins, and how many it opens.
void begin_in_loop(const Tree& tree, Node& node, const Reader& reader) {
  const NumberedLoops loops = loops_named(reader.source.at(node.span), reader.vocabulary);
  node.work.nth = loops.first != 0 ? loops.first : loop_begun_in(tree, node, reader);
  if (loops.first != 0) node.work.times = static_cast<std::uint32_t>(loops.last - loops.first) + 1;
}

} // namespace

void name_rounds(Tree& tree, std::size_t first_node, const Reader& reader) {
  const auto before = static_cast<std::uint32_t>(tree.rounds.size() - 1);
  for (std::size_t id = first_node; id < tree.nodes.size(); ++id) {
    Node& node = tree.nodes[id];
    if (node.kind != NodeKind::work) continue;
    const auto number = static_cast<int>(node.round);
    const auto typed =
        number == 0 ? std::nullopt
                    : round_of_part(tree, before, number, behind_number(reader.source.at(node.span)), reader);
    if (node.work.act == Act::free_loops) begin_in_loop(tree, node, reader);
    if (node.work.act == Act::free_loops && number != 0 && !typed)
      node.round = no_round, node.number = static_cast<std::uint16_t>(std::min(number, most_number));
    else if (node.work.act == Act::free_loops)
      take_round(tree, node, typed ? typed : round_with_free_loops(tree, before, node.work.loops), number);
    if (node.work.act == Act::skipped)
      take_round(tree, node, typed ? typed : round_that_skipped(tree, before), number);
    if (node.work.act == Act::part_edge) name_part(tree, node, reader);
  }
}

void refer(Tree& tree, std::uint32_t round, const Target& target) {
  RoundText& text = tree.rounds.back();
  Node node;
  node.kind = NodeKind::reference;
  node.round = round;
  node.number = static_cast<std::uint16_t>(target.number);
  node.span = text.span;
  tree.nodes.push_back(node);
  text.body = static_cast<NodeId>(tree.nodes.size() - 1);
  if (target.loops == 0) return;
  Node loops;
  loops.kind = NodeKind::loops;
  loops.work.loops = target.loops;
  loops.child = text.body;
  loops.span = text.span;
  tree.nodes.push_back(loops);
  text.body = static_cast<NodeId>(tree.nodes.size() - 1);
}

namespace {

/// The first thing that a round does: it opens another round.
void open_round(Tree& tree, std::uint32_t round, std::uint32_t edge, Act act, std::uint16_t nth = 0) {
  RoundText& text = tree.rounds[round];
  if (text.body == no_node) return;
  Node open;
  open.kind = NodeKind::work;
  open.work.act = act;
  open.work.nth = nth;
  open.round = edge;
  open.span = text.label_span;
  open.next = text.body;
  tree.nodes.push_back(open);
  Node sequence;
  sequence.child = static_cast<NodeId>(tree.nodes.size() - 1);
  sequence.span = text.span;
  tree.nodes.push_back(sequence);
  text.body = static_cast<NodeId>(tree.nodes.size() - 1);
}

} // namespace

void open_part_edge(Tree& tree, std::uint32_t round, std::uint32_t edge) {
  open_round(tree, round, edge, Act::part_edge);
}

void open_last_round(Tree& tree, std::uint32_t round, std::uint32_t edge, std::uint16_t stitch) {
  open_round(tree, round, edge, Act::free_loops, stitch);
}

void open_chain_of(Tree& tree, std::size_t first_node, std::uint32_t round, std::uint32_t owner) {
  for (std::size_t id = first_node; id < tree.nodes.size(); ++id) {
    Node& node = tree.nodes[id];
    if (node.kind != NodeKind::work || node.work.act != Act::other_side) continue;
    node.round = owner + 1;
    return;
  }
  open_round(tree, round, owner + 1, Act::other_side);
}

} // namespace whorl::pattern
