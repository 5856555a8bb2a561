#include "pattern/effect.hpp"

#include "pattern/arches.hpp"
#include "pattern/reading.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

constexpr std::uint32_t largest = 0xFFFFFFFF;

std::uint32_t add(std::uint32_t a, std::uint32_t b) { return a > largest - b ? largest : a + b; }

std::uint32_t multiply(std::uint64_t a, std::uint64_t b) {
  if (b != 0 && a > largest / b) return largest;
  return static_cast<std::uint32_t>(a * b);
}

/// The nodes of one body and what their kinds are; and how far the work on it has come.
struct Body {
  const std::vector<Node>* nodes;
  const std::vector<stitch::StitchKind>* kinds;
  std::uint32_t chains = 0;      ///< worked before the first stitch
  std::uint32_t nth = 0;         ///< the chain from the hook at which they were opened; 0: they were not
  std::int64_t open = 0;         ///< … and how many are left along the side that is worked
  bool far_side = false;         ///< … their other side
  bool placed = false;           ///< a place was taken, so that `same` has a meaning
  bool several = false;          ///< two or more went into it
  bool ended = false;            ///< something ran to the end of the chain
  bool head = true;              ///< not in a repeat or group
  bool begun = false;            ///< a stitch was worked that is no slip stitch
  bool points = false;           ///< … the first is one: a leaf that ends as it began
  bool led = false;              ///< a slip stitch led into a chain space, which stays open
  const Node* carried = nullptr; ///< the turning chain that belongs to the next row

  const stitch::StitchKind& kind_of(const Work& work) const {
    return (*kinds)[std::min<std::size_t>(work.kind, kinds->size() - 1)];
  }
};

Effect effect_of_node(Body& body, const Node& node, std::uint32_t tail);

/// From the far end back; the chain there is left out where several went round it.
void open_far_side(Body& body) {
  if (body.nth == 0 || body.far_side) return;
  body.far_side = true;
  body.ended = false;
  body.open = std::int64_t{body.chains} - body.nth + (body.several ? 0 : 1);
}

/// Chains worked before the first stitch are the edge it is worked along.
void follow_chain(Body& body, const Work& work) {
  const bool chain = work.act == Act::stitch && is_chain(body.kind_of(work)) && !work.counts;
  if (chain && !body.placed) body.chains = add(body.chains, work.times);
  if (work.act == Act::other_side) open_far_side(body);
  if (work.where != Where::chain || body.chains < work.nth || body.nth == work.nth) return;
  body.nth = work.nth;
  body.open = body.chains - work.nth;
  body.far_side = body.ended = false;
}

/// Along a chain the end is known: what runs to it is counted out, but for what it leaves and what follows.
Effect count_out(Body& body, const Effect& effect, std::uint32_t tail) {
  if (body.nth == 0 || effect.pass_uses == 0 || effect.passes_any) return effect;
  if (body.open <= 0 && body.several) open_far_side(body);
  const std::int64_t room = body.open - std::max(effect.leave, tail);
  const std::int64_t passes = std::max<std::int64_t>(0, room) / effect.pass_uses;
  Effect out;
  out.starts = effect.starts;
  out.uses = add(effect.uses, multiply(static_cast<std::uint64_t>(passes), effect.pass_uses));
  out.makes = add(effect.makes, multiply(static_cast<std::uint64_t>(passes), effect.pass_makes));
  body.ended = true;
  return out;
}

/// What was worked is used up of a chain's side.
Effect used(Body& body, const Effect& effect, std::uint32_t tail) {
  const Effect out = count_out(body, effect, tail);
  body.open -= out.uses;
  return out;
}

bool takes_place(const Body& body, const Work& work) {
  return work.act == Act::skip || (work.act == Act::stitch && (body.kind_of(work).takes > 0 || work.counts));
}

/// A chain that is joined before anything else is a ring.
bool joins_chain(const Body& body, const Work& work) {
  return work.act == Act::join && body.chains > 0 && !body.placed;
}

/// "sc in each ch around" goes along all of them.
void open_ring_of_chains(Body& body) {
  body.nth = 1;
  body.open = body.chains;
  body.far_side = true;
}

/// At the head of a round a slip stitch into a chain space only leads there.
bool leads_into_space(const Body& body, const Work& work) {
  return body.head && !body.begun && work.where == Where::space && work.times == 1 &&
         slips(work, body.kind_of(work));
}

