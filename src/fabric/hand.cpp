#include "fabric/hand.hpp"

#include "pattern/arches.hpp"

#include "pattern/effect.hpp"

#include <algorithm>

namespace whorl::fabric {

using pattern::Node;
using pattern::NodeId;
using pattern::NodeKind;
using pattern::Where;
using pattern::Work;

namespace {

/// What one pass takes that goes into one chain space or gap, or else into so many places.
Need need_of_one(Where where, std::uint64_t takes) {
  Need need;
  need.spaces = where == Where::space ? 1 : 0;
  need.gaps = where == Where::between ? 1 : 0;
  need.centres = where == Where::centre ? 1 : 0;
  need.uses = pattern::goes_between(where) ? 0 : takes;
  return need;
}

} // namespace

Hand::Hand(const pattern::Tree& tree, const std::vector<Need>& needs,
           const std::vector<std::uint32_t>& last_rounds, Fabric& fabric, Edge& edge, std::uint32_t limit)
    : tree_(tree), needs_(needs), last_rounds_(last_rounds), fabric_(fabric), edge_(edge), limit_(limit),
      steps_(std::uint64_t{16} * limit + 1000) {
  for (const stitch::StitchKind& kind : tree.kinds) {
    const stitch::Shape shape = stitch::shape_of(kind);
    Gist gist;
    gist.legs = static_cast<std::uint32_t>(shape.legs);
    gist.takes = static_cast<std::uint32_t>(std::max(0, kind.takes));
    gist.makes = static_cast<std::uint32_t>(std::max(0, kind.makes));
    gist.flags = kind.counts ? counts : 0;
    gist.picot = stitch::is_picot(kind);
    gist.chain = shape.legs == 0 && kind.takes == 0 && !gist.picot;
    gist.slip = is_slip(kind);
    gist.front_only = shape.front_loops_only;
    gists_.push_back(gist);
  }
}

void Hand::begin_part() {
  yarn_ = 1;
  wanted_yarn_ = 0;
  part_is_new_ = true;
  side_ = Side::right;
  foundation_ = none;
  foundation_count_ = 0;
  ring_count_ = 0;
  carried_ = pattern::no_node;
}

std::uint32_t Hand::carried_chains() const {
  return carried_ == pattern::no_node ? 0 : tree_.nodes[carried_].work.times;
}

Outcome Hand::work(NodeId body, const Need& need, std::uint32_t part) {
  outcome_ = Outcome{};
  part_ = part;
  taken_.clear();
  skipped_.clear();
  in_place_ = 0;
  fixed_left_ = need.to_end ? need.surely() : need.uses;
  fixed_spaces_ = need.spaces;
  fixed_gaps_ = need.gaps;
  fixed_centres_ = need.centres;
  rest_of_group_ = 0;
  to_end_ = repeats_ = within_round_ = 0;
  over_skipped_ = false;
  if (fabric_.rounds.size() < 2 || !fabric_.rounds[fabric_.rounds.size() - 2].turned) climbed_ = none;
  begun_ = led_ = false;
  turned_at_ = none;
  arch_ = none;
  opened_at_ = 0;
  opened_.clear();
  gap_round_ = none;
  far_side_ = false;
  row_sides_ = 0;
  along_rows_ = corner_comes_ = each_row_end_ = edge_by_edge_ = false;
  corner_at_ = -1;
  own_place_ = false;
  fresh_ = edge_.is_empty();
  ring_comes_ = fresh_ && names_ring(body);
  Context context;
  context.yarn = wanted_yarn_ != 0 ? wanted_yarn_ : yarn_;
  wanted_yarn_ = 0;
  if (need.starts) carried_ = pattern::no_node;
  turning_chain_ = turning_chain_of(body);
  if (work_carried_chain(context) && follow(body, context, 0)) close_arch();
  if (!fresh_) foundation_count_ = 0;
  if (!fabric_.rounds.back().turned) leave_rest(false);
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
    context.yarn_said = true;
    break;
  case NodeKind::sequence:
    break;
  }
  return follow_children(node, context, depth);
}

bool Hand::follow_children(const Node& node, Context context, int depth) {
  const std::uint64_t outside = context.rest;
  for (NodeId child = node.child; child != pattern::no_node; child = tree_.nodes[child].next) {
    if (outcome_.opened) context.rest = needed_behind(child, outside);
    if (!follow(child, context, depth + 1)) return false;
  }
  return true;
}

