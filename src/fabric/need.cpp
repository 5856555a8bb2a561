#include "fabric/need.hpp"

#include "pattern/effect.hpp"

#include <algorithm>

namespace whorl::fabric {
namespace {

using pattern::Node;
using pattern::NodeId;
using pattern::NodeKind;
using pattern::Tree;
using pattern::Where;
using pattern::Work;

std::uint64_t plus(std::uint64_t a, std::uint64_t b) { return std::min(beyond, a + b); }

std::uint64_t times(std::uint64_t a, std::uint64_t n) {
  if (a == 0 || n == 0) return 0;
  return a > beyond / n ? beyond : a * n;
}

Need times(Need pass, std::uint64_t n) {
  if (pass.slips == pass.uses || n == 0) pass.slips = times(pass.slips, n);
  pass.uses = times(pass.uses, n);
  pass.stitches = times(pass.stitches, n);
  pass.makes = times(pass.makes, n);
  pass.spaces = times(pass.spaces, n);
  pass.gaps = times(pass.gaps, n);
  pass.centres = times(pass.centres, n);
  return pass;
}

Need blocked(Hurdle hurdle) {
  Need need;
  need.hurdle = hurdle;
  return need;
}

/// What runs to the end has no figures of its own: they depend on the edge.
Need to_the_end(const Need& pass) {
  Need need;
  need.to_end = true;
  need.starts = pass.starts;
  need.chains = pass.chains;
  need.places_something = true;
  need.hurdle = pass.hurdle;
  return need;
}

Need once_or_more(const Need& pass, const Work& work) {
  return work.to_end ? to_the_end(pass) : times(pass, work.times);
}

/// Slip stitches at the end of a work after which `next` follows.
std::uint64_t ending_slips(const Need& need, const Need& next) {
  if (next.to_end) return 0;
  if (next.uses == 0) return need.slips;
  return next.slips < next.uses ? next.slips : plus(need.slips, next.slips);
}

/// Adds what follows. Once an edge was opened in this very work, nothing more is used of the one before.
void follow(Need& need, const Need& next) {
  if (!need.starts) {
    need.slips = ending_slips(need, next);
    need.uses = plus(need.uses, next.uses);
    need.spaces = plus(need.spaces, next.spaces);
    need.gaps = plus(need.gaps, next.gaps);
    need.centres = plus(need.centres, next.centres);
    need.chains |= next.chains;
  }
  const bool only_chains = need.uses == 0 && !need.to_end && need.stitches > 0;
  need.starts |= next.joins && only_chains;
  need.stitches = plus(need.stitches, next.stitches);
  need.makes = plus(need.makes, next.makes);
  need.to_end |= next.to_end;
  need.starts |= next.starts;
  need.places_something |= next.places_something;
  if (need.hurdle == Hurdle::nothing) need.hurdle = next.hurdle;
}

class Measure {
public:
  /// `carried`: a turning chain that the next row begins with; it is no part of this one.
  Measure(const Tree& tree, const std::vector<Need>& earlier, NodeId carried)
      : tree_(tree), earlier_(earlier), carried_(carried) {}

  Need children(const Node& node, bool placed, int depth) const {
    Need need;
    bool led = false;
    for (NodeId id = node.child; id != pattern::no_node; id = tree_.nodes[id].next) {
      if (id == carried_) continue;
      const Node& child = tree_.nodes[id];
      Need own = of(child, placed || need.places_something, depth + 1);
      if (led && is_counted_chain(child)) own.uses = 0; // it stands in the space
      led = leads_into_space(child);
      if (led && need.slips == need.uses) need.slips = need.uses = 0; // the round begins behind them
      follow(need, own);
    }
    return need;
  }

  Need of(const Node& node, bool placed, int depth) const {
    if (depth > deepest) return blocked(Hurdle::too_deep);
    switch (node.kind) {
    case NodeKind::work:
      return of_work(node.work, placed);
    case NodeKind::repeat:
      return once_or_more(children(node, placed, depth), node.work);
    case NodeKind::group:
      return of_group(node, placed, depth);
    case NodeKind::reference:
      return of_round(node.round);
    case NodeKind::unread:
      return blocked(Hurdle::unread);
    case NodeKind::sequence:
    case NodeKind::loops:
    case NodeKind::yarn:
      break;
    }
    return children(node, placed, depth);
  }

private:
  bool is_counted_chain(const Node& node) const {
    const Work& work = node.work;
    return node.kind == NodeKind::work && work.act == pattern::Act::stitch && work.counts &&
           work.kind < tree_.kinds.size() && tree_.kinds[work.kind].takes == 0;
  }

