#include "fabric/hand.hpp"
#include "fabric/named.hpp"
#include "pattern/terms.hpp"

#include <algorithm>

namespace whorl::fabric {

using pattern::Node;

/// Whether a place is one that the word for `named` may mean: only the top of a stitch has a kind.
bool Hand::is_of_kind(const Place& place, stitch::KindId named) const {
  if (place.what != On::top || place.of == none) return true;
  return is_named(fabric_.kinds, fabric_.stitches[place.of].kind, named);
}

/// "5 dc in next sc", with other stitches before it: those are left unworked, as if they were skipped.
bool Hand::go_to_named(const Node& node) {
  const stitch::KindId named = node.work.named;
  if (by_kind_ == ByKind::as_it_comes || named == stitch::no_kind || edge_.is_ring()) return true;
  const auto is = [&](const Place& place) { return is_of_kind(place, named); };
  if (by_kind_ == ByKind::watch) {
    if (!outcome_.met_other) outcome_.met_other = edge_.distance_to(is).value_or(0) > 0;
    return true;
  }
  if (!edge_.distance_to(is)) {
    outcome_.lacks_named = true;
    const std::string name = pattern::spoken(fabric_.kinds[named].name, tree_.language);
    return stop(node, "place", "there is no " + name + " left to work into");
  }
  for (const Place& place : edge_.pass_to(is)) {
    outcome_.passes_by = true;
    fabric_.unworked.push_back(Unworked{place, static_cast<std::uint32_t>(fabric_.rounds.size() - 1), true});
  }
  return true;
}

/// A repeat to the end that names what it goes into is worked as often as there is that; at most `times`.
std::uint64_t Hand::times_by_kind(const Node& node, std::uint64_t times) const {
  if (by_kind_ != ByKind::look_for) return times;
  const auto behind = named_from(tree_, node.next);
  for (const NamedPlaces& one : named_in_pass(tree_, node)) {
    std::uint64_t left = edge_.count_left([&](const Place& place) { return is_of_kind(place, one.kind); });
    for (const NamedPlaces& other : behind)
      if (other.kind == one.kind) left -= std::min(left, other.count);
    if (one.count > 0) times = std::min(times, left / one.count);
  }
  return times;
}

} // namespace whorl::fabric