/// What stays where a slip stitch led goes into that chain space.
void go_where_led(Body& body, bool stays, Effect& effect) {
  if (body.led && stays) effect.uses = 0, effect.spaces = 1;
  body.led = false;
}

Effect effect_of_piece(Body& body, const Work& work, std::uint32_t tail) {
  if (work.act == Act::travel) {
    body.led = body.placed = true;
    return {};
  }
  if (leads_into_space(body, work)) {
    body.led = body.placed = true;
    return {};
  }
  const bool same = work.where == Where::same && body.placed;
  follow_chain(body, work);
  Effect one = effect_of_work(work, body.kind_of(work), body.placed);
  if (joins_chain(body, work)) open_ring_of_chains(body), one.starts = true;
  one = used(body, one, tail);
  if (!takes_place(body, work)) return one;
  go_where_led(body, same || (work.counts && body.kind_of(work).takes == 0), one);
  body.begun = body.begun || !slips(work, body.kind_of(work));
  const bool together = work.where == Where::chain || work.where == Where::same;
  body.several = same || work.in_one > 1 || (together && work.times > 1);
  if (!body.placed) body.points = slips(work, body.kind_of(work));
  body.placed = true;
  return one;
}

Effect effect_of_children(Body& body, NodeId first, std::uint32_t tail);

/// All of a group goes into one place; nothing in it uses the edge.
Effect effect_of_group(Body& body, const Node& node, std::uint32_t tail) {
  Body inside = body;
  inside.placed = true;
  inside.head = false;
  inside.nth = 0;
  const Effect inner = effect_of_children(inside, node.child, 0);
  follow_chain(body, node.work);
  Effect all = into_one_place(node.work, inner);
  if (node.work.where == Where::same && !body.placed) all.uses = 1;
  go_where_led(body, node.work.where == Where::same, all);
  all = used(body, all, tail);
  body.placed = body.begun = true;
  body.several = inner.makes > 1;
  return all;
}

Effect effect_of_repeat(Body& body, const Node& node, std::uint32_t tail) {
  Body once = body;
  once.nth = node.work.to_end ? 0 : body.nth;
  once.head = once.led = false;
  const Effect inner = effect_of_children(once, node.child, tail);
  if (once.nth != body.nth && once.nth != 0) { // a chain was opened in it
    const bool head = body.head;
    body = once;
    body.head = head;
  }
  Effect all = node.work.to_end ? to_end(inner, node.work.leave) : times(inner, node.work.times);
  body.led = body.led && !once.begun;
  body.begun = once.begun;
  body.placed = once.placed;
  body.several = once.several;
  body.chains = once.chains;
  return used(body, all, tail);
}

Effect effect_of_node(Body& body, const Node& node, std::uint32_t tail) {
  if (&node == body.carried) return {};
  if (node.kind == NodeKind::work) return effect_of_piece(body, node.work, tail);
  if (node.kind == NodeKind::group) return effect_of_group(body, node, tail);
  if (node.kind == NodeKind::repeat) return effect_of_repeat(body, node, tail);
  return effect_of_children(body, node.child, tail);
}

bool works_slips(const Body& body, const Node& node) {
  return node.kind == NodeKind::work && node.work.kind < body.kinds->size() &&
         slips(node.work, (*body.kinds)[node.work.kind]);
}

/// Slip stitches behind what ran to the end, or when a chain is used up, close the round.
bool slips_on(const Body& body, const Node& node, const Effect& before) {
  if (!works_slips(body, node)) return false;
  const bool used_up = body.nth > 1 && body.open <= (body.far_side && !body.points ? 1 : 0);
  return runs_to_end(before) || body.ended || used_up;
}

/// What follows needs of the same edge, up to what runs to its end again or opens another.
std::uint32_t needed_behind(const Body& body, NodeId id, std::uint32_t outside) {
  Body ahead = body;
  ahead.nth = 0;
  std::uint32_t sure = 0;
  for (; id != no_node; id = (*body.nodes)[id].next) {
    const Node& node = (*body.nodes)[id];
    if (works_slips(body, node)) continue;
    const Effect one = effect_of_node(ahead, node, 0);
    if (runs_to_end(one) || one.starts) return sure;
    sure = add(sure, one.uses);
  }
  return add(sure, outside);
}

