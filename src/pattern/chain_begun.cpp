#include "pattern/chain_begun.hpp"

#include "pattern/costs.hpp"
#include "pattern/effect.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::uint32_t least_chain = 4; ///< that is no starting chain

std::vector<stitch::StitchKind> all_kinds(const Reading& reading,
                                          const std::vector<stitch::StitchKind>& kinds) {
  std::vector<stitch::StitchKind> all = kinds;
  all.insert(all.end(), reading.new_kinds.begin(), reading.new_kinds.end());
  return all;
}

bool is_stitch(const Node& node) { return node.kind == NodeKind::work && node.work.act == Act::stitch; }

/// "6 ch + 1 turning ch" is a chain of seven.
void join_chains(Reading& reading, const std::vector<stitch::StitchKind>& kinds) {
  const NodeId chain = reading.nodes[reading.body].child;
  if (chain == no_node || !is_stitch(reading.nodes[chain])) return;
  Node& made = reading.nodes[chain];
  const NodeId next = made.next;
  if (next == no_node || !is_stitch(reading.nodes[next])) return;
  const Node& more = reading.nodes[next];
  if (!is_chain(kinds[made.work.kind]) || more.work.kind != made.work.kind || made.work.counts ||
      more.work.counts || made.work.to_end || more.work.to_end)
    return;
  made.work.times += more.work.times;
  made.span.end = more.span.end;
  made.next = more.next;
}

/// "ch 4, sk 1, 3 sc": takes out the chains skipped behind the chain that the body begins with, and counts
/// them.
std::uint32_t take_skipped(Reading& reading) {
  const NodeId chain = reading.nodes[reading.body].child;
  if (chain == no_node || !is_stitch(reading.nodes[chain])) return 0;
  const NodeId next = reading.nodes[chain].next;
  if (next == no_node || reading.nodes[next].kind != NodeKind::work) return 0;
  const Work& skip = reading.nodes[next].work;
  if (skip.act != Act::skip || skip.to_end || skip.times >= least_chain) return 0;
  reading.nodes[chain].next = reading.nodes[next].next;
  return skip.times;
}

/// "Ch 20 | ch 3 (counts as dc), 19 dc": the chains that stand for the first stitch lengthen the chain; how
/// many they are.
std::uint32_t take_counting(Reading& reading, const std::vector<stitch::StitchKind>& kinds) {
  const NodeId chain = reading.nodes[reading.body].child;
  if (chain == no_node || !is_stitch(reading.nodes[chain])) return 0;
  Node& made = reading.nodes[chain];
  if (made.next == no_node || !is_stitch(reading.nodes[made.next])) return 0;
  const Node& more = reading.nodes[made.next];
  if (!is_chain(kinds[made.work.kind]) || !is_chain(kinds[more.work.kind]) || !more.work.counts ||
      made.work.counts || made.work.to_end)
    return 0;
  made.work.times += more.work.times;
  made.span.end = more.span.end;
  const std::uint32_t counting = more.work.times;
  made.next = more.next;
  return counting;
}

/// The first stitch behind a chain that the body begins with; no_node if it begins otherwise.
NodeId behind_chain(const Reading& reading, const std::vector<stitch::StitchKind>& kinds) {
  const NodeId chain = reading.nodes[reading.body].child;
  if (chain == no_node || !is_stitch(reading.nodes[chain])) return no_node;
  const Work& made = reading.nodes[chain].work;
  if (!is_chain(kinds[made.kind]) || made.counts || made.to_end || made.times < least_chain) return no_node;
  const NodeId first = reading.nodes[chain].next;
  if (first == no_node || !is_stitch(reading.nodes[first])) return no_node;
  const Work& work = reading.nodes[first].work;
  const bool whole = work.loops == 0 || work.loops == stitch::third; // a chain's third loop is its back
  const bool plain = work.where == Where::next && kinds[work.kind].takes == 1 && whole;
  return plain && made.times > static_cast<std::uint32_t>(stitch::shape_of(kinds[work.kind]).height)
             ? first
             : no_node;
}

/// Puts the stitch into the chain that its height asks for, those behind it into the next.
void put_in_chain(Reading& reading, NodeId first, std::uint16_t nth) {
  reading.nodes[first].work.loops = 0;
  Node rest = reading.nodes[first];
  Work& work = reading.nodes[first].work;
  work.where = Where::chain;
  work.nth = nth;
  work.times = 1;
  work.to_end = false;
  work.leave = 0;
  if (!rest.work.to_end && rest.work.times == 1) return;
  if (!rest.work.to_end) --rest.work.times;
  reading.nodes.push_back(rest);
  reading.nodes[first].next = static_cast<NodeId>(reading.nodes.size() - 1);
}

} // namespace

namespace {

/// Whether a reading says itself what it begins in; "on the other side" only goes on round a chain.
bool says_start(const Reading& reading) {
  return reading.effect.starts &&
         std::any_of(reading.nodes.begin(), reading.nodes.end(), [](const Node& node) {
           const bool into = node.work.where == Where::chain || node.work.where == Where::ring;
           return node.kind != NodeKind::sequence &&
                  (into || (opens_edge(node.work.act) && node.work.act != Act::other_side));
         });
}

} // namespace

void begin_in_chain(std::vector<Reading>& readings, const std::vector<stitch::StitchKind>& kinds) {
  if (readings.empty() || says_start(readings.front()) || readings.front().body == no_node) return;
  std::vector<Reading> begun;
  for (const Reading& reading : readings) {
    const std::vector<stitch::StitchKind> all = all_kinds(reading, kinds);
    Reading other = reading;
    join_chains(other, all);
    const std::uint32_t counting = take_counting(other, all);
    const std::uint32_t skipped = counting > 0 ? counting + 1 : take_skipped(other);
    const NodeId first = behind_chain(other, all);
    if (first == no_node) continue;
    const int height = stitch::shape_of(all[other.nodes[first].work.kind]).height;
    const auto below = skipped > 0 ? skipped : static_cast<std::uint32_t>(std::max(height, 1));
    put_in_chain(other, first, static_cast<std::uint16_t>(below + 1));
    other.nodes[first].work.counts = counting > 0;
    other.effect = effect_of(other.nodes, other.body, all);
    begun.push_back(std::move(other));
  }
  readings.insert(readings.begin(), begun.begin(), begun.end());
}

} // namespace whorl::pattern
