#include "fabric/hand.hpp"

#include <algorithm>

namespace whorl::fabric {

using pattern::Node;
using pattern::NodeId;
using pattern::NodeKind;
using pattern::Where;
using pattern::Work;

Hand::Hand(const pattern::Tree& tree, const std::vector<Need>& needs, Fabric& fabric, Edge& edge,
           std::uint32_t limit)
    : tree_(tree), needs_(needs), fabric_(fabric), edge_(edge), limit_(limit),
      steps_(std::uint64_t{16} * limit + 1000) {
  for (const stitch::StitchKind& kind : tree.kinds) {
    const stitch::Shape shape = stitch::shape_of(kind);
    Gist gist;
    gist.legs = static_cast<std::uint32_t>(shape.legs);
    gist.takes = static_cast<std::uint32_t>(std::max(0, kind.takes));
    gist.makes = static_cast<std::uint32_t>(std::max(0, kind.makes));
    gist.flags = kind.counts ? counts : 0;
    gist.chain = shape.legs == 0 && kind.takes == 0;
    gist.slip = is_slip(kind);
    gist.front_only = shape.front_loops_only;
    gists_.push_back(gist);
  }
}

void Hand::begin_part() {
  yarn_ = 1;
  side_ = Side::right;
  foundation_ = none;
  foundation_count_ = 0;
}

bool Hand::open_foundation() {
  if (!fresh_ || foundation_count_ == 0 || !edge_.is_empty()) return false;
  edge_.open_chain(foundation_, foundation_count_, 1);
  climb();
  return true;
}

Outcome Hand::work(NodeId body, const Need& need, std::uint32_t part) {
  outcome_ = Outcome{};
  part_ = part;
  taken_.clear();
  fixed_left_ = need.to_end ? need.surely() : need.uses;
  to_end_ = 0;
  arch_ = none;
  opened_at_ = 0;
  own_place_ = false;
  fresh_ = edge_.is_empty();
  Context context;
  context.yarn = yarn_;
  if (follow(body, context, 0)) close_arch();
  if (!fresh_) foundation_count_ = 0;
  return outcome_;
}

bool Hand::stop(const Node& node, const char* code, std::string message) {
  outcome_.stop = Stop{code, std::move(message), node.span};
  return false;
}

/// Work without an end or a stitch has to stop some time.
bool Hand::step(const Node& node) {
  if (steps_ == 0) return stop(node, "limit", "this repeat goes on without making a stitch");
  --steps_;
  return true;
}

bool Hand::follow(NodeId id, Context context, int depth) {
  const Node& node = tree_.nodes[id];
  if (depth > deepest) return stop(node, "limit", "this is nested too deep to be followed");
  if (!step(node)) return false;
  switch (node.kind) {
  case NodeKind::work:
    return do_work(node, id, context);
  case NodeKind::repeat:
    return work_repeat(node, context, depth);
  case NodeKind::group:
    return work_group(node, context, depth);
  case NodeKind::reference:
    return follow_reference(node, context, depth);
  case NodeKind::unread:
    return stop(node, "unread", "these words are not understood");
  case NodeKind::loops:
    context.loops = node.work.loops != 0 ? node.work.loops : context.loops;
    break;
  case NodeKind::yarn:
    context.yarn = node.work.yarn != 0 ? node.work.yarn : context.yarn;
    break;
  case NodeKind::sequence:
    break;
  }
  return follow_children(node, context, depth);
}

bool Hand::follow_children(const Node& node, Context context, int depth) {
  for (NodeId child = node.child; child != pattern::no_node; child = tree_.nodes[child].next)
    if (!follow(child, context, depth + 1)) return false;
  return true;
}

/// The body that a reference means; a round that is itself "as round 5" leads on to round 5.
NodeId Hand::body_meant(const Node& reference) {
  const Node* node = &reference;
  NodeId body = pattern::no_node;
  while (node->kind == NodeKind::reference && steps_ > 0) {
    --steps_;
    body = tree_.rounds[node->round].body;
    if (body == pattern::no_node) break;
    node = &tree_.nodes[body];
    const bool only_child = node->kind == NodeKind::sequence && node->child != pattern::no_node &&
                            tree_.nodes[node->child].next == pattern::no_node;
    if (only_child) node = &tree_.nodes[node->child];
  }
  return body;
}

bool Hand::follow_reference(const Node& node, const Context& context, int depth) {
  const NodeId body = body_meant(node);
  return body == pattern::no_node || follow(body, context, depth + 1);
}

bool Hand::do_work(const Node& node, NodeId id, const Context& context) {
  switch (node.work.act) {
  case pattern::Act::stitch:
    return work_stitches(node, id, context);
  case pattern::Act::skip:
    return skip(node);
  case pattern::Act::ring:
    return open_ring();
  case pattern::Act::join:
    return join(node, id, context);
  case pattern::Act::turn:
    return turn();
  case pattern::Act::start_here:
    return start_here();
  case pattern::Act::other_side:
  case pattern::Act::free_loops:
  case pattern::Act::skipped:
  case pattern::Act::part_edge:
    return stop(node, "unread", "this edge cannot be opened yet");
  }
  return true;
}

bool Hand::passes_to_end(const Node& node, std::uint64_t takes, std::uint64_t spaces, std::uint64_t& times) {
  if (edge_.is_ring()) return stop(node, "ring", "a ring has no end: say how many stitches go into it");
  if (takes == 0 && spaces == 0)
    return stop(node, "endless", "this repeat uses no stitch, so it never comes to the end");
  const std::uint64_t kept = std::max<std::uint64_t>(node.work.leave, fixed_left_);
  const std::uint64_t room = edge_.left() > kept ? edge_.left() - kept : 0;
  outcome_.left_on_purpose = kept - fixed_left_;
  times = takes > 0 ? room / takes : edge_.spaces_left() / spaces;
  if (takes > 0 && room % takes != 0) outcome_.uneven = Uneven{takes, room, node.span};
  return true;
}

template <class Pass>
bool Hand::passes(const Node& node, std::uint64_t takes, std::uint64_t spaces, Pass pass) {
  std::uint64_t times = node.work.times;
  if (node.work.to_end && !passes_to_end(node, takes, spaces, times)) return false;
  to_end_ += node.work.to_end ? 1 : 0;
  for (; times > 0; --times)
    if (!step(node) || !pass()) return false;
  to_end_ -= node.work.to_end ? 1 : 0;
  return true;
}

bool Hand::work_repeat(const Node& node, const Context& context, int depth) {
  const Need pass = node.work.to_end ? need_of_pass(tree_, node, needs_) : Need{};
  // What runs to the end inside comes to the end in one pass.
  if (node.work.to_end && pass.to_end) return follow_children(node, context, depth);
  return passes(node, pass.uses, pass.spaces, [&] { return follow_children(node, context, depth); });
}

bool Hand::work_group(const Node& node, const Context& context, int depth) {
  Context inside = context;
  inside.held = true;
  inside.loops = node.work.loops != 0 ? node.work.loops : context.loops;
  Gist one;
  one.takes = 1;
  const bool space = node.work.where == Where::space;
  return passes(node, space ? 0 : 1, space ? 1 : 0, [&] {
    return take(node, node.work.where, one, context) && follow_children(node, inside, depth);
  });
}

bool Hand::work_stitches(const Node& node, NodeId id, const Context& context) {
  const Work& work = node.work;
  Context inside = context;
  inside.loops = work.loops != 0 ? work.loops : context.loops;
  inside.yarn = work.yarn != 0 ? work.yarn : context.yarn;
  const stitch::KindId kind = seen_from_outside(node, work.kind, inside);
  const Gist& gist = gists_[kind];
  const bool space = work.where == Where::space;
  return passes(node, space ? 0 : gist.takes, space ? 1 : 0, [&] {
    if (!take(node, work.where, gist, inside)) return false;
    for (int i = 0; i < work.in_one; ++i)
      if (!add(node, kind, inside, id)) return false;
    return true;
  });
}

/// An invisible decrease takes front loops; asked for in back loops, it is the plain decrease.
stitch::KindId Hand::seen_from_outside(const Node& node, stitch::KindId kind, const Context& context) {
  if (!gists_[kind].front_only || context.loops != stitch::back) return kind;
  const auto plain = stitch::find_kind(tree_.kinds, "sc" + std::to_string(gists_[kind].takes) + "tog");
  if (!plain) return kind;
  outcome_.hidden.push_back(node.span);
  return *plain;
}

bool Hand::skip(const Node& node) {
  if (edge_.is_ring()) return stop(node, "ring", "in a ring there is no stitch to skip");
  return passes(node, 1, 0, [&] { return take_one(node, Where::next, false); });
}

void Hand::used() {
  if (!outcome_.opened) ++outcome_.uses;
  if (to_end_ == 0 && fixed_left_ > 0) --fixed_left_;
}

bool Hand::take(const Node& node, Where where, const Gist& gist, const Context& context) {
  if (gist.takes == 0 || context.held) return true;
  const bool same_chain = where == Where::chain && opened_at_ != 0 && opened_at_ == node.work.nth;
  if (!taken_.empty() && (where == Where::same || same_chain)) return true;
  taken_.clear();
  own_place_ = false;
  const bool one = where == Where::chain || where == Where::ring || where == Where::space;
  for (std::uint32_t i = 0; i < (one ? 1 : gist.takes); ++i)
    if (!take_one(node, where, gist.slip)) return false;
  return true;
}

bool Hand::take_one(const Node& node, Where where, bool slip) {
  if (where == Where::chain) return take_chain(node);
  std::optional<Place> place;
  if (where == Where::space) {
    place = edge_.take_space();
    if (!place) return stop(node, "past-end", "there is no chain space left to work into");
  } else {
    if (where == Where::ring && !edge_.is_ring()) {
      if (!edge_.is_empty()) return stop(node, "ring", "no ring is open here");
      open_ring();
    }
    place = where == Where::last ? edge_.take_last() : edge_.take_next();
  }
  if (place && !edge_.is_ring()) used();
  if (!place && slip) {
    place = edge_.take_own();
    own_place_ = place.has_value();
  }
  if (!place) return stop(node, "past-end", "there is no stitch left to work into");
  taken_.push_back(*place);
  return true;
}

bool Hand::take_chain(const Node& node) {
  const std::uint32_t nth = node.work.nth;
  if (nth == 0 || nth > foundation_count_) {
    const std::string have = foundation_count_ == 0
                                 ? "no chain was made"
                                 : "the chain has only " + std::to_string(foundation_count_);
    return stop(node, "past-end",
                "there is no chain number " + std::to_string(nth) + " from the hook: " + have);
  }
  begin_round_after_foundation();
  edge_.open_chain(foundation_, foundation_count_, nth);
  outcome_.start = nth == foundation_count_ ? Start::second_chain : Start::chain;
  outcome_.opened = true;
  opened_at_ = nth;
  taken_.push_back(*edge_.take_next());
  return true;
}

/// The chains that this round began with become the starting chain, a round of its own; what follows is the
/// round.
void Hand::begin_round_after_foundation() {
  Round& chain = fabric_.rounds.back();
  if (fresh_) climb();
  fresh_ = false;
  if (foundation_ < chain.first_stitch || chain.text == none) return;
  Round round = chain;
  chain.number = 0;
  chain.again = 0;
  chain.kind = pattern::RoundKind::chain;
  chain.count = foundation_count_;
  chain.stated = -1;
  chain.text = none;
  round.first_stitch = static_cast<StitchId>(fabric_.stitches.size());
  fabric_.rounds.push_back(round); // `chain` is not valid from here on
}

bool Hand::open_ring() {
  edge_.open_ring(part_);
  outcome_.start = Start::magic_ring;
  outcome_.opened = true;
  fresh_ = false;
  return true;
}

bool Hand::join(const Node& node, NodeId id, const Context& context) {
  if (fresh_ && foundation_count_ > 0) {
    begin_round_after_foundation();
    edge_.open_ring(part_);
    outcome_.start = Start::chain_ring;
    outcome_.opened = true;
    foundation_count_ = 0;
    return true;
  }
  const auto slip = stitch::find_kind(tree_.kinds, "sl st");
  const StitchId first = fabric_.rounds.back().first_stitch;
  StitchId into = first;
  while (into < fabric_.stitches.size() && !(fabric_.stitches[into].flags & counts)) ++into;
  if (!slip || into == fabric_.stitches.size())
    return stop(node, "nothing", "there is no stitch in this round to join to");
  close_arch();
  taken_.assign(1, Place{into, On::top, stitch::both});
  own_place_ = true;
  fabric_.rounds.back().joined = true;
  const bool joined = add(node, *slip, context, id);
  own_place_ = false;
  return joined;
}

/// Chains made just before the work is turned climb to the next row.
bool Hand::turn() {
  if (!fresh_) climb();
  edge_.turn();
  taken_.clear();
  side_ = side_ == Side::right ? Side::wrong : Side::right;
  Round& round = fabric_.rounds.back();
  round.turned = true;
  if (round.first_stitch == fabric_.stitches.size()) round.side = side_;
  return true;
}

/// What was worked so far belongs to no count: it moves the start.
bool Hand::start_here() {
  close_arch();
  edge_.start_here();
  for (StitchId i = fabric_.rounds.back().first_stitch; i < fabric_.stitches.size(); ++i)
    fabric_.stitches[i].flags &= static_cast<std::uint8_t>(~counts);
  return true;
}

bool Hand::add(const Node& node, stitch::KindId kind, const Context& context, NodeId id) {
  if (made_ >= limit_)
    return stop(node, "limit", "this is more than " + std::to_string(limit_) + " stitches");
  const Gist& gist = gists_[kind];
  if (!gist.chain) close_arch();
  const auto number = static_cast<StitchId>(fabric_.stitches.size());
  Stitch stitch;
  stitch.kind = kind;
  stitch.yarn = context.yarn;
  const bool own = own_place_ && gist.legs > 0;
  stitch.flags = own ? std::uint8_t{joins} : gist.flags;
  stitch.round = static_cast<std::uint32_t>(fabric_.rounds.size() - 1);
  stitch.first_leg = static_cast<std::uint32_t>(fabric_.legs.size());
  stitch.origin = id;
  if (context.yarn != yarn_) fabric_.changes.push_back(Change{number, context.yarn});
  yarn_ = context.yarn;
  fabric_.stitches.push_back(stitch);
  ++made_;
  if (gist.legs > 0) add_legs(gist, context);
  if (gist.chain) add_chain(number);
  if (!own) put_tops(number, gist);
  return true;
}

/// Legs go into the places taken, in order; where there are more legs than places, several share one.
void Hand::add_legs(const Gist& gist, const Context& context) {
  if (taken_.empty()) return;
  for (std::uint32_t leg = 0; leg < gist.legs; ++leg) {
    const std::size_t places = taken_.size();
    Place into = taken_[std::min(places - 1, places >= gist.legs ? leg : leg * places / gist.legs)];
    if (into.what == On::top) {
      if (gist.front_only)
        into.loops = stitch::front;
      else if (context.loops != 0)
        into.loops = context.loops;
    }
    fabric_.legs.push_back(Leg{into});
  }
}

void Hand::put_tops(StitchId stitch, const Gist& gist) {
  for (std::uint32_t i = 0; i < gist.makes; ++i) edge_.put(Place{stitch, On::top, stitch::both});
}

void Hand::add_chain(StitchId stitch) {
  if (arch_ == none) arch_ = stitch;
  if (!fresh_) return;
  if (foundation_count_ == 0) foundation_ = stitch;
  ++foundation_count_;
}

/// The chains being made climb: they lead to the height of a round and are no place.
void Hand::climb() {
  if (arch_ == none) return;
  for (StitchId i = arch_; i < fabric_.stitches.size(); ++i) fabric_.stitches[i].flags |= starts_chain;
  arch_ = none;
}

/// Chains between stitches are an arch, which is a place; those at the head of a round climb.
void Hand::close_arch() {
  if (arch_ == none || fresh_) return;
  if (arch_ == fabric_.rounds.back().first_stitch) return climb();
  const auto count = static_cast<std::uint32_t>(fabric_.stitches.size()) - arch_;
  edge_.put(Place{static_cast<std::uint32_t>(fabric_.arches.size()), On::space, stitch::both});
  fabric_.arches.push_back(Arch{arch_, count});
  ++fabric_.rounds.back().spaces;
  arch_ = none;
}

} // namespace whorl::fabric
