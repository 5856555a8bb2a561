#include "pattern/effect.hpp"

#include "pattern/reading.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::uint32_t largest = 0xFFFFFFFF;

std::uint32_t add(std::uint32_t a, std::uint32_t b) { return a > largest - b ? largest : a + b; }

std::uint32_t multiply(std::uint64_t a, std::uint64_t b) {
  return static_cast<std::uint32_t>(std::min<std::uint64_t>(a * b, largest));
}

/// The nodes of one body and what their kinds are.
struct Body {
  const std::vector<Node>& nodes;
  const std::vector<stitch::StitchKind>& kinds;
  std::uint32_t chains = 0; ///< worked so far
  std::uint32_t open = 0;   ///< places of a chain that stitches may still go into
};

Effect effect_of_children(Body& body, NodeId first);

/// Chains worked before the first stitch are the edge it is worked along.
void follow_chain(Body& body, const Work& work, const stitch::StitchKind& kind) {
  if (work.act == Act::stitch && kind.takes == 0) body.chains = add(body.chains, work.times);
  if (work.where == Where::chain && body.chains >= work.nth) body.open = body.chains - work.nth;
}

Effect effect_of_node(Body& body, const Node& node) {
  if (node.kind == NodeKind::work) {
    const stitch::StitchKind& kind = body.kinds[std::min<std::size_t>(node.work.kind, body.kinds.size() - 1)];
    follow_chain(body, node.work, kind);
    return effect_of_work(node.work, kind);
  }
  const Effect inner = effect_of_children(body, node.child);
  if (node.kind == NodeKind::group) return into_one_place(node.work, inner);
  if (node.kind != NodeKind::repeat) return inner;
  return node.work.to_end ? to_end(inner, node.work.leave) : times(inner, node.work.times);
}

bool works_slips(const Body& body, const Node& node) {
  return node.kind == NodeKind::work && node.work.kind < body.kinds.size() &&
         slips(node.work, body.kinds[node.work.kind]);
}

Effect effect_of_children(Body& body, NodeId first) {
  Effect all;
  for (NodeId id = first; id != no_node; id = body.nodes[id].next) {
    const Effect one = effect_of_node(body, body.nodes[id]);
    if (!works_slips(body, body.nodes[id]) || all.pass_uses == 0) all = then(all, one);
  }
  return all;
}

/// Along a chain the end is known: what runs to it is counted out.
Effect along_chain(Effect effect, std::uint32_t open) {
  if (!effect.starts || effect.pass_uses == 0 || open < effect.uses) return effect;
  const std::uint32_t passes = (open - effect.uses) / effect.pass_uses;
  effect.uses = add(effect.uses, multiply(passes, effect.pass_uses));
  effect.makes = add(effect.makes, multiply(passes, effect.pass_makes));
  effect.pass_uses = effect.pass_makes = effect.leave = 0;
  return effect;
}

} // namespace

bool slips(const Work& work, const stitch::StitchKind& kind) {
  return work.act == Act::stitch && kind.name == "sl st" && !work.to_end;
}

bool opens_edge(Act act) {
  return act == Act::ring || act == Act::other_side || act == Act::free_loops || act == Act::skipped ||
         act == Act::part_edge;
}

Effect effect_of_work(const Work& work, const stitch::StitchKind& kind) {
  Effect effect;
  if (opens_edge(work.act)) effect.starts = true;
  if (work.act == Act::skip) effect.uses = work.times;
  if (work.act == Act::skip && work.to_end) return to_end(effect, work.leave);
  if (work.act != Act::stitch) return effect;
  if (work.counts && kind.takes == 0) return {.uses = 1, .makes = 1};
  effect.starts = work.where == Where::chain || work.where == Where::ring;
  const bool uses_none = effect.starts || work.where == Where::same;
  const auto takes = static_cast<std::uint32_t>(kind.takes) * (work.into == Into::both_layers ? 2U : 1U);
  effect.uses = uses_none ? 0 : multiply(takes, work.times);
  const std::uint32_t tops = takes == 0 ? 0 : static_cast<std::uint32_t>(kind.makes);
  effect.makes = multiply(multiply(tops, work.in_one), work.times);
  if (work.counts) effect.makes = add(effect.makes, 1); // the chains skipped at the hook
  return work.to_end ? to_end(effect, work.leave) : effect;
}

Effect then(const Effect& a, const Effect& b) {
  Effect both = a;
  both.uses = add(a.uses, b.uses);
  both.makes = add(a.makes, b.makes);
  both.starts = a.starts || b.starts;
  if (b.pass_uses == 0) return both;
  both.pass_uses = b.pass_uses;
  both.pass_makes = b.pass_makes;
  both.leave = b.leave;
  return both;
}

Effect times(const Effect& inner, std::uint32_t n) {
  Effect all = inner;
  all.uses = multiply(inner.uses, n);
  all.makes = multiply(inner.makes, n);
  return all;
}

Effect to_end(const Effect& inner, std::uint32_t leave) {
  if (inner.pass_uses != 0 || inner.uses == 0) return inner;
  Effect effect;
  effect.pass_uses = inner.uses;
  effect.pass_makes = inner.makes;
  effect.leave = leave;
  effect.starts = inner.starts;
  return effect;
}

Effect into_one_place(const Work& work, const Effect& inner) {
  Effect effect;
  effect.starts = work.where == Where::ring || work.where == Where::chain;
  effect.uses = effect.starts || work.where == Where::same ? 0 : work.times;
  effect.makes = multiply(inner.makes, work.times);
  return work.to_end ? to_end(effect, work.leave) : effect;
}

Effect effect_of(const std::vector<Node>& nodes, NodeId body, const std::vector<stitch::StitchKind>& kinds) {
  if (body == no_node || kinds.empty()) return {};
  Body all{nodes, kinds};
  const Effect effect = effect_of_node(all, nodes[body]);
  return along_chain(effect, all.open);
}

Outcome outcome(const Effect& effect, std::int64_t open) {
  Outcome out;
  out.makes = effect.makes;
  if (effect.starts) return out;
  const std::int64_t rest = open - static_cast<std::int64_t>(effect.uses);
  out.past_end = std::max<std::int64_t>(-rest, 0);
  if (effect.pass_uses == 0) {
    out.left_over = std::max<std::int64_t>(rest, 0);
  } else if (rest > 0) {
    out.makes += rest / effect.pass_uses * static_cast<std::int64_t>(effect.pass_makes);
    out.remainder = rest % effect.pass_uses;
  }
  return out;
}

} // namespace whorl::pattern
