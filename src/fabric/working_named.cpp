#include "fabric/named.hpp"
#include "fabric/tally.hpp"
#include "fabric/working.hpp"

#include <algorithm>
#include <utility>

namespace whorl::fabric {

using pattern::RoundText;

namespace {

/// Whether the edge has stitches of that kind and others.
bool is_mixed(const Fabric& fabric, const std::vector<Place>& open, stitch::KindId named) {
  bool some = false, others = false;
  for (const Place& place : open) {
    if (place.what != On::top || place.of == none) continue;
    (is_named(fabric.kinds, fabric.stitches[place.of].kind, named) ? some : others) = true;
  }
  return some && others;
}

int troubles_of(const Fabric& fabric, const RoundText& text, const Outcome& outcome) {
  const Round& round = fabric.rounds.back();
  int troubles = (outcome.uneven ? 1 : 0) + (round.left_over > 0 ? 1 : 0);
  for (const pattern::Stated& stated : text.stated)
    troubles += counted_as(fabric, round, stated) != stated.count ? 1 : 0;
  return troubles;
}

} // namespace

/// "In next sc" tells something only where some of the stitches that are open are sc and others are not.
bool Working::may_name_places(const RoundText& text, const Need& need) const {
  if (need.starts || edge_.is_ring()) return false;
  const auto named = named_from(tree_, text.body);
  if (named.empty()) return false;
  const std::vector<Place> open = edge_.rest();
  return std::any_of(named.begin(), named.end(),
                     [&](const NamedPlaces& one) { return is_mixed(worked_.fabric, open, one.kind); });
}

/// Works the round by a hand of its own and takes it back.
Trial Working::try_round(const RoundText& text, const Need& need, ByKind by_kind) {
  const Mark before = mark();
  const Edge edge = edge_;
  const Round round_before = round();
  const std::size_t tallies = fabric().tallies.size();
  const std::string name_before = before_;
  Hand hand = hand_;
  hand.take_named(by_kind);
  Trial trial;
  trial.outcome = hand.work(text.body, need, static_cast<std::uint32_t>(fabric().parts.size() - 1));
  if (!trial.outcome.stop) {
    trial.whole = edge_.left() == 0 && !trial.outcome.passes_by;
    finish(trial.outcome, hand);
    trial.troubles = troubles_of(fabric(), text, trial.outcome);
  }
  take_back(before);
  fabric().tallies.resize(tallies);
  round() = round_before;
  before_ = name_before;
  edge_ = edge;
  return trial;
}

/// A round that does not come out either way may name stitches that are not there.
void Working::say_lacking(const RoundText& text, const Stop& stop) {
  if (text_said_ == round().text) return;
  say(pattern::Severity::warning, "place", stop.span.empty() ? body_span(text) : stop.span,
      fabric::name_of(round()) + ": " + stop.message);
}

/// The kinds are meant where a stitch of another kind comes, and the round comes out at least as well if it
/// is passed by. A round that uses all it finds and meets its count takes the word for any stitch.
ByKind Working::by_kind(const RoundText& text, const Need& need) {
  if (!may_name_places(text, need)) return ByKind::as_it_comes;
  const Trial as_it_comes = try_round(text, need, ByKind::watch);
  if (!as_it_comes.outcome.met_other) return ByKind::as_it_comes;
  const bool right = !as_it_comes.outcome.stop && as_it_comes.troubles == 0;
  if (right && as_it_comes.whole) return ByKind::as_it_comes;
  const Trial looked_for = try_round(text, need, ByKind::look_for);
  if (looked_for.outcome.lacks_named && !right) say_lacking(text, *looked_for.outcome.stop);
  if (looked_for.outcome.stop) return ByKind::as_it_comes;
  const bool as_well = as_it_comes.outcome.stop || looked_for.troubles <= as_it_comes.troubles;
  return as_well ? ByKind::look_for : ByKind::as_it_comes;
}

} // namespace whorl::fabric
