#include "pattern/arches.hpp"

#include "pattern/effect.hpp"

#include <algorithm>

namespace whorl::pattern {

namespace {

/// Figures stop growing here.
constexpr std::int64_t most = std::int64_t{1} << 40;

std::int64_t multiply(std::int64_t a, std::int64_t n) {
  return a == 0 || n == 0 ? 0 : a > most / n ? most : a * n;
}

/// Chains, and how many runs of them are closed.
struct Chains {
  std::int64_t spaces = 0;
  std::int64_t chains = 0;
};

/// A stretch of work as its chains see it: runs between stitches are closed, those at its ends wait.
struct Stretch {
  bool stitches = false;   ///< something other than chains is in it
  bool climbs = false;     ///< chains that come next climb
  bool slips = false;      ///< so far only slip stitches: chains as high as what follows climb
  bool as_high = false;    ///< it is such chains
  bool leads = false;      ///< a slip stitch into a space, from where chains climb at the head of a round
  std::int64_t before = 0; ///< chains before its first stitch; all, where it has none
  std::int64_t behind = 0; ///< chains behind its last
  Chains between;
  Chains pass;           ///< of each pass that runs to the end
  bool stays = false;    ///< its first chains are a space wherever it stands
  bool begins = false;   ///< nothing of the round stands before it
  std::int64_t head = 0; ///< … chains at the round's head, which climb, or lead over skipped stitches
  bool skips = false;    ///< stitches were skipped behind them
  int height = 0;        ///< of its first stitch
};

/// The run where one stretch meets the next.
Chains meeting(std::int64_t chains) { return {chains > 0 ? 1 : 0, chains}; }

Chains sum(const Chains& a, const Chains& b) {
  return {std::min(most, a.spaces + b.spaces), std::min(most, a.chains + b.chains)};
}

Stretch then(Stretch a, Stretch b) {
  const bool climbs = a.climbs || (a.slips && b.as_high);
  if (climbs && b.stays) b.between = sum(b.between, meeting(b.before));
  if (climbs && a.begins && a.skips && b.stitches && leads_over(static_cast<std::uint32_t>(a.head), b.height))
    b.between = sum(b.between, meeting(a.head));
  if (climbs && a.begins && !b.stitches) a.head = std::min(most, a.head + b.before);
  if (climbs) b.before = 0;
  if (!b.stitches) {
    a.skips = a.skips || b.skips;
    a.slips = a.slips && b.before == 0;
    std::int64_t& end = a.stitches ? a.behind : a.before;
    end = std::min(most, end + b.before);
    return a;
  }
  if (!a.stitches) {
    b.climbs = b.climbs || (a.slips && b.leads);
    b.before = std::min(most, a.before + b.before);
    b.slips = a.slips && b.slips;
    return b;
  }
  Stretch both = b;
  both.climbs = b.climbs || (a.slips && b.leads);
  both.slips = a.slips && b.slips;
  both.before = a.before;
  both.between = sum(sum(a.between, b.between), meeting(a.behind + b.before));
  both.pass = b.pass.spaces != 0 ? b.pass : a.pass;
  return both;
}

Stretch repeated(Stretch one, std::int64_t times) {
  one.begins = false;
  if (times == 0) return {};
  const Chains join = meeting(one.behind + one.before);
  if (!one.stitches) one.before = multiply(one.before, times);
  if (!one.stitches) return one;
  one.between.spaces = std::min(most, multiply(one.between.spaces, times) + multiply(join.spaces, times - 1));
  one.between.chains = std::min(most, multiply(one.between.chains, times) + multiply(join.chains, times - 1));
  return one;
}

/// Each pass meets the one before it, the first none.
Stretch to_the_end(Stretch one) {
  if (!one.stitches || one.pass.spaces != 0) return one;
  const Chains join = meeting(one.behind + one.before);
  one.pass = sum(one.between, join);
  one.between = {-join.spaces, -join.chains};
  return one;
}

class Look {
public:
  Look(const std::vector<Node>& nodes, const std::vector<stitch::StitchKind>& kinds, NodeId carried)
      : nodes_(nodes), kinds_(kinds), carried_(carried) {}

  /// What stands in a round before its first stitch climbs.
  Stretch body(NodeId id) const {
    Stretch head;
    head.climbs = head.slips = head.begins = true;
    return children(nodes_[id], head);
  }

private:
  Stretch children(const Node& list, Stretch all) const {
    for (NodeId id = list.child; id != no_node; id = nodes_[id].next) {
      if (id == carried_) continue;
      const Node& node = nodes_[id];
      all = is_mark(node)   ? mark(node.work.act, all)
            : is_list(node) ? children(node, all)
                            : then(all, of(node));
    }
    return all;
  }

