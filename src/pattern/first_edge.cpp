#include "pattern/first_edge.hpp"

#include "pattern/part_order.hpp"

namespace whorl::pattern {

namespace {

/// How many stitches a round needs in front of it; 0: nothing tells.
std::uint32_t needed_by(const RoundText& round) {
  const Effect& effect = round.effect;
  if (effect.pass_uses == 0) return effect.uses;
  if (round.stated.empty() || round.stated.front().unit == Unit::group || effect.pass_makes == 0) return 0;
  const std::uint32_t stated = round.stated.front().count;
  const bool even = stated >= effect.makes && (stated - effect.makes) % effect.pass_makes == 0;
  return even ? effect.uses + (stated - effect.makes) / effect.pass_makes * effect.pass_uses : 0;
}

/// The first round of the text; the number of rounds if it needs no edge.
std::uint32_t round_without_edge(const Tree& tree) {
  const auto none = static_cast<std::uint32_t>(tree.rounds.size());
  if (tree.rounds.empty()) return none;
  const RoundText& first = tree.rounds.front();
  const bool goes_on = first.from > 1 && first.read && first.body != no_node && !first.effect.starts &&
                       first.kind != RoundKind::chain;
  return goes_on ? 0 : none;
}

/// Whether the round says itself what it goes into: free loops, another part.
bool opens_itself(const Tree& tree) {
  for (NodeId id = tree.nodes[tree.rounds.front().body].child; id != no_node; id = tree.nodes[id].next)
    if (names_round(tree.nodes[id])) return true;
  return false;
}

/// Every round of the tree stands one further back.
void move_back(Tree& tree) {
  for (Node& node : tree.nodes)
    if ((names_round(node) || node.work.act == Act::other_side) && node.round != no_round &&
        (names_round(node) || node.round != 0))
      ++node.round;
  for (std::size_t part = 1; part < tree.parts.size(); ++part)
    if (tree.parts[part].first_round > 0) ++tree.parts[part].first_round;
  for (Placing& placing : tree.placings) ++placing.after_round;
}

stitch::KindId chain_of(const Tree& tree) {
  stitch::KindId kind = 0;
  while (kind < tree.kinds.size() && tree.kinds[kind].name != "ch") ++kind;
  return kind;
}

Node work_at(std::uint32_t byte) {
  Node node;
  node.kind = NodeKind::work;
  node.span = {byte, byte};
  return node;
}

/// "Ch `count`", joined to a ring where rounds are worked.
RoundText chain_before(Tree& tree, std::uint32_t count) {
  const RoundText& first = tree.rounds.front();
  RoundText chain;
  chain.part = first.part;
  chain.kind = RoundKind::chain;
  chain.span = chain.label_span = {first.span.begin, first.span.begin};
  chain.effect.starts = true;
  chain.effect.makes = count;
  Node sequence;
  sequence.span = chain.span;
  sequence.child = static_cast<NodeId>(tree.nodes.size() + 1);
  Node chains = work_at(first.span.begin);
  chains.work.kind = chain_of(tree);
  chains.work.times = count;
  Node join = work_at(first.span.begin);
  join.work.act = Act::join;
  if (first.kind == RoundKind::round) chains.next = sequence.child + 1;
  chain.body = sequence.child - 1;
  tree.nodes.push_back(sequence);
  tree.nodes.push_back(chains);
  if (first.kind == RoundKind::round) tree.nodes.push_back(join);
  return chain;
}

} // namespace

void open_first_edge(Read& read) {
  Tree& tree = read.tree;
  if (round_without_edge(tree) == tree.rounds.size() || opens_itself(tree)) return;
  const std::uint32_t count = needed_by(tree.rounds.front());
  if (count == 0) return;
  Finding finding;
  finding.severity = Severity::note;
  finding.code = "begins-later";
  finding.span = tree.rounds.front().label_span;
  finding.message = "the rounds before are not in this text; " + std::to_string(count) +
                    " stitches are taken to be there, drawn as a chain";
  read.findings.push_back(std::move(finding));
  RoundText chain = chain_before(tree, count);
  move_back(tree);
  tree.rounds.insert(tree.rounds.begin(), std::move(chain));
}

} // namespace whorl::pattern