/// What is needed of the same edge behind a child that may run to its end: up to what runs to the end again
/// or opens another.
std::uint64_t Hand::needed_behind(NodeId child, std::uint64_t outside) {
  const Node& node = tree_.nodes[child];
  if (node.kind == NodeKind::work && !node.work.to_end) return outside;
  std::uint64_t sure = 0, slips = 0;
  for (NodeId id = node.next; id != pattern::no_node; id = tree_.nodes[id].next) {
    if (id == turning_chain_) continue;
    if (steps_ > 0) --steps_;
    const Need need = need_of(tree_, id, needs_);
    if (need.to_end || need.starts || steps_ == 0) return sure;
    if (need.slips < need.uses) sure += slips + need.surely(), slips = 0;
    slips += need.slips;
  }
  return sure + outside;
}

/// The chain that a round ends with and the next row begins with, be it worked as another round.
NodeId Hand::turning_chain_of(NodeId body) {
  const Node* node = &tree_.nodes[body];
  if (node->kind == NodeKind::sequence && node->child != pattern::no_node &&
      tree_.nodes[node->child].next == pattern::no_node)
    node = &tree_.nodes[node->child];
  if (node->kind == NodeKind::reference) body = body_meant(*node);
  return pattern::carried_chain(tree_.nodes, body, tree_.kinds);
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
    return leaves_behind_turn(node) || skip(node, context);
  case pattern::Act::ring:
    return open_ring();
  case pattern::Act::join:
    return join(node, id, context);
  case pattern::Act::turn:
    return turns_to_other_side(node) || turn();
  case pattern::Act::start_here:
    return start_here();
  case pattern::Act::travel:
    return travel(node, id, context);
  case pattern::Act::other_side:
    return open_other_side(node);
  case pattern::Act::row_ends:
  case pattern::Act::top_edge:
  case pattern::Act::all_edges:
    return open_edge_of_rows(node);
  case pattern::Act::free_loops:
    return open_free_loops(node);
  case pattern::Act::skipped:
    return open_skipped(node);
  case pattern::Act::part_edge:
    return open_part_edge(node);
  }
  return true;
}

bool Hand::passes_to_end(const Node& node, const Context& context, const Need& each, std::uint64_t& times) {
  const std::uint64_t takes = each.uses;
  if (edge_.is_ring() && !open_ring_of_chains())
    return stop(node, "ring", "a ring has no end: say how many stitches go into it");
  if (each.centres > 0) return passes_over_centres(node, each, times);
  if (takes == 0 && each.spaces == 0 && each.gaps == 0)
    return stop(node, "endless", "this repeat uses no stitch, so it never comes to the end");
  go_round_the_end();
  std::uint64_t rest = outcome_.opened ? context.rest : fixed_left_;
  if (corner_comes_ && (each_row_end_ || rest >= edge_.left())) rest = 0; // that is worked round the corner
  if (takes == 0) return passes_over_spaces(node, each, times);
  const std::uint64_t kept = std::max<std::uint64_t>(node.work.leave, rest);
  if (node.work.where == Where::any_chain) edge_.open_chains(fabric_.arches);
  const std::uint64_t open = edge_.left() + (node.work.where == Where::any ? edge_.spaces_left() : 0);
  const std::uint64_t room = open > kept ? open - kept : 0;
  outcome_.left_on_purpose = kept - rest;
  times = room / takes;
  const bool alone = node.work.into == pattern::Into::both_layers && times > 0 && room % takes == 1;
  const std::uint64_t fewer = std::min(times_by_kind(node, times), times_by_space(each, times));
  if (fewer < times) return times = fewer, true;
  if (room % takes != 0 && !alone) outcome_.uneven = Uneven{takes, room, node.span};
  return true;
}

/// A pass that goes into chain spaces too, between which stitches are passed by, is worked as often as there
/// are spaces for it; at most `times`.
std::uint64_t Hand::times_by_space(const Need& each, std::uint64_t times) const {
  const std::uint64_t left = edge_.spaces_left();
  if (each.spaces == 0 || left == 0 || along_rows_) return times;
  return std::min(times, (left > fixed_spaces_ ? left - fixed_spaces_ : 0) / each.spaces);
}

/// As many as there are groups, whatever else is worked between them.
bool Hand::passes_over_centres(const Node& node, const Need& each, std::uint64_t& times) const {
  const std::uint64_t left = centres_left();
  const std::uint64_t kept = std::max<std::uint64_t>(node.work.leave, fixed_centres_);
  times = left > kept ? (left - kept) / each.centres : 0;
  return true;
}

