#include "fabric/hand.hpp"
#include "fabric/opening.hpp"

#include <algorithm>

namespace whorl::fabric {

using pattern::Node;

bool Hand::open_foundation() {
  if (!fresh_ || foundation_count_ == 0 || !edge_.is_empty()) return false;
  edge_.open_chain(foundation_, foundation_count_, 1);
  climb();
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

bool Hand::names_ring(pattern::NodeId body) const {
  for (pattern::NodeId id = tree_.nodes[body].child; id != pattern::no_node; id = tree_.nodes[id].next)
    if (tree_.nodes[id].kind == pattern::NodeKind::work && tree_.nodes[id].work.act == pattern::Act::ring)
      return true;
  return false;
}

bool Hand::open_ring() {
  if (edge_.is_ring()) return true;
  ring_count_ = 0;
  edge_.open_ring(part_);
  outcome_.start = Start::magic_ring;
  outcome_.opened = true;
  fresh_ = false;
  return true;
}

/// Chains `from` down to `to` from the hook, along their other side. `first` is the chain made first of
/// `foundation_count_`.
bool Hand::open_far_side(StitchId first, std::uint32_t from, std::uint32_t to) {
  const std::uint32_t count = fabric_.rounds[fabric_.stitches[first].round].count;
  std::vector<Place> places;
  for (std::uint32_t nth = from; nth >= std::max(to, 1U); --nth)
    places.push_back(Place{first + count - nth, On::chain_side, stitch::third});
  if (places.empty()) return false;
  if (row_sides_ > 0 && comes_down_at_beginning()) std::reverse(places.begin(), places.end());
  edge_.reopen(std::move(places));
  far_side_ = true;
  fresh_ = false;
  outcome_.opened = true;
  fabric_.rounds.back().both_sides = true;
  return true;
}

/// Along a chain that is used up, two or more in the last of it lead round its end to the other side.
bool Hand::go_round_the_end() {
  if (opened_at_ == 0 || far_side_ || in_place_ < 2 || edge_.left() > 0) return false;
  return open_far_side(foundation_, foundation_count_ - 1, opened_at_);
}

/// From the far end back; the chain there is left out where two or more went round it.
bool Hand::open_other_side(const Node& node) {
  if (outcome_.joined_parts) return true; // the bridge's other side comes when its turn comes
  if (row_sides_ == 1 && far_side_) return open_edge_of_rows(node); // up the other side of a flat piece
  if (opened_at_ != 0) {
    if (far_side_) return true;
    const std::uint32_t from = foundation_count_ - (in_place_ >= 2 ? 1 : 0);
    if (open_far_side(foundation_, from, opened_at_)) return true;
  }
  if (opened_at_ == 0 && gap_round_ != none) return open_under_gap(node);
  if (node.round != 0) return open_chain_of_part(node);
  const std::uint32_t chain = fabric_.parts[row_sides_ > 0 ? flat_part() : part_].foundation;
  if (opened_at_ != 0 || chain == none || fabric_.rounds[chain].count == 0)
    return stop(node, "edge", "there is no starting chain to be worked along its other side");
  const Round& round = fabric_.rounds[chain];
  std::uint32_t to = 1;
  const auto is_worked = [&](std::uint32_t nth) {
    return fabric_.taken[round.first_stitch + round.count - nth] != stitch::no_loop;
  };
  while (to < round.count && !is_worked(to)) ++to;
  opened_at_ = to;
  taken_.clear();
  return open_far_side(round.first_stitch, round.count, to);
}

/// The starting chain of the part that a node names; where that has none, of the nearest before the part in
/// hand.
std::uint32_t Hand::chain_named(const Node& node) const {
  const std::uint32_t named = node.round - 1;
  if (named < last_rounds_.size() && last_rounds_[named] != none) {
    const std::uint32_t chain = fabric_.parts[fabric_.rounds[last_rounds_[named]].part].foundation;
    if (chain != none) return chain;
  }
  for (std::uint32_t part = part_; part-- > 0;)
    if (fabric_.parts[part].foundation != none) return fabric_.parts[part].foundation;
  return none;
}

/// The part in hand begins along the other side of another's starting chain, from the end where that was
/// begun. The chains that were skipped at the hook are left out.
bool Hand::open_chain_of_part(const Node& node) {
  const std::uint32_t chain = chain_named(node);
  if (chain == none)
    return stop(node, "edge", "there is no starting chain to be worked along its other side");
  const Round& round = fabric_.rounds[chain];
  std::vector<Place> places;
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id)
    if (fabric_.taken[id] != stitch::no_loop) places.push_back(Place{id, On::chain_side, stitch::third});
  if (places.empty() || all_taken(fabric_, places)) {
    const std::string& name = fabric_.parts[round.part].name;
    return stop(node, "edge",
                "the starting chain" + (name.empty() ? "" : " of " + name) +
                    (places.empty() ? " has nothing worked into it: it has no other side yet"
                                    : " is worked along on both sides already"));
  }
  return open_places(std::move(places));
}

/// The fabric's round that a node names; `none` where it was not worked.
std::uint32_t Hand::round_meant(const Node& node) {
  if (node.round >= last_rounds_.size()) return none;
  std::uint32_t round = last_rounds_[node.round];
  const pattern::RoundText& text = tree_.rounds[node.round];
  const int back = node.number == 0 ? 0 : std::max(text.from, text.to) - node.number;
  if (round == none || back < 0 || back > std::max(text.from, text.to) - text.from) return none;
  round -= static_cast<std::uint32_t>(back);
  const std::uint64_t cost = fabric_.stitches.size() / 16 + 1;
  steps_ -= std::min(steps_, cost);
  return fabric_.rounds[round].worked ? round : none;
}

bool Hand::open_places(std::vector<Place> places) {
  close_arch();
  fresh_ = false;
  foundation_count_ = 0;
  edge_.reopen(std::move(places));
  taken_.clear();
  in_place_ = 0;
  outcome_.opened = true;
  outcome_.start = Start::free_loops;
  return true;
}

/// "HEAD has 24 front loops in round 4".
std::string Hand::what_was_open(const std::vector<Place>& places, std::uint32_t owner) const {
  const std::string& part = fabric_.parts[fabric_.rounds[owner].part].name;
  const std::string what =
      places.front().loops == stitch::both ? "stitches" : name_of_loops(places.front().loops);
  return (part.empty() ? "the piece" : part) + " has " + std::to_string(places.size()) + " " + what + " in " +
         fabric::name_of(fabric_.rounds[owner]);
}

/// The loop that the text begins in is worked into by another part: the next free one is taken.
void Hand::warn_of_taken(const Node& node, const Place& place, std::uint32_t owner) {
  if (place.of >= fabric_.taken.size() || (fabric_.taken[place.of] & place.loops) == 0) return;
  for (const Round& round : fabric_.rounds) {
    if (round.part == fabric_.rounds[owner].part) continue;
    for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id)
      for (const Leg& leg : legs_of(fabric_, id)) {
        if (leg.into.of != place.of || leg.into.what != On::top || (leg.into.loops & place.loops) == 0)
          continue;
        const std::string& part = fabric_.parts[round.part].name;
        outcome_.warnings.push_back(
            {node.span, "loop " + std::to_string(node.work.nth) + " of " +
                            fabric::name_of(fabric_.rounds[owner]) + " is worked into by " +
                            (part.empty() ? "another part" : part) + " already: the next free one is taken"});
        return;
      }
  }
}

