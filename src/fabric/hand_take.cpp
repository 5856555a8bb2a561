#include "fabric/hand.hpp"

#include "pattern/arches.hpp"
#include "pattern/effect.hpp"

#include <algorithm>
#include <iterator>

namespace whorl::fabric {

using pattern::Node;
using pattern::Where;

void Hand::used() {
  if (!outcome_.opened) ++outcome_.uses;
  if (to_end_ == 0 && fixed_left_ > 0) --fixed_left_;
}

/// What is still open when the round ends or is turned was left unworked; chains are not missed.
void Hand::leave_rest(bool on_purpose) {
  const auto round = static_cast<std::uint32_t>(fabric_.rounds.size() - 1);
  std::vector<Place> rest = edge_.rest();
  const std::size_t meant = std::min<std::size_t>(outcome_.left_on_purpose, rest.size());
  for (std::size_t i = 0; i < rest.size(); ++i)
    if (rest[i].what == On::top)
      fabric_.unworked.push_back(Unworked{rest[i], round, on_purpose || i + meant >= rest.size()});
}

/// "Join with sl st to any corner" of a flat piece, whose edges come next: the yarn is joined there, no more.
bool Hand::joins_at_corner(const Node& node) const {
  const bool head = !begun_ && repeats_ == 0 && node.work.times == 1 && node.work.where == Where::space;
  return head && edge_.spaces_left() == 0 && !rows_below().empty();
}

/// At the head of a round a slip stitch into a chain space only leads there: the space stays open, and with
/// what slip stitches passed the round ends.
bool Hand::lead_into_space(const Node& node) {
  const bool head = !begun_ && repeats_ == 0 && node.work.times == 1 && !node.work.to_end;
  Gist slip;
  slip.takes = 1;
  slip.slip = true;
  if (!head || node.work.where != Where::space || !take(node, Where::space, slip, Context{})) return false;
  edge_.give_back();
  const auto slips = fabric_.stitches.size() - fabric_.rounds.back().first_stitch;
  if (!outcome_.opened) outcome_.uses -= 1 + (is_closed() ? slips : 0);
  if (is_closed()) edge_.begin_here();
  led_ = true;
  return true;
}

/// Slip stitches over the stitches before a chain space and into it. The round begins there: what it passed
/// comes at its end. Where there is no chain space, nothing is worked.
bool Hand::travel(const Node& node, pattern::NodeId id, const Context& context) {
  if (edge_.spaces_left() == 0) return true;
  const std::vector<Place> passed = edge_.pass_to_space();
  own_place_ = true;
  for (std::size_t i = passed.size() - std::min<std::size_t>(passed.size(), node.work.times);
       i < passed.size(); ++i) {
    taken_.assign(1, passed[i]);
    if (!add(node, node.work.kind, context, id)) return false;
  }
  taken_.assign(1, *edge_.take_space());
  if (!add(node, node.work.kind, context, id)) return false;
  own_place_ = false;
  edge_.give_back();
  return led_ = outcome_.passes_by = true;
}

/// What is worked where a slip stitch led goes into that chain space.
bool Hand::go_where_led() {
  if (!led_) return false;
  led_ = false;
  edge_.take_space();
  if (!outcome_.opened) ++outcome_.uses;
  return true;
}

/// "10 sc, turn, leaving the last 4 sts unworked": those in front of the turn, not those of the row just
/// made.
bool Hand::leaves_behind_turn(const Node& node) {
  const bool last = node.next == pattern::no_node && repeats_ == 0;
  if (!last || edge_.made() > 0 || turned_at_ != fabric_.stitches.size() || !fabric_.rounds.back().turned)
    return false;
  for (std::uint32_t i = 0; i < node.work.times; ++i) used();
  return true;
}

bool Hand::is_same_place(const Node& node, Where where) const {
  if (taken_.empty()) return false;
  if (where == Where::same) return true;
  if (where == Where::chain) return opened_at_ != 0 && opened_at_ == node.work.nth;
  if (where == Where::space && along_rows_ && edge_.spaces_left() == 0) // round a corner
    return !edge_by_edge_ || repeats_ == 0 || corner_at_ == row_sides_;
  // "2 more in the last chain", which was worked already
  return where == Where::last && opened_at_ != 0 && edge_.left() == 0;
}

bool Hand::take(const Node& node, Where where, const Gist& gist, const Context& context) {
  if (gist.takes == 0 || context.held) return true;
  begun_ = begun_ || !gist.slip;
  if (is_same_place(node, where)) return go_where_led(), true;
  led_ = false;
  if (where == Where::next && !gist.slip) pass_rest_of_group(node), go_round_the_end();
  taken_.clear();
  in_place_ = 0;
  own_place_ = false;
  if (context.into == pattern::Into::both_layers) return take_two_layers(node, gist.takes);
  if (context.into == pattern::Into::two_parts && !edge_.is_ring()) return take_two_parts(node, where, gist);
  const bool one = where == Where::chain || where == Where::ring || pattern::goes_between(where);
  for (std::uint32_t i = 0; i < (one ? 1 : gist.takes); ++i)
    if (!take_one(node, where, gist.slip)) return false;
  return true;
}

/// The edge lies folded flat: its first place on its last.
bool Hand::take_two_layers(const Node& node, std::uint32_t pairs) {
  if (edge_.is_ring()) return stop(node, "ring", "a ring has no two layers to work through");
  outcome_.folded = true;
  std::vector<Place> behind;
  for (std::uint32_t i = 0; i < pairs; ++i) {
    if (edge_.left() < 2) return stop(node, "past-end", "there are no two layers left to work through");
    taken_.push_back(*edge_.take_next());
    behind.push_back(*edge_.take_last());
    used();
    used();
  }
  taken_.insert(taken_.end(), behind.begin(), behind.end());
  return true;
}

/// A leaf begins and ends with a slip stitch at its point.
bool Hand::begins_with_slip() const {
  for (StitchId id = fabric_.rounds.back().first_stitch; id < fabric_.stitches.size(); ++id)
    if (const stitch::StitchKind& kind = fabric_.kinds[fabric_.stitches[id].kind]; kind.takes > 0)
      return is_slip(kind);
  return false;
}

std::optional<Place> Hand::place_at(Where where, bool slip) {
  // The last chain was worked from its other side: the round is closed there.
  const bool row = fabric_.rounds.back().kind == pattern::RoundKind::row; // which nothing closes
  if (slip && far_side_ && !row && edge_.left() <= (begins_with_slip() ? 0 : 1)) return std::nullopt;
  if (where == Where::any) return edge_.take_any();
  if (where == Where::any_chain) edge_.open_chains(fabric_.arches);
  if (where != Where::last) return edge_.take_next();
  return edge_.take_last(of_last_ > 0 ? --of_last_ : 0);
}

/// A place between stitches, which are passed by; `fixed`: how many such the rest of the round needs.
void Hand::take_passing_by(const Place& place, std::uint64_t& fixed) {
  outcome_.passes_by = true;
  if (!outcome_.opened) ++outcome_.uses;
  if (to_end_ == 0 && fixed > 0) --fixed;
  taken_.push_back(place);
}

bool Hand::take_space(const Node& node) {
  std::optional<Place> place = edge_.take_space();
  const bool corner = !place;
  if (!place) place = next_corner();
  if (!place && along_rows_) place = edge_.take_next();
  if (!place) place = corner_of_rows();
  if (corner) corner_at_ = row_sides_;
  if (!place) return stop(node, "past-end", "there is no chain space left to work into");
  take_passing_by(*place, fixed_spaces_);
  return true;
}

/// A place that was skipped before: the stitch crosses those worked since.
bool Hand::take_skipped(const Node& node) {
  if (skipped_.empty()) return stop(node, "past-end", "no stitch was skipped before this one");
  taken_.push_back(skipped_.front());
  skipped_.erase(skipped_.begin());
  const auto is_left = [&](const Unworked& left) { return left.place == taken_.back(); };
  const auto last = std::find_if(fabric_.unworked.rbegin(), fabric_.unworked.rend(), is_left);
  if (last != fabric_.unworked.rend()) fabric_.unworked.erase(std::next(last).base());
  return true;
}

/// Whether two stitches that lie side by side are of two groups: what they are worked into differs. Chains
/// that stand for a stitch begin a group.
bool Hand::are_apart(const Place& before, const Place& behind) const {
  if (before.what != On::top || behind.what != On::top || before.of == none || behind.of == none)
    return false;
  const Legs first = legs_of(fabric_, before.of), second = legs_of(fabric_, behind.of);
  if (first.size() == 0) return false;
  return second.size() == 0 || !((first.end() - 1)->into == second.begin()->into);
}

/// Whether the round's last stitch stands beside its first.
bool Hand::is_closed() const { return fabric_.rounds.back().kind == pattern::RoundKind::round; }

std::size_t Hand::gaps_left() const {
  return edge_.gaps_left([this](const Place& a, const Place& b) { return are_apart(a, b); }, is_closed());
}

/// The gap between two stitches that lie side by side, named by the one worked later; by the first of a round
/// where the other is its last.
Place Hand::gap_between(StitchId one, StitchId other) const {
  const Round& round = fabric_.rounds[fabric_.stitches[one].round];
  const bool seam = one > other + 1 && round.kind == pattern::RoundKind::round && !round.turned;
  return Place{seam ? other : std::max(one, other), On::between, stitch::both};
}

bool Hand::take_between(const Node& node) {
  const auto apart = [this](const Place& a, const Place& b) { return are_apart(a, b); };
  const auto gap = edge_.take_between(apart, is_closed());
  const std::optional<Place> place =
      gap ? std::optional(gap_between(gap->first.of, gap->second.of)) : edge_.take_space();
  if (!place) return stop(node, "past-end", "there is no gap between two groups left to work into");
  take_passing_by(*place, fixed_gaps_);
  return true;
}

bool Hand::take_one(const Node& node, Where where, bool slip) {
  if (where == Where::chain) return take_chain(node);
  if (where == Where::space) return take_space(node);
  if (where == Where::between) return take_between(node);
  if (where == Where::centre) return take_centre(node);
  if (where == Where::skipped) return take_skipped(node);
  if (where == Where::ring && !edge_.is_ring()) {
    if (!edge_.is_empty()) return stop(node, "ring", "no ring is open here");
    open_ring();
  }
  if (ring_comes_ && edge_.is_empty()) open_ring();
  if (where == Where::next && !slip && !go_to_named(node)) return false;
  std::optional<Place> place = place_at(where, slip);
  if (!place && !slip && go_round_corner()) place = place_at(where, slip);
  if (place && !edge_.is_ring()) used();
  if (!place && slip) {
    place = edge_.take_own();
    own_place_ = place.has_value();
  }
  if (!place)
    return stop(node, "past-end",
                "there is no stitch left to work into" + (opened_.empty() ? "" : ": " + opened_));
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
  const bool row = fabric_.rounds.back().kind == pattern::RoundKind::row; // its chains are drawn as they are
  outcome_.start = nth == foundation_count_ && (nth == 2 || !row) ? Start::second_chain : Start::chain;
  outcome_.opened = true;
  opened_at_ = nth;
  if (node.work.counts && nth > 1) count_chain(foundation_ + foundation_count_ - 1);
  const int height = stitch::shape_of(fabric_.kinds[node.work.kind]).height;
  if (const std::uint32_t head = pattern::chains_of_first_space(nth, height, node.work.counts)) {
    edge_.put(Place{static_cast<std::uint32_t>(fabric_.arches.size()), On::space, stitch::both});
    fabric_.arches.push_back(Arch{foundation_ + foundation_count_ + 1 - nth, head});
    ++fabric_.rounds.back().spaces;
  }
  taken_.push_back(*edge_.take_next());
  return true;
}

} // namespace whorl::fabric