bool Hand::passes_over_spaces(const Node& node, const Need& each, std::uint64_t& times) {
  const bool gaps = each.spaces == 0;
  const std::uint64_t left = gaps ? gaps_left() : edge_.spaces_left();
  const std::uint64_t fixed = gaps ? fixed_gaps_ : fixed_spaces_;
  const bool leaves_stitches = fixed == 0 && fixed_left_ >= node.work.leave; // "… across, dc in last st"
  const std::uint64_t kept = std::max<std::uint64_t>(leaves_stitches ? 0 : node.work.leave, fixed);
  times = left > kept ? (left - kept) / (gaps ? each.gaps : each.spaces) : 0;
  return true;
}

template <class Pass>
bool Hand::passes(const Node& node, const Context& context, const Need& each, Pass pass) {
  std::uint64_t times = node.work.times;
  if (node.work.to_end && !passes_to_end(node, context, each, times)) return false;
  to_end_ += node.work.to_end ? 1 : 0;
  const int repeat = times > 1 || node.kind != NodeKind::work ? 1 : 0;
  repeats_ += repeat;
  for (; times > 0; --times)
    if (!step(node) || !pass()) return false;
  to_end_ -= node.work.to_end ? 1 : 0;
  repeats_ -= repeat;
  return true;
}

bool Hand::work_repeat(const Node& node, const Context& context, int depth) {
  const Need pass = node.work.to_end ? need_of_pass(tree_, node, needs_) : Need{};
  // What runs to the end inside comes to the end in one pass.
  if (node.work.to_end && pass.to_end) return follow_children(node, context, depth);
  held_times_ = times_through_part(node);
  const bool within = pattern::repeats_within_round(tree_.nodes, node);
  if (within && arch_ != none && arch_ == fabric_.rounds.back().first_stitch) climb();
  within_round_ += within ? 1 : 0;
  const bool worked = passes(node, context, pass, [&] { return follow_children(node, context, depth); });
  within_round_ -= within ? 1 : 0;
  held_times_ = 1;
  return worked;
}

bool Hand::work_group(const Node& node, const Context& context, int depth) {
  Context inside = context;
  inside.held = true;
  inside.loops = node.work.loops != 0 ? node.work.loops : context.loops;
  Gist one;
  one.takes = 1;
  return passes(node, context, need_of_one(node.work.where, 1), [&] {
    if (!take(node, node.work.where, one, context)) return false;
    const std::size_t group = begin_group(node);
    if (!follow_children(node, inside, depth)) return false;
    end_group(group);
    return true;
  });
}

/// Where the group has a name, its entry; groups stand in the order of their first stitches.
std::size_t Hand::begin_group(const Node& node) {
  if (node.name == 0 || node.name > tree_.group_names.size()) return none;
  fabric_.groups.push_back(
      Group{static_cast<StitchId>(fabric_.stitches.size()), 0, tree_.group_names[node.name - 1U]});
  return fabric_.groups.size() - 1;
}

void Hand::end_group(std::size_t group) {
  if (group >= fabric_.groups.size()) return;
  fabric_.groups[group].count =
      static_cast<std::uint32_t>(fabric_.stitches.size()) - fabric_.groups[group].first;
}

bool Hand::work_stitches(const Node& node, NodeId id, const Context& context) {
  const Work& work = node.work;
  Context inside = context;
  inside.loops = work.loops != 0 ? work.loops : context.loops;
  inside.yarn = work.yarn != 0 ? work.yarn : context.yarn;
  inside.into = work.into;
  inside.down = work.down;
  const stitch::KindId kind = seen_from_outside(node, work.kind, inside);
  const Gist& gist = gists_[kind];
  if (id == turning_chain_) return carry(id, inside);
  if (work.counts && gist.chain) return work_counted_chain(node, id, inside);
  if (gist.slip && joins_at_corner(node)) return true;
  if (gist.slip && lead_into_space(node)) return add(node, kind, inside, id);
  const std::uint64_t takes = std::uint64_t{gist.takes} * (work.into == pattern::Into::both_layers ? 2 : 1);
  of_last_ = work.where == Where::last && !work.to_end ? work.times * takes : 0;
  return passes(node, context, need_of_one(work.where, takes), [&] {
    if (!take(node, work.where, gist, inside)) return false;
    const std::size_t group = begin_group(node);
    for (int i = 0; i < many_in_place(work); ++i)
      if (!add(node, kind, inside, id)) return false;
    end_group(group);
    return true;
  });
}