/// Loops of a round from the nth on, 0 being the first, as a part meets them that is worked with its right
/// side facing; `up`: with the owner's start up. A row has ends: what lies before the nth is not met.
std::vector<Place> Hand::in_order_met(std::vector<Place> places, const Round& owner, std::uint32_t nth,
                                      bool up) const {
  const bool row = owner.kind == pattern::RoundKind::row;
  const bool against = up != (row && owner.side == Side::wrong);
  const auto first = places.begin() + (nth > 0 ? nth - 1 : 0);
  if (!row) {
    std::rotate(places.begin(), first, places.end());
    places = still_free(fabric_, places);
    if (against && !places.empty()) std::reverse(places.begin() + 1, places.end());
    return places;
  }
  if (against) std::reverse(places.begin(), nth > 0 ? first + 1 : places.end());
  if (against && nth > 0) places.resize(nth);
  if (!against) places.erase(places.begin(), first);
  return still_free(fabric_, places);
}

/// The loops left free on the stitches of the round named; if they are not, and it was itself worked in the
/// other loops, those of the round before it.
bool Hand::open_free_loops(const Node& node) {
  if (node.round == pattern::no_round)
    return stop(node, "edge",
                "there is no round " + std::to_string(node.number) + " whose loops could be worked into");
  const std::uint32_t named = round_meant(node);
  if (named == none) return stop(node, "edge", "the round whose loops are to be worked into was not worked");
  const Round& round = fabric_.rounds[named];
  const std::uint8_t loops = node.work.loops;
  std::uint32_t owner = named;
  std::vector<Place> places = loops_left(fabric_, named, loops);
  if (places.empty() && named > fabric_.parts[round.part].first_round) {
    places = loops_left(fabric_, named - 1, loops);
    if (!places.empty()) {
      owner = named - 1;
      const std::uint8_t found = places.front().loops;
      const std::uint8_t other = static_cast<std::uint8_t>(stitch::both & ~found);
      outcome_.notes.push_back({node.span, std::string("the free ") + name_of_loops(found) +
                                               " are those of " + fabric::name_of(fabric_.rounds[named - 1]) +
                                               ", as " + fabric::name_of(round) + " is worked into the " +
                                               name_of_loops(other)});
    }
  }
  if (places.empty() && named + 1 == last_worked_end(round.part)) {
    places = tops_of(fabric_, named);
    for (Place& place : places) place.loops = loops != 0 ? loops : place.loops;
  }
  if (places.empty())
    return stop(
        node, "edge",
        std::string("there are no free ") + name_of_loops(loops) + " of " + fabric::name_of(round) +
            ": all of them are worked into" +
            (hides_loops(fabric_, named) ? ", or lie out of reach behind an invisible decrease" : ""));
  const bool up = tree_.parts[fabric_.parts[part_].text].hold == pattern::Hold::start_up;
  const std::uint32_t last = node.work.nth + (node.work.times > 1 ? node.work.times - 1 : 0);
  if (last > places.size())
    return stop(node, "edge",
                fabric::name_of(round) + " has " + std::to_string(places.size()) + " " +
                    name_of_loops(loops) + ", there is no loop " + std::to_string(last));
  if (node.work.nth > 0) warn_of_taken(node, places[node.work.nth - 1], owner);
  opened_ = what_was_open(places, owner);
  std::uint32_t first = node.work.nth;
  if (node.work.times > 1) { // "loops 4-9": the last of them is met first where it is held the other way up
    places = {places.begin() + (node.work.nth - 1), places.begin() + last};
    first = up ? node.work.times : 1;
  }
  places = in_order_met(std::move(places), round, first, up);
  return open_places(std::move(places));
}

