#include "fabric/hand.hpp"

namespace whorl::fabric {

using pattern::Node;

/// Whether two stitches that lie side by side were worked into the same place.
bool Hand::are_together(const Place& a, const Place& b) const {
  const bool known = a.what == On::top && b.what == On::top && a.of != none && b.of != none;
  if (!known || are_apart(a, b) || are_apart(b, a)) return false;
  const Legs legs = legs_of(fabric_, a.of);
  return legs.size() > 0 && legs.begin()->into.what != On::ring;
}

std::size_t Hand::centres_left() const {
  return edge_.centres_left([this](const Place& a, const Place& b) { return are_together(a, b); });
}

/// Whether the place taken last is the middle of a group: a corner of three in one chain space.
bool Hand::took_middle() const {
  return edge_.took_middle([this](const Place& a, const Place& b) { return are_together(a, b); });
}

/// The middle of the next group. What is left of the group waits: a count may go on in it.
bool Hand::take_centre(const Node& node) {
  const auto centre =
      edge_.take_centre([this](const Place& a, const Place& b) { return are_together(a, b); });
  if (!centre) return stop(node, "past-end", "there is no group of stitches left that has a middle");
  take_passing_by(centre->first, fixed_centres_);
  rest_of_group_ = centre->second;
  return true;
}

/// Behind the middle of a shell the next stitch is one behind the shell, unless as many are worked as are
/// left of it, or some are skipped.
void Hand::pass_rest_of_group(const Node& node) {
  if (rest_of_group_ == 0) return;
  const pattern::Work& work = node.work;
  const bool goes_on =
      work.act == pattern::Act::skip || (node.kind == pattern::NodeKind::work && work.in_one == 1 &&
                                         !work.to_end && work.times == rest_of_group_);
  if (!goes_on) edge_.pass(rest_of_group_);
  rest_of_group_ = 0;
}

} // namespace whorl::fabric