Effect effect_of_children(Body& body, NodeId first, std::uint32_t outside) {
  Effect all;
  for (NodeId id = first; id != no_node; id = (*body.nodes)[id].next) {
    const Node& node = (*body.nodes)[id];
    if (slips_on(body, node, all)) continue;
    if (node.kind == NodeKind::work && leads_into_space(body, node.work))
      all.uses = 0; // the round begins behind the slip stitches, and ends with what they went into
    const bool may_end = node.kind != NodeKind::work || node.work.to_end;
    const std::uint32_t tail = may_end && body.nth != 0 ? needed_behind(body, node.next, outside) : 0;
    all = then(all, effect_of_node(body, node, tail));
  }
  return all;
}

} // namespace

bool slips(const Work& work, const stitch::StitchKind& kind) {
  return work.act == Act::stitch && kind.name == "sl st" && !work.to_end;
}

bool opens_edge(Act act) {
  return act == Act::ring || act == Act::other_side || act == Act::free_loops || act == Act::skipped ||
         act == Act::part_edge || act == Act::row_ends || act == Act::top_edge || act == Act::all_edges;
}

namespace {

/// Whether each pass goes into stitches and what stands between them.
void put_any(const Work& work, Effect& effect) {
  effect.passes_chains = work.where == Where::any_chain;
  effect.passes_any = work.to_end && (effect.passes_chains || work.where == Where::any);
  if (effect.passes_any && work.in_space != 0)
    effect.pass_more_in_space = std::int64_t{work.in_space} - std::int64_t{work.in_one};
  if (effect.passes_any && work.in_corner != 0)
    effect.pass_more_in_corner = std::int64_t{work.in_corner} - std::int64_t{work.in_one};
}

} // namespace

Effect effect_of_work(const Work& work, const stitch::StitchKind& kind, bool placed) {
  Effect effect;
  if (opens_edge(work.act)) effect.starts = true;
  if (work.act == Act::skip && work.where == Where::space) return {.spaces = work.times};
  if (work.act == Act::skip) effect.uses = work.times;
  if (work.act == Act::skip && work.to_end) return to_end({.uses = 1}, work.leave);
  if (work.act != Act::stitch) return effect;
  const bool same = work.where == Where::same;
  if (work.counts && kind.takes == 0) return {.uses = same && placed ? 0U : 1U, .makes = 1};
  effect.starts = work.where == Where::chain || work.where == Where::ring;
  const auto takes = static_cast<std::uint32_t>(kind.takes) * (work.into == Into::both_layers ? 2U : 1U);
  if (work.where == Where::space) effect.spaces = takes == 0 ? 0 : work.times;
  const bool by_corner = work.in_corner != 0 && work.where == Where::next;
  effect.in_centres = by_corner || work.where == Where::centre;
  effect.in_gaps = effect.in_centres || work.where == Where::between;
  const bool skipped = work.where == Where::skipped; // they were used up when they were skipped
  const bool no_stitch = effect.starts || goes_between(work.where) || skipped || (same && placed);
  effect.uses = no_stitch ? 0 : multiply(takes, same ? 1 : work.times);
  effect.folded = work.into == Into::both_layers;
  put_any(work, effect);
  effect.apart = multiply(static_cast<std::uint32_t>(stitch::back_along(kind).size()), work.times);
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
  both.folded = a.folded || b.folded;
  both.apart = add(a.apart, b.apart);
  both.spaces = add(a.spaces, b.spaces);
  both.in_gaps = a.in_gaps || b.in_gaps;
  both.in_centres = a.in_centres || b.in_centres;
  both.passes_chains = a.passes_chains || b.passes_chains;
  if (!runs_to_end(b)) return both;
  both.pass_uses = b.pass_uses;
  both.pass_makes = b.pass_makes;
  both.pass_spaces = b.pass_spaces;
  both.pass_apart = b.pass_apart;
  both.passes_any = b.passes_any;
  both.pass_more_in_space = b.pass_more_in_space;
  both.pass_more_in_corner = b.pass_more_in_corner;
  both.leave = b.leave;
  return both;
}

Effect times(const Effect& inner, std::uint32_t n) {
  Effect all = inner;
  all.uses = multiply(inner.uses, n);
  all.makes = multiply(inner.makes, n);
  all.spaces = multiply(inner.spaces, n);
  all.apart = multiply(inner.apart, n);
  return all;
}