std::uint32_t Hand::last_worked_end(std::uint32_t part) const {
  return fabric_.parts[part].first_round + fabric_.parts[part].rounds;
}

/// How many of the places left unworked a round can mean: what it uses whatever there is, else its count;
/// 0: nothing tells.
std::uint32_t Hand::wanted_of_skipped() const {
  const pattern::RoundText& text = tree_.rounds[fabric_.rounds.back().text];
  if (text.effect.pass_uses == 0 && text.effect.uses > 0) return text.effect.uses;
  return text.stated.empty() ? 0 : text.stated.front().count;
}

bool Hand::open_skipped(const Node& node) {
  const std::uint32_t named = round_meant(node);
  if (named == none) return stop(node, "edge", "the round that left stitches unworked was not worked");
  bool of_it = false;
  std::vector<Place> places = left_unworked(fabric_, named, of_it);
  if (all_taken(fabric_, places)) places = last_unworked(fabric_, places);
  const std::string name = fabric::name_of(fabric_.rounds[named]);
  if (places.empty()) return stop(node, "edge", "no stitches were left unworked in " + name);
  if (of_it)
    outcome_.notes.push_back(
        {node.span, "the stitches left unworked are those of " + name + " itself: it left none"});
  gap_round_ = named;
  return open_places(first_gap(std::move(places), wanted_of_skipped()));
}

