#include "layout/oval_core.hpp"

#include "layout/oval_ring.hpp"
#include "layout/turn.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

/// The chain of a starting chain that an item goes into.
StitchId chain_under(const Fabric& fabric, const OvalCore& core, const Item& item) {
  const fabric::Legs legs = legs_of(fabric, item);
  if (legs.size() == 0) return fabric::none;
  const fabric::Place& into = legs.begin()->into;
  const bool stitch = into.what == fabric::On::top || into.what == fabric::On::chain_side;
  return stitch && into.of >= core.far && into.of <= core.near ? into.of : fabric::none;
}

/// Where the stitches of a first round want to be: beside their chain, or fanned round the end.
class FirstSeats {
public:
  FirstSeats(const Fabric& fabric, const OvalCore& core, const Stadium& stadium,
             const std::vector<Item>& items, double pitch)
      : stadium_(stadium), core_(core), pitch_(pitch),
        beyond_(2 * stadium.half - pitch * (core.chains() - 1)) {
    for (const Item& item : items) under_.push_back(chain_under(fabric, core, item));
    for (const StitchId chain : under_)
      ++(chain == core.far ? at_far_ : chain == core.near ? at_near_ : none_);
  }

  std::vector<std::optional<double>> seats() {
    std::vector<std::optional<double>> all;
    for (const StitchId chain : under_) all.push_back(seat(chain));
    return all;
  }

private:
  std::optional<double> seat(StitchId chain) {
    constexpr double r = seats_lap.r;
    if (chain == fabric::none) return std::nullopt;
    if (chain == core_.far) return far_end_begins(stadium_) + pi * r * (far_met_++ + 0.5) / at_far_;
    if (chain == core_.near) return near_seat();
    const double from_far = pitch_ * (chain - core_.far);
    return far_met_ == 0 ? 2 * stadium_.half - from_far : back_begins(stadium_, r) + from_far;
  }

  /// Those met last stand before those met first, on the way round the near end.
  double near_seat() {
    constexpr double r = seats_lap.r;
    if (far_met_ == 0) return ++near_first_, beyond_;
    const double angle = pi * (near_last_++ + 0.5) / at_near_;
    return near_end_begins(stadium_, r) + r * angle;
  }

  Stadium stadium_;
  OvalCore core_;
  double pitch_;
  double beyond_; ///< of the core, past the last chain that is worked into
  std::vector<StitchId> under_;
  int at_far_ = 0, at_near_ = 0, none_ = 0, far_met_ = 0, near_first_ = 0, near_last_ = 0;
};

} // namespace

std::vector<std::optional<double>> first_seats(const Fabric& fabric, const OvalCore& core,
                                               const Stadium& stadium, const std::vector<Item>& items,
                                               double pitch) {
  return FirstSeats(fabric, core, stadium, items, pitch).seats();
}

OvalCore oval_core(const Fabric& fabric, std::uint32_t part) {
  const fabric::Part& worked = fabric.parts[part];
  if (worked.foundation == fabric::none || worked.rounds == 0) return {};
  const fabric::Round &chain = fabric.rounds[worked.foundation], &round = fabric.rounds[worked.first_round];
  if (!round.both_sides || round.kind != pattern::RoundKind::round || round.turned) return {};
  OvalCore core{chain.first_stitch, 0};
  StitchId before = fabric::none;
  bool back = false;
  for (StitchId stitch = round.first_stitch; stitch < round.first_stitch + round.count; ++stitch) {
    if ((fabric.stitches[stitch].flags & fabric::joins) != 0)
      continue; // into the top of the chains beside it
    for (const fabric::Leg& leg : fabric::legs_of(fabric, stitch)) {
      const StitchId of = leg.into.of;
      if (leg.into.what == fabric::On::ring || leg.into.what == fabric::On::space) return {};
      if (of >= round.first_stitch && of < stitch) continue;
      if (of < chain.first_stitch || of >= chain.first_stitch + chain.count) return {};
      // along it to its far end, and back
      if (before != fabric::none && (back ? of < before : of > before && before != core.far)) return {};
      if (before == fabric::none) core.near = of;
      if (of == core.far) back = true;
      before = of;
    }
  }
  return back && before <= core.near ? core : OvalCore{};
}

} // namespace whorl::layout
