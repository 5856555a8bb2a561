#include "fabric/hand.hpp"

#include "pattern/arches.hpp"

#include <algorithm>

namespace whorl::fabric {

using pattern::Into;
using pattern::Node;
using pattern::NodeId;

/// Whether the round so far was worked in the yarn in hand alone.
bool Hand::is_in_one_yarn() const {
  const auto in_hand = [&](const Stitch& stitch) { return stitch.yarn == yarn_; };
  return std::all_of(fabric_.stitches.begin() + fabric_.rounds.back().first_stitch, fabric_.stitches.end(),
                     in_hand);
}

/// "With grey, ch 1, sc around, join" is joined in grey, though its words no longer say so.
bool Hand::join(const Node& node, NodeId id, Context context) {
  if (fresh_ && foundation_count_ > 0) {
    begin_round_after_foundation();
    edge_.open_ring(part_);
    outcome_.start = Start::chain_ring;
    outcome_.opened = true;
    ring_first_ = foundation_;
    ring_count_ = foundation_count_;
    foundation_count_ = 0;
    return true;
  }
  const auto slip = stitch::find_kind(tree_.kinds, "sl st");
  StitchId into = fabric_.rounds.back().counting_chain;
  if (into == none) into = fabric_.rounds.back().first_stitch;
  while (into < fabric_.stitches.size() && !(fabric_.stitches[into].flags & counts)) ++into;
  // Before any stitch it is the yarn that is joined, or the round before, whose line did not say so.
  if (!slip || into == fabric_.stitches.size()) return true;
  close_arch();
  taken_.assign(1, Place{into, On::top, stitch::both});
  own_place_ = true;
  fabric_.rounds.back().joined = true;
  if (!context.yarn_said && is_in_one_yarn()) context.yarn = yarn_;
  const bool joined = add(node, *slip, context, id);
  own_place_ = false;
  return joined;
}

/// The turning chain of the row before is this one's first stitch, where it goes on from it.
bool Hand::work_carried_chain(Context context) {
  const NodeId id = carried_;
  carried_ = pattern::no_node;
  if (id == pattern::no_node || edge_.is_ring() || edge_.left() == 0) return true;
  context.yarn = carried_yarn_;
  const bool worked = work_counted_chain(tree_.nodes[id], id, context);
  taken_.clear(); // "in the same stitch" is told of what this row works
  in_place_ = 0;
  begun_ = false;
  turned_at_ = static_cast<StitchId>(fabric_.stitches.size());
  return worked;
}

/// A starting chain that stands for a stitch: it stands on the next place, and its last chain is worked into
/// as a stitch is.
bool Hand::work_counted_chain(const Node& node, NodeId id, const Context& context) {
  if (edge_.is_empty()) open_ring(); // "ch 3, 11 dc in ring": the chain stands in the ring
  close_arch();
  const bool same =
      context.held || go_where_led() || (node.work.where == pattern::Where::same && !taken_.empty());
  begun_ = true;
  if (!same) taken_.clear();
  in_place_ = same ? in_place_ : 0;
  if (!same && !take_one(node, pattern::Where::next, false)) return false;
  const auto first = static_cast<StitchId>(fabric_.stitches.size());
  for (std::uint32_t i = 0; i < node.work.times; ++i)
    if (!step(node) || !add(node, node.work.kind, context, id)) return false;
  if (first == fabric_.stitches.size()) return true;
  arch_ = first;
  climb();
  climbed_ = none;
  count_chain(static_cast<StitchId>(fabric_.stitches.size() - 1));
  return true;
}

/// The chain counts as a stitch of the round, and its top is worked into as one.
void Hand::count_chain(StitchId chain) {
  fabric_.stitches[chain].flags |= counts;
  fabric_.rounds.back().counting_chain = chain;
  edge_.put(Place{chain, On::top, stitch::both});
  ++in_place_;
}

/// A change is marked at the first stitch in the new yarn; a part that begins in it has changed nothing.
void Hand::take_up(std::uint8_t yarn, StitchId stitch) {
  if (yarn != yarn_ && !part_is_new_) fabric_.changes.push_back(Change{stitch, yarn});
  yarn_ = yarn;
  part_is_new_ = false;
}

bool Hand::add(const Node& node, stitch::KindId kind, const Context& context, NodeId id) {
  if (made_ >= limit_)
    return stop(node, "limit", "this is more than " + std::to_string(limit_) + " stitches");
  const Gist& gist = gists_[kind];
  if (over_skipped_ && !gist.chain && arch_ != none) {
    const auto chains = static_cast<std::uint32_t>(fabric_.stitches.size()) - arch_;
    stays_ = stays_ || pattern::leads_over(chains, stitch::shape_of(fabric_.kinds[kind]).height);
  }
  if (!gist.chain && !gist.picot) close_arch(); // a picot stands on the chains as on a stitch
  if (gist.legs > 0 && climbed_ != none) open_climbed(kind);
  const auto number = static_cast<StitchId>(fabric_.stitches.size());
  Stitch stitch;
  stitch.kind = kind;
  stitch.yarn = context.yarn;
  const bool own = own_place_ && gist.legs > 0;
  stitch.flags = own ? std::uint8_t{joins} : gist.flags;
  stitch.round = static_cast<std::uint32_t>(fabric_.rounds.size() - 1);
  stitch.first_leg = static_cast<std::uint32_t>(fabric_.legs.size());
  stitch.origin = id;
  take_up(context.yarn, number);
  fabric_.stitches.push_back(stitch);
  ++made_;
  if (gist.legs > 0 && !add_legs(node, gist, context)) return false;
  if (context.into == Into::two_parts) keep_held(node, number);
  if (context.into == Into::both_layers && taken_.size() > gist.takes)
    fabric_.stitches[number].flags |= two_layers;
  if (gist.chain) add_chain(number);
  if (gist.chain && (node.work.as_high || led_) && leads_up(arch_)) climbs_ = true;
  if (!own && !led_) put_tops(number, gist);
  return true;
}

/// Legs go into the places taken, in order; where there are more legs than places, several share one.
bool Hand::add_legs(const Node& node, const Gist& gist, const Context& context) {
  ++in_place_;
  if (taken_.empty()) return true;
  const std::size_t places = taken_.size();
  const std::size_t layers = context.into == Into::both_layers ? 2
                             : context.into == Into::two_parts ? places / std::max(1U, gist.takes)
                                                               : 1;
  const std::size_t legs = std::size_t{gist.legs} * std::max<std::size_t>(1, layers);
  for (std::size_t leg = 0; leg < legs; ++leg) {
    const Place& taken = taken_[std::min(places - 1, places >= legs ? leg : leg * places / legs)];
    const auto into = foot(taken, gist, context);
    if (!into) {
      const std::string down = std::to_string(context.down) + (context.down == 1 ? " round" : " rounds");
      return stop(node, "below", "there is no stitch " + down + " below this one to work into");
    }
    fabric_.legs.push_back(Leg{*into});
  }
  return true;
}

/// Where a leg goes whose turn of the edge brought `taken`.
std::optional<Place> Hand::foot(const Place& taken, const Gist& gist, const Context& context) const {
  Place into = taken;
  if (into.of == none || own_place_) return into;
  if (context.into == Into::two_parts && is_of_other_part(into)) return into;
  if (context.into == Into::below) {
    const auto deep = below(into, context.down);
    if (!deep) return std::nullopt;
    into = *deep;
  }
  if (into.what != On::top) return into;
  if (context.into == Into::front_post || context.into == Into::back_post) {
    into.what = On::post;
    into.loops = context.into == Into::front_post ? stitch::front : stitch::back;
  } else if (gist.front_only) {
    into.loops = stitch::front;
  } else {
    into.loops = context.loops != 0 ? context.loops : into.loops;
  }
  return into;
}

/// The stitch so many rounds below: what the one above it is worked into. Chains that count stand beside the
/// next stitch and share what is below it.
std::optional<Place> Hand::below(Place place, int down) const {
  for (; down > 0; --down) {
    if (place.what != On::top && place.what != On::post) return std::nullopt;
    StitchId id = place.of;
    const std::uint32_t round = fabric_.stitches[id].round;
    while (id + 1 < fabric_.stitches.size() && fabric_.stitches[id + 1].round == round &&
           (fabric_.stitches[id].flags & starts_chain))
      ++id;
    const Legs legs = legs_of(fabric_, id);
    if (legs.size() == 0) return std::nullopt;
    place = legs.begin()->into;
  }
  if (place.what == On::top || place.what == On::post) place = Place{place.of, On::top, stitch::both};
  return place;
}

void Hand::put_tops(StitchId stitch, const Gist& gist) {
  for (std::uint32_t i = 0; i < gist.makes; ++i) edge_.put(Place{stitch, On::top, stitch::both});
}

void Hand::add_chain(StitchId stitch) {
  if (arch_ == none) stays_ = within_round_ > 0, over_skipped_ = false;
  if (arch_ == none) arch_ = stitch;
  if (!fresh_) return;
  if (foundation_count_ == 0) foundation_ = stitch;
  ++foundation_count_;
}

/// The chains being made climb: they lead to the height of a round and are no place.
void Hand::climb() {
  if (arch_ == none) return;
  for (StitchId i = arch_; i < fabric_.stitches.size(); ++i) fabric_.stitches[i].flags |= starts_chain;
  climbed_ = arch_;
  arch_ = none;
  climbs_ = false;
}

/// "Ch 2, turn, sc in first ch-1 sp": the chains at the edge of the row are a space of the next one, too.
void Hand::open_climbed(stitch::KindId kind) {
  const StitchId first = climbed_;
  climbed_ = none;
  const Round& round = fabric_.rounds.back();
  const bool row = round.kind == pattern::RoundKind::row || round.turned;
  const bool in_space = row && !led_ && !taken_.empty() && taken_.back().what == On::space;
  const auto chains = static_cast<std::uint32_t>(fabric_.stitches.size()) - first;
  if (!in_space || !pattern::leads_to_space(chains, stitch::shape_of(fabric_.kinds[kind]).height)) return;
  edge_.put(Place{static_cast<std::uint32_t>(fabric_.arches.size()), On::space, stitch::both});
  fabric_.arches.push_back(Arch{first, chains});
}

/// "Sl st into the ch-3 sp, ch 3, (dc, ch 3) …": at the head of a round, behind slip stitches only.
bool Hand::leads_up(StitchId chain) const {
  const StitchId first = fabric_.rounds.back().first_stitch;
  const auto is_slip = [&](const Stitch& stitch) { return gists_[stitch.kind].slip; };
  return !fresh_ && first < chain &&
         std::all_of(fabric_.stitches.begin() + first, fabric_.stitches.begin() + chain, is_slip);
}

/// Chains between stitches are an arch, which is a place; those at the head of a round climb.
void Hand::close_arch() {
  if (arch_ == none || fresh_) return;
  const bool heads = arch_ == fabric_.rounds.back().first_stitch;
  if ((heads && !stays_) || arch_ == turned_at_ || climbs_) return climb();
  const auto count = static_cast<std::uint32_t>(fabric_.stitches.size()) - arch_;
  edge_.put(Place{static_cast<std::uint32_t>(fabric_.arches.size()), On::space, stitch::both});
  fabric_.arches.push_back(Arch{arch_, count});
  ++fabric_.rounds.back().spaces;
  arch_ = none;
}

} // namespace whorl::fabric