  static bool is_list(const Node& node) {
    return node.kind != NodeKind::work && node.kind != NodeKind::repeat && node.kind != NodeKind::group;
  }

  Stretch of(const Node& node) const {
    if (node.kind == NodeKind::work) return of_work(node.work);
    Stretch once = children(node, {});
    once.stays = repeats_within_round(nodes_, node) && once.before > 0;
    return node.work.to_end ? to_the_end(once) : repeated(once, node.work.times);
  }

  Stretch of_work(const Work& work) const {
    Stretch one;
    const stitch::StitchKind& kind = kinds_[std::min<std::size_t>(work.kind, kinds_.size() - 1)];
    if (work.act == Act::travel) one.stitches = one.slips = one.climbs = true;
    one.skips = work.act == Act::skip;
    if (work.act != Act::stitch || stitch::is_picot(kind)) return one;
    const bool chain = is_chain(kind);
    one.stitches = !chain || work.counts;
    one.slips = slips(work, kind);
    one.as_high = work.as_high;
    one.leads = one.slips && work.where == Where::space && work.times == 1;
    one.height = stitch::shape_of(kind).height;
    if (work.where == Where::chain)
      if (const std::uint32_t head = chains_of_first_space(work.nth, one.height, work.counts))
        one.between = meeting(head);
    if (!one.stitches) one.before = work.to_end ? 1 : work.times;
    return one;
  }

  static bool is_mark(const Node& node) {
    const Act act = node.work.act;
    return node.kind == NodeKind::work &&
           (act == Act::turn || act == Act::join || act == Act::part_edge || act == Act::start_here);
  }

  /// A turn lets chains climb, a chain joined to a ring is no space, nor is one that joins legs; where the
  /// leg on the hook was worked before, its chains are places of the round all the same.
  static Stretch mark(Act act, Stretch all) {
    if (act == Act::join || act == Act::start_here) {
      Stretch one;
      one.stitches = true;
      const bool ring = act == Act::join && !all.stitches;
      if (!ring) return then(all, one);
    }
    if (act == Act::part_edge && all.stitches) all.between.chains += all.behind; // they may lead away
    all.behind = 0;
    all.begins = false;
    if (!all.stitches) all.before = 0;
    all.climbs = act == Act::turn || act == Act::join || all.climbs;
    return all;
  }

  const std::vector<Node>& nodes_;
  const std::vector<stitch::StitchKind>& kinds_;
  NodeId carried_;
};

} // namespace

bool repeats_within_round(const std::vector<Node>& nodes, const Node& node) {
  if (node.kind != NodeKind::repeat || (!node.work.to_end && node.work.times < 2)) return false;
  for (NodeId id = node.child; id != no_node; id = nodes[id].next) {
    const Act act = nodes[id].work.act;
    if (nodes[id].kind == NodeKind::work && (act == Act::turn || act == Act::join || act == Act::start_here))
      return false;
  }
  return true;
}

bool leads_to_space(std::uint32_t chains, int height) {
  return height >= 1 && static_cast<int>(chains) > height;
}

std::uint32_t chains_of_first_space(std::uint32_t nth, int height, bool counts) {
  const int skipped = static_cast<int>(nth) - 1, more = skipped - height;
  if (counts) return height >= 3 && more >= 2 && more % 2 == 0 ? static_cast<std::uint32_t>(more / 2) : 0;
  return height == 1 && skipped == 3 ? 2 : 0;
}

bool leads_over(std::uint32_t chains, int height) {
  constexpr int to_low = 2; // "ch 3, skip 1, sc in next"
  return height <= 1 && static_cast<int>(chains) > height + to_low - 1;
}

void put_arches(const std::vector<Node>& nodes, NodeId body, const std::vector<stitch::StitchKind>& kinds,
                Effect& effect) {
  const Stretch all = Look(nodes, kinds, carried_chain(nodes, body, kinds)).body(body);
  const Chains made = sum(all.between, meeting(all.behind));
  effect.makes_spaces = made.spaces;
  effect.makes_chains = made.chains;
  effect.pass_makes_spaces = all.pass.spaces;
  effect.pass_makes_chains = all.pass.chains;
}

} // namespace whorl::pattern
