#include "ovals.hpp"

#include "stitch/kind.hpp"

#include <algorithm>

namespace whorl::layout::test {

using fabric::Fabric;
using fabric::StitchId;

Oblong::Oblong(const Round1& first) : first_(first) {
  fabric.kinds = stitch::standard_kinds();
  fabric::Part part;
  part.name = part.key = "sole";
  part.start = fabric::Start::chain;
  part.foundation = 0;
  part.first_round = 1;
  fabric.parts.push_back(part);
  fabric::Round chain;
  chain.kind = pattern::RoundKind::chain;
  chain.count = first.chains + first.skipped;
  for (std::uint32_t i = 0; i < chain.count; ++i) stitch("ch", fabric::starts_chain);
  fabric.rounds.push_back(chain);
  begin_round();
  fabric.rounds.back().both_sides = true;
  std::vector<StitchId> tops;
  const auto work = [&](StitchId into, std::uint32_t place, std::uint8_t loops) {
    tops.push_back(stitch(first.kinds[place % first.kinds.size()], fabric::counts));
    leg(into, fabric::On::chain_side, loops);
  };
  for (std::uint32_t i = first.chains; i-- > 1;) work(i, first.chains - 1 - i, stitch::both);
  for (std::uint32_t i = 0; i < first.far; ++i) work(0, first.chains - 1, stitch::both);
  for (std::uint32_t i = 1; i + 1 < first.chains; ++i) work(i, first.chains - 1 - i, stitch::third);
  for (std::uint32_t i = 0; i < first.near; ++i) work(first.chains - 1, 0, stitch::third);
  end_round(tops);
}

StitchId Oblong::stitch(const std::string& kind, std::uint8_t flags) {
  fabric::Stitch one;
  one.kind = *stitch::find_kind(fabric.kinds, kind);
  one.round = static_cast<std::uint32_t>(fabric.rounds.empty() ? 0 : fabric.rounds.size() - 1);
  one.first_leg = static_cast<std::uint32_t>(fabric.legs.size());
  one.flags = flags;
  fabric.stitches.push_back(one);
  return static_cast<StitchId>(fabric.stitches.size() - 1);
}

void Oblong::leg(StitchId into, fabric::On what, std::uint8_t loops) {
  fabric.legs.push_back({{into, what, loops}});
}

void Oblong::begin_round() {
  fabric::Round round;
  round.number = static_cast<int>(++fabric.parts[0].rounds);
  round.first_stitch = static_cast<StitchId>(fabric.stitches.size());
  round.joined = first_.joined;
  fabric.rounds.push_back(round);
  if (first_.joined && round.number > 1) stitch("ch", fabric::starts_chain);
}

void Oblong::end_round(const std::vector<StitchId>& tops) {
  if (first_.joined) {
    stitch("sl st", fabric::joins);
    leg(tops.front(), fabric::On::top, stitch::both);
  }
  fabric::Round& round = fabric.rounds.back();
  round.count = static_cast<std::uint32_t>(fabric.stitches.size()) - round.first_stitch;
  round.counted = round.makes = static_cast<std::uint32_t>(tops.size());
  open_ = tops;
}

Oblong& Oblong::round(const Steps& steps) {
  begin_round();
  std::vector<StitchId> tops;
  std::uint32_t place = 0;
  for (const Step& step : steps) {
    for (std::uint32_t i = 0; i < step.in_one; ++i) {
      tops.push_back(stitch(step.kind, fabric::counts));
      leg(open_.at(place), fabric::On::top, step.loops);
    }
    ++place;
  }
  fabric.rounds.back().uses = place;
  end_round(tops);
  return *this;
}

Oblong& Oblong::grow(std::uint8_t loops, const std::string& kind) {
  // near end before the first side, far end, and near end after the other: 1, 3 and 2 shares
  const std::uint32_t side = first_.chains - 2;
  Steps steps;
  const auto ends = [&](std::uint32_t shares) {
    for (std::uint32_t i = 0; i < shares; ++i) {
      for (std::uint32_t j = 0; j < grown_; ++j) steps.push_back({kind, 1, loops});
      steps.push_back({kind, 2, loops});
    }
  };
  const auto sides = [&] { steps.insert(steps.end(), side, Step{kind, 1, loops}); };
  ends(1), sides(), ends(first_.far), sides(), ends(first_.near);
  ++grown_;
  return round(steps);
}

Oblong& Oblong::even(std::uint8_t loops, const std::string& kind) {
  return round(Steps(open(), Step{kind, 1, loops}));
}

Fabric random_oval(std::uint64_t seed) {
  Dice dice{seed * 2654435761U + 977};
  const char* kinds[] = {"sc", "sc", "sc", "hdc", "dc"};
  Round1 first;
  first.chains = 3 + dice.below(10);
  first.joined = dice.below(3) == 0;
  const std::string kind = kinds[dice.below(5)];
  first.kinds = {kind};
  first.skipped = kind == "sc" ? 1 : kind == "hdc" ? 2 : 3;
  if (dice.below(4) == 0) first.kinds = {"sc", "hdc", "dc", "dc", "hdc"}, first.skipped = 1;
  Oblong oval(first);
  const auto loops = [&dice] {
    const std::uint32_t roll = dice.below(6);
    return roll == 0 ? stitch::back : roll == 1 ? stitch::front : stitch::both;
  };
  for (std::uint32_t i = dice.below(6); i > 0; --i) oval.grow(loops(), kind);
  for (std::uint32_t i = dice.below(4); i > 0; --i) oval.even(loops(), kind);
  return oval.fabric;
}

} // namespace whorl::layout::test
