#include "pattern/assemble.hpp"

#include "pattern/bare.hpp"
#include "pattern/limits.hpp"
#include "pattern/yarn.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

using stitch::KindId;

/// The tree's number for a kind, which is added if it is new.
KindId merge_kind(Tree& tree, const stitch::StitchKind& kind) {
  const auto same = std::find(tree.kinds.begin(), tree.kinds.end(), kind);
  if (same == tree.kinds.end()) tree.kinds.push_back(kind);
  return static_cast<KindId>(same == tree.kinds.end() ? tree.kinds.size() - 1
                                                      : static_cast<std::size_t>(same - tree.kinds.begin()));
}

/// Numbers in the tree of the kinds that a reading made on the way.
struct KindMap {
  KindId first_new = 0;
  std::vector<KindId> made;

  KindId operator()(KindId kind) const {
    const std::size_t index = static_cast<std::size_t>(kind) - first_new;
    return kind >= first_new && index < made.size() ? made[index] : kind;
  }
};

KindMap merge_kinds(Tree& tree, const Reading& reading) {
  KindMap map;
  map.first_new = reading.first_new_kind;
  for (const stitch::StitchKind& kind : reading.new_kinds) map.made.push_back(merge_kind(tree, kind));
  return map;
}

NodeId moved(NodeId id, std::size_t by) { return id == no_node ? no_node : static_cast<NodeId>(id + by); }

/// The round of this number in the part that a reference names: the last that stood before.
std::uint32_t find_round(const Tree& tree, std::uint32_t number) {
  const std::uint32_t first = tree.parts.empty() ? 0 : tree.parts.back().first_round;
  for (auto round = static_cast<std::uint32_t>(tree.rounds.size()); round-- > first;) {
    const RoundText& text = tree.rounds[round];
    const int wanted = static_cast<int>(number);
    if (text.from <= wanted && wanted <= text.to) return round;
  }
  return number;
}

int times_before(const Tree& tree, std::uint32_t part, int number) {
  for (auto round = tree.rounds.size(); round-- > tree.parts[part].first_round;) {
    const RoundText& text = tree.rounds[round];
    if (text.from <= number && number <= text.to) return text.again + 1;
    if (text.to < number && text.again == 0) return 0;
  }
  return 0;
}

bool makes_only_chains(const Tree& tree, const Reading& reading) {
  bool any = false;
  for (const Node& node : reading.nodes) {
    if (node.kind != NodeKind::work) continue;
    const bool chain = node.work.act == Act::stitch && node.work.kind < tree.kinds.size() &&
                       tree.kinds[node.work.kind].name == "ch";
    if (!chain) return false;
    any = true;
  }
  return any;
}

} // namespace

NodeId take_over(Tree& tree, const Reading& reading) {
  const KindMap kinds = merge_kinds(tree, reading);
  const std::size_t offset = tree.nodes.size();
  std::vector<std::uint8_t> yarns{0};
  for (const std::string& name : reading.yarns)
    yarns.push_back(number_of_yarn(tree, name, tree.rounds.size()));
  for (Node node : reading.nodes) {
    node.child = moved(node.child, offset);
    node.next = moved(node.next, offset);
    node.work.kind = kinds(node.work.kind);
    if (node.work.yarn < yarns.size()) node.work.yarn = yarns[node.work.yarn];
    if (node.kind == NodeKind::reference) node.round = find_round(tree, node.round);
    tree.nodes.push_back(node);
  }
  return moved(reading.body, offset);
}

void add_placings(Tree& tree, std::uint32_t part, std::vector<Placing> placings) {
  for (Placing& placing : placings) {
    placing.part = part;
    placing.after_round = static_cast<std::uint32_t>(tree.rounds.size());
    tree.placings.push_back(std::move(placing));
  }
}

void add_round(Tree& tree, std::uint32_t part, const Ways& line, const Settled& settled, Span span,
               std::string_view label) {
  const Way& way = line[settled.way];
  RoundText round;
  round.part = part;
  round.from = settled.from;
  round.to = settled.to;
  round.again = std::max(way.label.again, times_before(tree, part, settled.from));
  round.kind = way.label.kind;
  round.label = label;
  round.label_span = way.label.span;
  round.span = span;
  round.read = settled.reading != not_read;
  round.readings = settled.agreeing;
  std::vector<Placing> placings;
  if (round.read) {
    const Reading& reading = way.readings[settled.reading];
    const KindMap kinds = merge_kinds(tree, reading);
    round.stated = reading.stated;
    for (Stated& stated : round.stated)
      if (stated.unit == Unit::kind) stated.kind = kinds(stated.kind);
    round.effect = reading.effect;
    const auto offset = static_cast<NodeId>(tree.nodes.size());
    round.body = take_over(tree, reading);
    settle_by_rounds_before(tree, part, reading.bare, offset);
    if (makes_only_chains(tree, reading)) round.kind = RoundKind::chain;
    placings = reading.placings;
  } else if (way.stated) {
    round.stated.push_back({*way.stated, Unit::any, stitch::no_kind, way.work});
  }
  tree.rounds.push_back(std::move(round));
  add_placings(tree, part, std::move(placings));
}

} // namespace whorl::pattern
