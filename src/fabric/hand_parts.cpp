#include "fabric/hand.hpp"
#include "fabric/opening.hpp"

#include <algorithm>

namespace whorl::fabric {

using pattern::Node;
using pattern::NodeId;

namespace {

bool goes_through_part(const Node& node) {
  return node.kind == pattern::NodeKind::work && node.work.act == pattern::Act::stitch &&
         node.work.into == pattern::Into::two_parts;
}

} // namespace

/// How often a repeat works nothing but stitches that go through a part; else 1.
std::uint32_t Hand::times_through_part(const Node& repeat) const {
  if (repeat.work.to_end) return 1;
  for (NodeId id = repeat.child; id != pattern::no_node; id = tree_.nodes[id].next)
    if (!goes_through_part(tree_.nodes[id])) return 1;
  return std::max(1U, repeat.work.times);
}

/// The places that this work and what follows it without a break need of the part: "3 sc, inc, 3 sc through
/// both".
std::uint32_t Hand::wanted_of_part(const Node& node) const {
  std::uint64_t wanted = 0;
  for (const Node* one = &node; goes_through_part(*one) && one->round == node.round;
       one = &tree_.nodes[one->next]) {
    wanted += std::uint64_t{one->work.times} * gists_[one->work.kind].takes;
    if (one->next == pattern::no_node) break;
  }
  return static_cast<std::uint32_t>(std::min<std::uint64_t>(wanted * held_times_, limit_));
}

/// The edge of another part, in the order in which the work meets it: held with its right side out it runs as
/// it was worked, with its wrong side worked last the other way round. A tube pressed flat lies in two
/// layers.
std::vector<HeldPair> Hand::edge_held(std::uint32_t round, std::uint32_t wanted) const {
  std::vector<Place> tops = tops_of(fabric_, round);
  const Round& last = fabric_.rounds[round];
  if (last.side == Side::wrong) std::reverse(tops.begin(), tops.end());
  const bool tube = last.kind == pattern::RoundKind::round;
  const bool flat = tube && wanted > 0 && (tops.size() == 2U * wanted || tops.size() == 2U * wanted + 1);
  std::vector<HeldPair> edge;
  for (std::size_t i = 0; i < (flat ? wanted : tops.size()); ++i) {
    edge.push_back({tops[i], std::nullopt});
    if (flat) edge.back().behind = tops[tops.size() - 1 - i];
  }
  return edge;
}

/// The next place of the part that is held against the piece. Parts made several times are joined one after
/// the other; what goes on without a break goes on with the same one.
std::optional<HeldPair> Hand::next_of_part(const Node& node) {
  const std::uint32_t named = round_meant(node);
  if (named == none || fabric_.rounds[named].part == part_) return std::nullopt;
  const std::uint32_t round = last_round_of(named), owner = fabric_.rounds[round].part;
  Held& held = held_[owner];
  const bool goes_on =
      held.up_to == fabric_.stitches.size() && (held.met < held.edge.size() || held.through == &node);
  if (!goes_on && held.copies < fabric_.parts[owner].make) {
    held.edge = edge_held(round, wanted_of_part(node));
    held.met = 0;
    ++held.copies;
  }
  held.through = &node;
  if (held.met < held.edge.size()) return held.edge[held.met++];
  say_no_more_of(node, owner, round);
  return std::nullopt;
}

void Hand::say_no_more_of(const Node& node, std::uint32_t owner, std::uint32_t round) {
  if (!outcome_.troubles.empty() && outcome_.troubles.back().span == node.span) return;
  const Part& part = fabric_.parts[owner];
  const std::string name = part.name.empty() ? "the other part" : part.name;
  const std::size_t has = tops_of(fabric_, round).size();
  const std::uint32_t wanted = wanted_of_part(node);
  const bool fresh = held_[owner].up_to == fabric_.stitches.size();
  if (fresh && wanted > has)
    outcome_.troubles.push_back({node.span, name + " has " + std::to_string(has) + " stitches in " +
                                                fabric::name_of(fabric_.rounds[round]) + ", its last; " +
                                                std::to_string(wanted) + " are worked through it"});
  else
    outcome_.troubles.push_back({node.span, part.make == 1
                                                ? name + " is made once, and its stitches are joined already"
                                                : name + " is made " + std::to_string(part.make) +
                                                      " times, and all of them are joined already"});
}

/// Through the piece in hand and through the part held against it: the own places stand first.
bool Hand::take_two_parts(const Node& node, pattern::Where where, const Gist& gist) {
  for (std::uint32_t i = 0; i < gist.takes; ++i)
    if (!take_one(node, where, gist.slip)) return false;
  std::vector<Place> behind;
  for (std::uint32_t i = 0; i < gist.takes; ++i) {
    const auto held = next_of_part(node);
    if (!held) continue;
    taken_.push_back(held->front);
    if (held->behind) behind.push_back(*held->behind);
  }
  taken_.insert(taken_.end(), behind.begin(), behind.end());
  return true;
}

bool Hand::is_of_other_part(const Place& place) const {
  return place.what == On::top && place.of != none &&
         fabric_.rounds[fabric_.stitches[place.of].round].part != part_;
}

/// The stitch just made goes through another part too, if it does.
void Hand::keep_held(const Node& node, StitchId stitch) {
  bool holds = false;
  for (const Leg& leg : legs_of(fabric_, stitch)) holds = holds || is_of_other_part(leg.into);
  if (!holds) fabric_.stitches[stitch].flags |= holds_unseen;
  if (!holds || node.round >= last_rounds_.size() || last_rounds_[node.round] == none) return;
  fabric_.stitches[stitch].flags |= holds_part;
  held_[fabric_.rounds[last_rounds_[node.round]].part].up_to = stitch + 1;
}

} // namespace whorl::fabric
