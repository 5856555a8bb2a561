#include "flats.hpp"

#include "stitch/kind.hpp"

#include <algorithm>

namespace whorl::layout::test {

using fabric::Fabric;
using fabric::StitchId;

Flat::Flat() { fabric.kinds = stitch::standard_kinds(); }

void Flat::stitch(const std::string& kind, std::uint8_t flags) {
  fabric::Stitch one;
  one.kind = *stitch::find_kind(fabric.kinds, kind);
  one.round = static_cast<std::uint32_t>(fabric.rounds.size());
  one.first_leg = static_cast<std::uint32_t>(fabric.legs.size());
  one.flags = flags;
  fabric.stitches.push_back(one);
}

Flat& Flat::begin(const std::string& name, std::uint32_t chains) {
  fabric::Part part;
  part.name = part.key = name;
  part.start = fabric::Start::chain;
  part.foundation = static_cast<std::uint32_t>(fabric.rounds.size());
  part.first_round = part.foundation + 1;
  fabric::Round chain;
  chain.part = static_cast<std::uint32_t>(fabric.parts.size());
  chain.kind = pattern::RoundKind::chain;
  chain.first_stitch = static_cast<StitchId>(fabric.stitches.size());
  chain.count = chains;
  open_.clear();
  for (std::uint32_t i = 0; i < chains; ++i) {
    open_.insert(open_.begin(), static_cast<StitchId>(fabric.stitches.size()));
    stitch("ch", fabric::starts_chain);
  }
  fabric.parts.push_back(part);
  fabric.rounds.push_back(chain);
  return *this;
}

Flat& Flat::row(const Steps& steps, std::uint32_t chains, bool counting, std::uint32_t skipped) {
  fabric::Part& part = fabric.parts.back();
  fabric::Round row;
  row.part = static_cast<std::uint32_t>(fabric.parts.size() - 1);
  row.number = static_cast<int>(++part.rounds);
  row.kind = pattern::RoundKind::row;
  row.turned = true;
  row.side = row.number % 2 == 1 ? fabric::Side::right : fabric::Side::wrong;
  row.first_stitch = static_cast<StitchId>(fabric.stitches.size());
  std::vector<StitchId> tops;
  std::uint32_t place = skipped;
  for (std::uint32_t i = 0; i < chains; ++i) stitch("ch", fabric::starts_chain);
  if (counting) row.counting_chain = row.first_stitch + chains - 1, tops.push_back(row.counting_chain);
  for (const Step& step : steps) {
    const stitch::StitchKind& kind = fabric.kinds[*stitch::find_kind(fabric.kinds, step.kind)];
    const auto takes = static_cast<std::uint32_t>(kind.takes);
    for (std::uint32_t i = 0; i < step.in_one; ++i) {
      tops.push_back(static_cast<StitchId>(fabric.stitches.size()));
      stitch(step.kind, fabric::counts);
      for (int leg = 0; leg < stitch::shape_of(kind).legs; ++leg) {
        const std::uint32_t at = place + std::min(static_cast<std::uint32_t>(leg), takes - 1);
        fabric.legs.push_back({{open_.at(at), fabric::On::top, step.loops}});
      }
    }
    place += takes;
  }
  row.uses = place;
  row.count = static_cast<std::uint32_t>(fabric.stitches.size()) - row.first_stitch;
  row.counted = row.makes = static_cast<std::uint32_t>(tops.size());
  open_.erase(open_.begin(), open_.begin() + place);
  open_.insert(open_.begin(), tops.rbegin(), tops.rend());
  fabric.rounds.push_back(row);
  return *this;
}

namespace {

std::uint8_t random_loops(Dice& dice) {
  if (dice.below(5) != 0) return stitch::both;
  return dice.below(2) == 0 ? stitch::back : stitch::front;
}

/// Steps over `places`, shaped here and there.
Steps random_steps(Dice& dice, std::uint32_t places, const std::string& kind, std::uint32_t sides) {
  Steps steps;
  const std::uint8_t loops = random_loops(dice);
  for (std::uint32_t place = 0; place < places;) {
    const std::uint32_t what = dice.below(sides);
    if (what == 0 && place + 2 <= places)
      steps.push_back({kind + "2tog", 1, loops}), place += 2;
    else
      steps.push_back({kind, what == 1 ? 2U : 1U, loops}), ++place;
  }
  return steps;
}

} // namespace

Fabric random_flat(std::uint64_t seed) {
  Dice dice{seed * 2654435761U + 77};
  const std::uint32_t width = 1 + dice.below(14), rows = 1 + dice.below(9);
  const char* kinds[] = {"sc", "sc", "sc", "hdc", "dc", "tr"};
  Flat flat;
  flat.begin("leaf", width + 1);
  flat.row(Steps(width, Step{}), 0, false, 1);
  for (std::uint32_t i = 0; i < rows && flat.open() > 0; ++i) {
    const std::string kind = kinds[dice.below(6)];
    const std::uint32_t here = std::min<std::uint32_t>(flat.open(), width + 6);
    const std::uint32_t places = dice.below(5) == 0 ? 1 + dice.below(here) : here;
    const std::uint32_t chains = kind == "sc" ? 1 : kind == "hdc" ? 2 : kind == "dc" ? 3 : 4;
    const bool counting = kind != "sc" && dice.below(2) == 0 && places > 1;
    const Steps steps = random_steps(dice, places - (counting ? 1 : 0), kind, 2 + dice.below(9));
    flat.row(steps, chains, counting, counting ? 1 : 0);
  }
  return flat.fabric;
}

Fabric random_tube(std::uint64_t seed) {
  Dice dice{seed * 2246822519U + 13};
  const std::uint32_t width = 6 + dice.below(24);
  Ball tube;
  tube.begin("stem", fabric::Start::chain_ring);
  tube.to(width);
  std::uint32_t places = width;
  for (std::uint32_t i = 0; i < 14; ++i) {
    const std::uint32_t what = dice.below(6);
    Steps steps(places, Step{});
    if (what == 0) steps = Steps(places, Step{"sc", 1, random_loops(dice)});
    if (what == 1)
      for (std::uint32_t at = dice.below(4); at < places; at += 3 + dice.below(4)) steps[at].kind = "bo";
    if (what == 2) steps = Steps(places, Step{"dc", 1, random_loops(dice)});
    if (what == 3 && places > 6) {
      // as many increases as decreases
      const std::uint32_t at = dice.below(places - 4);
      steps.erase(steps.begin() + at, steps.begin() + at + 3);
      steps.insert(steps.begin() + at, {{"sc", 2}, {"sc2tog"}});
    }
    tube.round(steps);
    places = tube.fabric.rounds.back().count;
  }
  return tube.fabric;
}

} // namespace whorl::layout::test