Effect to_end(const Effect& inner, std::uint32_t leave) {
  const bool only_gaps = inner.in_centres || (inner.in_gaps && inner.uses == 0 && inner.spaces == 0);
  if (runs_to_end(inner) || (inner.uses == 0 && inner.spaces == 0 && !only_gaps)) return inner;
  Effect effect;
  effect.pass_spaces = only_gaps ? 1 : inner.spaces;
  effect.in_gaps = inner.in_gaps;
  effect.in_centres = inner.in_centres;
  effect.passes_any = inner.passes_any;
  effect.pass_more_in_space = inner.pass_more_in_space;
  effect.pass_more_in_corner = inner.pass_more_in_corner;
  effect.passes_chains = inner.passes_chains;
  effect.folded = inner.folded;
  effect.pass_uses = inner.in_centres ? 0 : inner.uses; // the groups say how many passes there are
  effect.pass_makes = inner.makes;
  effect.pass_apart = inner.apart;
  effect.leave = leave;
  effect.starts = inner.starts;
  return effect;
}

Effect into_one_place(const Work& work, const Effect& inner) {
  Effect effect;
  effect.starts = work.where == Where::ring || work.where == Where::chain;
  const bool space = goes_between(work.where);
  effect.uses = effect.starts || space || work.where == Where::same ? 0 : work.times;
  effect.spaces = work.where == Where::space ? work.times : 0;
  effect.in_centres = work.where == Where::centre;
  effect.in_gaps = effect.in_centres || work.where == Where::between;
  put_any(work, effect);
  effect.makes = multiply(inner.makes, work.times);
  effect.apart = multiply(inner.apart, work.times);
  if (work.counts) effect.makes = add(effect.makes, 1); // the chains skipped at the hook
  return work.to_end ? to_end(effect, work.leave) : effect;
}

bool runs_to_end(const Effect& effect) { return effect.pass_uses != 0 || effect.pass_spaces != 0; }

bool is_chain(const stitch::StitchKind& kind) {
  return kind.takes == 0 && !stitch::is_picot(kind) && stitch::shape_of(kind).legs == 0;
}

namespace {

bool works_chain(const Node& node, const std::vector<stitch::StitchKind>& kinds) {
  const Work& work = node.work;
  return node.kind == NodeKind::work && work.act == Act::stitch && work.kind < kinds.size() &&
         is_chain(kinds[work.kind]);
}

bool holds_a_list(NodeKind kind) {
  return kind == NodeKind::sequence || kind == NodeKind::loops || kind == NodeKind::yarn;
}

bool is_turn(const Node& node) { return node.kind == NodeKind::work && node.work.act == Act::turn; }

} // namespace

NodeId carried_chain(const std::vector<Node>& nodes, NodeId body,
                     const std::vector<stitch::StitchKind>& kinds) {
  const NodeId chain = turning_chain(nodes, body, kinds);
  return chain != no_node && nodes[chain].work.counts ? chain : no_node;
}

NodeId turning_chain(const std::vector<Node>& nodes, NodeId body,
                     const std::vector<stitch::StitchKind>& kinds) {
  while (body != no_node && holds_a_list(nodes[body].kind)) {
    NodeId before = no_node, last = no_node;
    for (NodeId id = nodes[body].child; id != no_node; id = nodes[id].next) before = last, last = id;
    if (last == no_node) return no_node;
    if (is_turn(nodes[last]))
      return before != no_node && works_chain(nodes[before], kinds) ? before : no_node;
    body = last;
  }
  return no_node;
}

namespace {

/// Whether places of several kinds are named: "sc in next sc, skip 2 dc, dc in next sc". What lies between
/// them may be passed by.
bool names_several(const std::vector<Node>& nodes, NodeId first, stitch::KindId& named) {
  for (NodeId id = first; id != no_node; id = nodes[id].next) {
    const stitch::KindId here = nodes[id].work.named;
    if (here != stitch::no_kind && named != stitch::no_kind && here != named) return true;
    if (here != stitch::no_kind) named = here;
    if (nodes[id].child != no_node && names_several(nodes, nodes[id].child, named)) return true;
  }
  return false;
}

} // namespace

Effect effect_of(const std::vector<Node>& nodes, NodeId body, const std::vector<stitch::StitchKind>& kinds) {
  if (body == no_node || kinds.empty()) return {};
  const NodeId carried = carried_chain(nodes, body, kinds);
  Body all{&nodes, &kinds};
  if (carried != no_node) all.carried = &nodes[carried];
  Effect effect = effect_of_node(all, nodes[body], 0);
  effect.carries = carried != no_node;
  stitch::KindId named = stitch::no_kind;
  if (!effect.starts && names_several(nodes, nodes[body].child, named)) effect.in_gaps = true;
  put_arches(nodes, body, kinds, effect);
  return effect;
}

} // namespace whorl::pattern
