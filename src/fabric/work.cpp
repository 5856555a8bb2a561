#include "fabric/working.hpp"

#include "fabric/footprint.hpp"
#include "fabric/placing.hpp"
#include "fabric/slug.hpp"
#include "fabric/tally.hpp"

#include <algorithm>

namespace whorl::fabric {

using pattern::RoundText;
using pattern::Severity;
using pattern::Tree;

namespace {

/// More rounds than any pattern has, so that a slip in a range costs nothing.
constexpr std::int64_t most_rounds = 100'000;

/// The yarn that is changed to between the rounds, before every entry of the text.
std::vector<std::uint8_t> yarns_before(const Tree& tree) {
  std::vector<std::uint8_t> yarns(tree.rounds.size() + 1, 0);
  for (const pattern::Part& part : tree.parts)
    if (part.first_round < yarns.size()) yarns[part.first_round] = part.yarn;
  for (const pattern::Placing& placing : tree.placings)
    if ((placing.what == pattern::What::change || placing.attaches) && placing.yarn != 0 &&
        placing.after_round < yarns.size())
      yarns[placing.after_round] = placing.yarn;
  return yarns;
}

/// Whether yarn is joined between the rounds of a part, before every entry of the text.
std::vector<bool> attached_before(const Tree& tree) {
  std::vector<bool> attached(tree.rounds.size() + 1, false);
  for (const pattern::Placing& placing : tree.placings)
    if (placing.attaches && placing.after_round < attached.size()) attached[placing.after_round] = true;
  for (const pattern::Part& part : tree.parts)
    if (part.first_round < attached.size()) attached[part.first_round] = false;
  return attached;
}

} // namespace

Working::Working(const Tree& tree, std::uint32_t limit)
    : tree_(tree), limit_(limit), needs_(needs_of(tree)), last_rounds_(tree.rounds.size(), none),
      yarns_(yarns_before(tree)), attached_(attached_before(tree)),
      hand_(tree, needs_, last_rounds_, worked_.fabric, edge_, limit) {
  fabric().kinds = tree.kinds;
  fabric().group_names = tree.group_names;
}

Worked Working::work() {
  for (std::uint32_t part = 0; part < tree_.parts.size(); ++part) work_part(part);
  fabric().taken.resize(fabric().stitches.size(), stitch::no_loop);
  place_all(tree_, fabric(), worked_.findings);
  find_footprints(tree_, fabric());
  return std::move(worked_);
}

Mark Working::mark() {
  return {fabric().stitches.size(), fabric().legs.size(),    fabric().arches.size(), fabric().groups.size(),
          fabric().unworked.size(), fabric().changes.size(), fabric().rounds.size()};
}

void Working::begin_part(std::uint32_t index) {
  Part part;
  part.name = tree_.parts[index].name;
  part.key = unique_slug(part.name, keys_);
  part.make = tree_.parts[index].make;
  part.first_round = static_cast<std::uint32_t>(fabric().rounds.size());
  part.text = index;
  fabric().parts.push_back(part);
  edge_.clear();
  edge_known_ = true;
  labelled_.clear();
  before_.clear();
  hand_.begin_part();
}

void Working::work_part(std::uint32_t index) {
  begin_part(index);
  const std::uint32_t end = pattern::end_round(tree_, index);
  for (std::uint32_t text = tree_.parts[index].first_round; text < end; ++text) work_text(text);
}

void Working::work_text(std::uint32_t index) {
  const RoundText& text = tree_.rounds[index];
  if (yarns_[index] != 0) hand_.change_yarn(yarns_[index]);
  const std::int64_t last = std::max(text.from, text.to);
  const std::int64_t room = most_rounds - static_cast<std::int64_t>(fabric().rounds.size());
  if (last - text.from >= room) {
    say(Severity::error, "limit", text.span, "this is more than " + std::to_string(most_rounds) + " rounds");
    if (room <= 0) return;
    stop_part(text);
    text_said_ = index;
    begin_round(index, text.from);
    count_only();
    return;
  }
  for (std::int64_t number = text.from; number <= last; ++number) {
    work_round(index, static_cast<int>(number));
    last_rounds_[index] = static_cast<std::uint32_t>(fabric().rounds.size() - 1);
  }
}

void Working::begin_round(std::uint32_t index, int number) {
  const RoundText& text = tree_.rounds[index];
  Round round;
  round.part = static_cast<std::uint32_t>(fabric().parts.size() - 1);
  round.number = number;
  round.again = labelled_[number]++;
  round.first_stitch = static_cast<StitchId>(fabric().stitches.size());
  round.stated = text.stated.empty() ? -1 : static_cast<std::int64_t>(text.stated.front().count);
  round.kind = text.kind;
  round.side = hand_.side();
  round.text = index;
  round.attached = number == text.from && attached_[index];
  fabric().rounds.push_back(round);
}

/// What the text states is open for the next round.
void Working::open_stated() {
  const std::int64_t stated = std::max<std::int64_t>(round().stated, 0);
  edge_.open_counted(static_cast<std::size_t>(std::min<std::int64_t>(stated, limit_)));
}

/// The round has no stitches here; it goes on with what the text states.
void Working::count_only() {
  Round& round = fabric().rounds.back();
  round.worked = false;
  edge_known_ = round.stated >= 0;
  open_stated();
  round.counted = round.makes = static_cast<std::uint32_t>(edge_.left());
  before_ = fabric::name_of(round);
  ++part().counted_only;
}

/// Whether there is anything to be tried: it was read, and the edge before it is known.
bool Working::is_workable(const RoundText& text, const Need& need) {
  if (!text.read || text.body == pattern::no_node || need.hurdle != Hurdle::nothing) {
    say_hurdle(text, need.hurdle);
    stop_part(text);
    return false;
  }
  if (edge_known_ || need.starts) return true;
  if (need.to_end) return false;
  edge_.open_counted(std::min<std::uint64_t>(need.surely(), limit_));
  return true;
}

/// A turning chain of the row before stands on the first place.
Need Working::need_with_carried(Need need) const {
  if (hand_.carried_chains() == 0 || need.starts) return need;
  ++need.uses;
  ++need.makes;
  need.stitches += hand_.carried_chains();
  return need;
}

void Working::work_round(std::uint32_t index, int number) {
  const RoundText& text = tree_.rounds[index];
  const Need need = need_with_carried(needs_[index]);
  const Mark before = mark();
  begin_round(index, number);
  if (!is_workable(text, need)) return count_only();
  const std::size_t said = worked_.findings.size();
  const bool fit = fits(text, need);
  if (text_said_ == index) worked_.findings.resize(said);
  if (!fit) {
    text_said_ = index;
    stop_part(text);
    if (need.stitches > limit_ || need.uses > limit_) return count_only();
    edge_.lengthen(need.surely() - edge_.left());
  }
  hand_.take_named(by_kind(text, need));
  const Outcome outcome = hand_.work(text.body, need, static_cast<std::uint32_t>(fabric().parts.size() - 1));
  if (outcome.stop) {
    report(text, outcome);
    drop(before);
    stop_part(text);
    return count_only();
  }
  finish(outcome, hand_);
  if (part().whole) return report(text, outcome), keep(before, outcome);
  report(text, outcome);
  drop(before);
  round().worked = false;
  ++part().counted_only;
  if (!fit && round().stated >= 0) open_stated();
}

namespace {

/// How many stitches a round skips beside one another, at the most.
std::uint32_t most_skipped(const Fabric& fabric, std::uint32_t round) {
  std::uint32_t most = 0, run = 0;
  StitchId last = none;
  for (const Unworked& skipped : fabric.unworked) {
    if (skipped.round != round || !skipped.on_purpose) continue;
    run = last != none && skipped.place.of == last + 1 ? run + 1 : 1;
    last = skipped.place.of;
    most = std::max(most, run);
  }
  return most;
}

/// "…, ch 3, join": the last chains of a round pass over as many stitches as the others do, which no word
/// says.
bool last_arch_passes(const Fabric& fabric, std::uint32_t round, std::uint64_t left) {
  const Round& it = fabric.rounds[round];
  if (it.count < 3 || !it.joined) return false;
  const StitchId join = it.first_stitch + it.count - 1, before = join - 1;
  const bool arch = (fabric.stitches[join].flags & joins) != 0 && legs_of(fabric, before).size() == 0 &&
                    (fabric.stitches[before].flags & starts_chain) == 0;
  return arch && left <= most_skipped(fabric, round);
}

} // namespace

/// The figures of the round just worked; the edge goes on to the next.
void Working::finish(const Outcome& outcome, Hand& hand) {
  Round& round = fabric().rounds.back();
  round.count = static_cast<std::uint32_t>(fabric().stitches.size()) - round.first_stitch;
  round.uses = static_cast<std::uint32_t>(outcome.uses);
  const bool on_it_all = (!outcome.opened || outcome.joined_parts) && !outcome.passes_by;
  const bool must_use_all = round.kind == pattern::RoundKind::round && !round.turned && on_it_all &&
                            !outcome.uneven && !edge_.is_ring();
  std::uint64_t left = edge_.left();
  if (left == 1 && outcome.folded) left = 0;
  const auto number = static_cast<std::uint32_t>(fabric().rounds.size() - 1);
  if (must_use_all && left > outcome.left_on_purpose &&
      !last_arch_passes(fabric(), number, left - outcome.left_on_purpose))
    round.left_over = static_cast<std::uint32_t>(left - outcome.left_on_purpose);
  edge_.close_round();
  if (hand.open_foundation()) round.kind = pattern::RoundKind::chain;
  round.makes = static_cast<std::uint32_t>(edge_.left());
  tally_round(fabric());
  const RoundText& text = tree_.rounds[round.text];
  round.counted = counted_as(fabric(), round, text.stated.empty() ? pattern::Stated{} : text.stated.front());
  const std::uint32_t all = counted_as(fabric(), round, {});
  if (const std::uint32_t sum = sum_of_kinds(text.stated); sum > 0 && sum == all)
    round.stated = round.counted = sum;
  if (counts_groups(fabric(), round, text.stated)) round.stated = round.counted = all;
  before_ = fabric::name_of(round);
  edge_known_ = true;
}

/// The round stands: its part grows by it, and the loops it went into are taken.
void Working::keep(const Mark& before, const Outcome& outcome) {
  if (part().start == Start::nothing) part().start = outcome.start;
  if (fabric().rounds.size() > before.rounds + 1) keep_foundation(before.rounds);
  take_loops();
  const bool foundation =
      round().kind == pattern::RoundKind::chain && part().rounds == 0 && part().foundation == none;
  if (foundation) {
    round().number = 0;
    keep_foundation(before.rounds);
  } else {
    ++part().rounds;
  }
}

void Working::keep_foundation(std::size_t index) {
  part().foundation = static_cast<std::uint32_t>(index);
  part().first_round = static_cast<std::uint32_t>(index + 1);
}

/// The fabric as it was.
void Working::take_back(const Mark& before) {
  fabric().stitches.resize(before.stitches);
  fabric().legs.resize(before.legs);
  fabric().arches.resize(before.arches);
  fabric().groups.resize(before.groups);
  fabric().unworked.resize(before.unworked);
  fabric().changes.resize(before.changes);
  fabric().rounds.resize(before.rounds);
}

/// Takes back the stitches of a round that is only counted; its figures stay.
void Working::drop(const Mark& before) {
  const Round figures = round();
  take_back(before);
  fabric().rounds.push_back(figures);
  round().first_stitch = static_cast<StitchId>(before.stitches);
  round().count = 0;
  round().counting_chain = none;
  edge_.open_counted(figures.makes);
}

/// An invisible decrease hides the back loops behind it: no hook can reach them.
void Working::take_loops() {
  fabric().taken.resize(fabric().stitches.size(), stitch::no_loop);
  const StitchId first = fabric().rounds.back().first_stitch;
  for (StitchId i = first; i < fabric().stitches.size(); ++i) {
    if ((fabric().stitches[i].flags & joins) != 0) continue; // it closes the round and leaves its loops free
    const bool hides = hand_.hides_back_loops(fabric().stitches[i].kind);
    for (const Leg& leg : legs_of(fabric(), i))
      if (leg.into.what == On::top || leg.into.what == On::chain_side)
        fabric().taken[leg.into.of] |= hides ? std::uint8_t{stitch::both} : leg.into.loops;
  }
}

Worked work(const Tree& tree, std::uint32_t limit) { return Working(tree, limit).work(); }

} // namespace whorl::fabric