  /// Slip stitches that lead to a chain space, where a round begins.
  bool leads_into_space(const Node& node) const {
    const Work& work = node.work;
    if (node.kind != NodeKind::work) return false;
    if (work.act == pattern::Act::travel) return true;
    return work.act == pattern::Act::stitch && work.where == Where::space && work.kind < tree_.kinds.size() &&
           is_slip(tree_.kinds[work.kind]);
  }

  Need of_round(std::uint32_t round) const {
    return round < earlier_.size() ? earlier_[round] : blocked(Hurdle::no_round);
  }

  static Need of_place(Where where, std::uint64_t places, bool placed) {
    Need need;
    need.places_something = true;
    const bool found =
        where == Where::next || where == Where::any || where == Where::any_chain || where == Where::last;
    if (found || (where == Where::same && !placed)) need.uses = places;
    need.chains = where == Where::any_chain;
    if (where == Where::space) need.spaces = 1;
    if (where == Where::between) need.gaps = 1;
    if (where == Where::centre) need.centres = 1;
    need.starts = where == Where::chain || where == Where::ring;
    return need;
  }

  Need of_work(const Work& work, bool placed) const {
    switch (work.act) {
    case pattern::Act::stitch:
      return of_stitch(work, placed);
    case pattern::Act::skip:
      return once_or_more(of_place(work.where, 1, placed), work);
    case pattern::Act::ring:
    case pattern::Act::join:
    case pattern::Act::turn:
    case pattern::Act::start_here:
    case pattern::Act::travel:
    case pattern::Act::other_side:
    case pattern::Act::row_ends:
    case pattern::Act::top_edge:
    case pattern::Act::all_edges:
    case pattern::Act::free_loops:
    case pattern::Act::skipped:
    case pattern::Act::part_edge:
      break;
    }
    Need need;
    need.starts = pattern::opens_edge(work.act);
    need.joins = work.act == pattern::Act::join;
    need.stitches = need.joins ? 1 : 0;
    return need;
  }

  Need of_stitch(const Work& work, bool placed) const {
    if (work.kind >= tree_.kinds.size()) return blocked(Hurdle::unread);
    const stitch::StitchKind& kind = tree_.kinds[work.kind];
    Need pass;
    if (work.counts && kind.takes == 0) return of_counted_chain(work, placed);
    const std::uint64_t layers = work.into == pattern::Into::both_layers ? 2 : 1;
    if (kind.takes > 0) pass = of_place(work.where, static_cast<std::uint64_t>(kind.takes) * layers, placed);
    pass.stitches = work.in_one;
    pass.makes = static_cast<std::uint64_t>(std::max(0, kind.makes)) * work.in_one;
    if (is_slip(kind)) pass.slips = pass.uses;
    Need need = once_or_more(pass, work);
    if (work.counts) need.makes = plus(need.makes, 1); // the chains skipped at the hook
    // Only the first of several in the same place can be the one that finds it.
    if (work.where == Where::same && !work.to_end) {
      need.uses = pass.uses;
      need.slips = pass.slips;
    }
    return need;
  }

  /// It stands on one place and is worked into as one stitch.
  static Need of_counted_chain(const Work& work, bool placed) {
    Need need = of_place(work.where, 1, placed);
    need.stitches = work.times;
    need.makes = 1;
    return need;
  }

  Need of_group(const Node& node, bool placed, int depth) const {
    Need pass = of_place(node.work.where, 1, placed);
    const Need inside = children(node, true, depth);
    pass.stitches = inside.stitches;
    pass.makes = inside.makes;
    pass.hurdle = inside.to_end ? Hurdle::unread : inside.hurdle;
    Need need = once_or_more(pass, node.work);
    if (node.work.counts) need.makes = plus(need.makes, 1); // the chains skipped at the hook
    return need;
  }

  const Tree& tree_;
  const std::vector<Need>& earlier_;
  NodeId carried_;
};

} // namespace

Need need_of(const Tree& tree, NodeId body, const std::vector<Need>& earlier) {
  if (body >= tree.nodes.size()) return blocked(Hurdle::unread);
  return Measure(tree, earlier, pattern::carried_chain(tree.nodes, body, tree.kinds))
      .of(tree.nodes[body], false, 0);
}

Need need_of_pass(const Tree& tree, const Node& repeat, const std::vector<Need>& earlier) {
  return Measure(tree, earlier, pattern::no_node).children(repeat, true, 0);
}

std::vector<Need> needs_of(const Tree& tree) {
  std::vector<Need> needs;
  needs.reserve(tree.rounds.size());
  for (const pattern::RoundText& text : tree.rounds) needs.push_back(need_of(tree, text.body, needs));
  return needs;
}

bool is_slip(const stitch::StitchKind& kind) { return kind.name == "sl st"; }

} // namespace whorl::fabric