/// The chains that the round made over the stitches which it skipped, along their under side, on the way
/// back.
bool Hand::open_under_gap(const Node& node) {
  for (const Arch& arch : fabric_.arches) {
    if (fabric_.stitches[arch.first_chain].round != gap_round_ || arch.count < 2) continue;
    std::vector<Place> places;
    for (std::uint32_t nth = arch.count; nth > 0; --nth)
      places.push_back(Place{arch.first_chain + nth - 1, On::chain_side, stitch::third});
    if (!all_taken(fabric_, places)) return open_places(std::move(places));
  }
  return stop(node, "edge", "there are no chains to be worked along their other side");
}

/// The chains just made between two parts: the side along which the hook comes first.
std::vector<Place> Hand::bridge() {
  std::vector<Place> near;
  if (arch_ == none) return near;
  for (auto id = static_cast<StitchId>(fabric_.stitches.size()); id > arch_; --id)
    near.push_back(Place{id - 1, On::chain_side, stitch::both});
  return near;
}

/// "sc in each ch around" of a chain that was joined: along it, not into the ring it makes.
bool Hand::open_ring_of_chains() {
  if (!edge_.is_ring() || ring_count_ == 0) return false;
  std::vector<Place> places;
  for (auto i = static_cast<std::uint32_t>(edge_.made()); i < ring_count_; ++i)
    places.push_back(Place{ring_first_ + i, On::chain_side, stitch::both});
  edge_.reopen(std::move(places));
  outcome_.opened = true;
  return true;
}

/// The last round of the part that is meant, but for the one being worked.
std::uint32_t Hand::last_round_of(std::uint32_t named) const {
  const auto current = static_cast<std::uint32_t>(fabric_.rounds.size() - 1);
  std::uint32_t last = named;
  for (std::uint32_t i = named; i < current && fabric_.rounds[i].part == fabric_.rounds[named].part; ++i)
    if (fabric_.rounds[i].worked) last = i;
  return last;
}

/// Whether the leg on the hook is worked up and the chains lead away from it: they are part of the round, and
/// only their other side is worked on the way back.
bool Hand::leads_away() const {
  return arch_ != none && edge_.left() == 0 && arch_ > fabric_.rounds.back().first_stitch;
}

/// Legs joined: the other part's last round, the near side of a chain between them, what is still open, and
/// the chain's other side. A part's own edge is open as it is, once its double was joined to it.
bool Hand::open_part_edge(const Node& node) {
  const std::uint32_t named = round_meant(node);
  if (named == none) return stop(node, "edge", "the part that is to be joined was not worked");
  if (outcome_.joined_parts && fabric_.rounds[named].part == part_) return true;
  const std::uint32_t round = last_round_of(named);
  std::vector<Place> before = tops_of(fabric_, round);
  const std::vector<Place> near = bridge();
  before.insert(before.end(), near.begin(), near.end());
  std::vector<Place> behind(near.rbegin(), near.rend());
  if (leads_away()) behind.clear(), close_arch();
  arch_ = none;
  for (Place& place : behind) place.loops = stitch::third;
  fresh_ = false;
  foundation_count_ = 0;
  const std::size_t was = edge_.left();
  edge_.widen(before, behind);
  Round& joined = fabric_.rounds.back();
  const bool first = !outcome_.joined_parts;
  joined.joined_open += static_cast<std::uint32_t>(edge_.left() - (first ? 0 : was));
  outcome_.opened = outcome_.joined_parts = true;
  const bool flap = joined.kind == pattern::RoundKind::row && first && fabric_.rounds[named].part != part_;
  if (flap) outcome_.start = Start::free_loops; // it stands on the other part as on loops left free
  return true;
}

} // namespace whorl::fabric
