#include "toys.hpp"

#include <algorithm>

namespace whorl::layout::test {

using fabric::Fabric;

void place(Fabric& fabric, std::uint32_t round, const std::vector<std::uint32_t>& after, pattern::What what) {
  fabric::Placing placing;
  placing.what = what;
  placing.part = fabric.rounds[round].part;
  placing.round = round;
  placing.after = after;
  fabric.placings.push_back(placing);
}

void dye(Fabric& fabric, std::uint32_t round, std::uint8_t yarn, std::uint32_t first, std::uint32_t last) {
  const fabric::Round& worked = fabric.rounds[round];
  for (std::uint32_t i = first; i < std::min(last, worked.count); ++i)
    fabric.stitches[worked.first_stitch + i].yarn = yarn;
}

void begin_in_loops(Ball& ball, const std::string& name, const Begun& begun) {
  Fabric& fabric = ball.fabric;
  const fabric::Round owner = fabric.rounds[begun.round];
  const std::uint32_t loops = begun.loops == 0 ? owner.count : std::min(begun.loops, owner.count);
  ball.begin(name, fabric::Start::free_loops).to(loops * begun.in_one);
  const fabric::Round& first = fabric.rounds.back();
  for (std::uint32_t i = 0; i < first.count; ++i) {
    const std::uint32_t step = i / begun.in_one;
    const std::uint32_t place = begun.against ? owner.count - 1 - step : step;
    const std::uint32_t base = owner.first_stitch + (begun.from + place) % owner.count;
    fabric.legs[fabric.stitches[first.first_stitch + i].first_leg].into = {base, fabric::On::top,
                                                                           stitch::front};
  }
}

Fabric toadstool(const Begun& begun) {
  Ball ball;
  ball.begin("stem").to(6).to(12).to(18).to(24).even(1).to(24, stitch::back).to(30);
  begin_in_loops(ball, "skirt", begun);
  return ball.fabric;
}

namespace {

void place_by_chance(Fabric& fabric, Dice& dice) {
  constexpr pattern::What whats[] = {pattern::What::eye, pattern::What::eye, pattern::What::marker,
                                     pattern::What::bead, pattern::What::sew};
  for (std::uint32_t i = dice.below(4); i > 0; --i) {
    const std::uint32_t round = dice.below(static_cast<std::uint32_t>(fabric.rounds.size()));
    const std::uint32_t count = fabric.rounds[round].count;
    std::vector<std::uint32_t> after{dice.below(count + 1)};
    const std::uint32_t other = dice.below(count + 1);
    if (other > after[0] + 1) after.push_back(other);
    place(fabric, round, after, whats[dice.below(5)]);
  }
}

void dye_by_chance(Fabric& fabric, Dice& dice) {
  for (std::uint32_t round = 1; round < fabric.rounds.size(); ++round) {
    const std::uint32_t mood = dice.below(8), count = fabric.rounds[round].count;
    if (mood == 0) dye(fabric, round, 2);
    if (mood == 1) dye(fabric, round, 3, dice.below(count), dice.below(count + 1));
  }
}

void begin_by_chance(Ball& ball, Dice& dice) {
  const auto rounds = static_cast<std::uint32_t>(ball.fabric.rounds.size());
  Begun begun;
  begun.round = dice.below(rounds);
  begun.in_one = 1 + dice.below(3);
  const std::uint32_t count = ball.fabric.rounds[begun.round].count;
  if (dice.below(3) == 0) begun.from = dice.below(count), begun.loops = 1 + dice.below(count);
  begun.against = dice.below(3) == 0;
  begin_in_loops(ball, "skirt", begun);
  const std::uint32_t first = ball.fabric.rounds.back().count;
  for (std::uint32_t i = dice.below(3); i > 0; --i)
    ball.to(dice.below(3) == 0 ? std::max(1U, first / 2) : first);
}

} // namespace

Fabric random_toy(std::uint64_t seed) {
  Dice dice{seed * 104729 + 5};
  for (int i = 0; i < 8; ++i) dice.next();
  Ball ball;
  ball.fabric = random_ball(seed);
  for (std::uint32_t i = dice.below(3); i > 0; --i) begin_by_chance(ball, dice);
  place_by_chance(ball.fabric, dice);
  dye_by_chance(ball.fabric, dice);
  return ball.fabric;
}

} // namespace whorl::layout::test
