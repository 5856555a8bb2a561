#include "fabric/blame.hpp"

#include "pattern/effect.hpp"
#include "pattern/reading.hpp"

#include <algorithm>

namespace whorl::fabric {
namespace {

pattern::Effect effect_of(const pattern::Tree& tree, const pattern::RoundText& text) {
  const pattern::Effect effect = pattern::effect_of(tree.nodes, text.body, tree.kinds);
  return effect == pattern::Effect{} ? text.effect : effect; // "as round 5" has none of its own
}

bool is_of_stitches(const pattern::Stated& stated) {
  return stated.unit == pattern::Unit::any || stated.unit == pattern::Unit::stitches;
}

/// Whether the round begins with chains that do not count.
bool has_uncounted_chain(const Fabric& fabric, const Round& round) {
  return round.count > 0 && round.counting_chain == none &&
         (fabric.stitches[round.first_stitch].flags & starts_chain) != 0;
}

/// Chains next to the hook that the first round passed by: two or more may stand for a stitch.
bool has_skipped_chains(const Fabric& fabric, const Round& round) {
  const Part& part = fabric.parts[round.part];
  if (part.foundation == none || round.counting_chain != none || &round != &fabric.rounds[part.first_round])
    return false;
  const Round& chain = fabric.rounds[part.foundation];
  std::uint32_t passed = 0;
  while (passed < chain.count && fabric.taken[chain.first_stitch + chain.count - 1 - passed] == 0) ++passed;
  return passed >= 2 && passed < chain.count;
}

/// Stitches of a round worked into the first side of the chain, or the other.
std::uint32_t on_side(const Fabric& fabric, const Round& round, bool far) {
  std::uint32_t count = 0;
  for (StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id) {
    const Legs legs = legs_of(fabric, id);
    const bool counted = (fabric.stitches[id].flags & counts) && legs.size() > 0;
    if (counted && legs.begin()->into.what == On::chain_side)
      count += (legs.begin()->into.loops == stitch::third) == far ? 1 : 0;
  }
  return count;
}

std::string sides_of(const Fabric& fabric, const Round& round) {
  return ": " + std::to_string(on_side(fabric, round, false)) + " on the first side of the chain and " +
         std::to_string(on_side(fabric, round, true)) +
         " on the other, where each end should be gone round once";
}

} // namespace

bool comes_out(const pattern::Tree& tree, std::uint32_t index, std::int64_t open) {
  const pattern::RoundText& text = tree.rounds[index];
  if (text.body == pattern::no_node) return false;
  const pattern::Outcome out = pattern::outcome(effect_of(tree, text), open);
  return out.left_over == 0 && out.past_end == 0 && out.remainder == 0;
}

bool agrees_with(const pattern::Tree& tree, std::uint32_t index, std::int64_t open) {
  const pattern::RoundText& text = tree.rounds[index];
  if (!comes_out(tree, index, open) || text.stated.empty() || !is_of_stitches(text.stated.front()))
    return false;
  return pattern::outcome(effect_of(tree, text), open).makes ==
         static_cast<std::int64_t>(text.stated.front().count);
}

std::string if_counted(const Fabric& fabric, const Round& round, const pattern::Stated& stated,
                       std::uint32_t count) {
  using pattern::Unit;
  if (stated.unit == Unit::spaces || stated.unit == Unit::chains || stated.unit == Unit::group) return {};
  const std::int64_t more = static_cast<std::int64_t>(stated.count) - count;
  const std::string only = ": that is right only if ";
  if (more == -1 && round.counting_chain != none) return only + "the starting chain is not counted";
  if (more == 1 && has_skipped_chains(fabric, round))
    return only + "the chains skipped at the hook are counted as a stitch";
  const bool chain = has_uncounted_chain(fabric, round);
  if (more == 1 && chain && round.joined)
    return only + "the starting chain or the joining slip stitch is counted";
  if (more == 1 && chain) return only + "the starting chain is counted";
  if (more == 1 && round.joined) return only + "the joining slip stitch is counted";
  if (round.both_sides && (more == 2 || more == -2)) return sides_of(fabric, round);
  return {};
}

} // namespace whorl::fabric