/// How many go into the place taken: a chain space may have a number of its own, and a corner another.
int Hand::many_in_place(const Work& work) const {
  if (taken_.empty()) return work.in_one;
  if (work.in_corner != 0 && work.where == Where::next && took_middle()) return work.in_corner;
  if (taken_.back().what != On::space) return work.in_one;
  if (work.in_corner != 0 && is_corner(taken_.back().of)) return work.in_corner;
  return work.in_space != 0 ? work.in_space : work.in_one;
}

/// Whether an arch has more chains than the least of its round, or all have as many.
bool Hand::is_corner(std::uint32_t arch) const {
  const auto& arches = fabric_.arches;
  const auto round_of = [&](const Arch& one) { return fabric_.stitches[one.first_chain].round; };
  std::uint32_t least = arches[arch].count, most = least;
  const auto look = [&](const Arch& one) {
    least = std::min(least, one.count);
    most = std::max(most, one.count);
  };
  for (std::uint32_t i = arch; i-- > 0 && round_of(arches[i]) == round_of(arches[arch]);) look(arches[i]);
  for (std::uint32_t i = arch; i < arches.size() && round_of(arches[i]) == round_of(arches[arch]); ++i)
    look(arches[i]);
  return least == most || arches[arch].count > least;
}

/// The next row begins with it.
bool Hand::carry(NodeId id, const Context& context) {
  carried_ = id;
  carried_yarn_ = context.yarn;
  return true;
}

/// Chain spaces before another; at the end of a round there may be none.
bool Hand::skip_spaces(std::uint32_t count) {
  for (; count > 0 && edge_.take_space(); --count) {
    outcome_.passes_by = true;
    if (to_end_ == 0 && fixed_spaces_ > 0) --fixed_spaces_;
  }
  return true;
}

bool Hand::skip(const Node& node, const Context& context) {
  if (node.work.where == Where::space) return skip_spaces(node.work.times);
  if (edge_.is_ring()) return stop(node, "ring", "in a ring there is no stitch to skip");
  const auto round = static_cast<std::uint32_t>(fabric_.rounds.size() - 1);
  rest_of_group_ = 0;
  over_skipped_ = over_skipped_ || arch_ != none;
  skipped_.clear();
  return passes(node, context, need_of_one(Where::next, 1), [&] {
    taken_.clear();
    in_place_ = 0;
    if (!take_one(node, Where::next, false)) return false;
    const Place& place = taken_.back();
    skipped_.push_back(place);
    if (place.what == On::top && place.of != none) fabric_.unworked.push_back(Unworked{place, round, true});
    return true;
  });
}

/// An invisible decrease takes front loops; asked for in back loops, it is the plain decrease.
stitch::KindId Hand::seen_from_outside(const Node& node, stitch::KindId kind, const Context& context) {
  if (!gists_[kind].front_only || context.loops != stitch::back) return kind;
  const auto plain = stitch::find_kind(tree_.kinds, "sc" + std::to_string(gists_[kind].takes) + "tog");
  if (!plain) return kind;
  if (outcome_.hidden.empty() || outcome_.hidden.back() != node.span) outcome_.hidden.push_back(node.span);
  return *plain;
}

/// "3 sc in last ch, turn the work, sc in next 6 ch on the other side": it is turned round its end, not over.
bool Hand::turns_to_other_side(const Node& node) const {
  if (opened_at_ == 0 || node.next == pattern::no_node) return false;
  const Node& next = tree_.nodes[node.next];
  return next.kind == pattern::NodeKind::work && next.work.act == pattern::Act::other_side;
}

/// Chains made just before the work is turned climb to the next row.
bool Hand::turn() {
  if (!fresh_) climb();
  if (edge_.made() > 0) leave_rest(true);
  edge_.turn();
  turned_at_ = static_cast<StitchId>(fabric_.stitches.size());
  taken_.clear();
  in_place_ = 0;
  side_ = side_ == Side::right ? Side::wrong : Side::right;
  Round& round = fabric_.rounds.back();
  round.turned = true;
  const bool only_chains = round.first_stitch == fabric_.stitches.size() ||
                           fabric_.stitches[round.first_stitch].first_leg == fabric_.legs.size();
  if (only_chains) round.side = side_; // "ch 1, turn" before the first stitch
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

} // namespace whorl::fabric
