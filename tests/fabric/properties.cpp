/// What holds for every fabric, on balls and cones made by chance.

#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "ids.hpp"
#include "pattern/effect.hpp"
#include "pattern/reading.hpp"
#include "sample.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using fabric::Fabric;
using fabric::StitchId;

namespace {

constexpr std::uint32_t how_many = 60;

template <class Holds> void on_every_piece(Holds holds) {
  for (std::uint32_t seed = 0; seed < how_many; ++seed)
    for (bool closing : {true, false}) {
      CAPTURE(seed, closing);
      const pattern::Tree tree = sample::random_piece(seed, closing);
      holds(tree, fabric::work(tree));
    }
}

bool every_leg_goes_into_the_round_before(const Fabric& fabric) {
  for (StitchId i = 0; i < fabric.stitches.size(); ++i)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, i)) {
      if (leg.into.what == fabric::On::ring) continue;
      if (leg.into.of >= i || fabric.stitches[leg.into.of].round + 1 != fabric.stitches[i].round)
        return false;
    }
  return true;
}

bool feet_never_run_back(const Fabric& fabric) {
  StitchId last = 0;
  for (const fabric::Leg& leg : fabric.legs) {
    if (leg.into.what == fabric::On::ring) continue;
    if (leg.into.of < last) return false;
    last = leg.into.of;
  }
  return true;
}

/// Places that a round used up, found from its legs.
std::uint32_t places_used(const Fabric& fabric, const fabric::Round& round) {
  std::uint32_t places = 0;
  StitchId last = fabric::none;
  for (StitchId i = round.first_stitch; i < round.first_stitch + round.count; ++i)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, i)) {
      if (leg.into.what != fabric::On::ring && leg.into.of != last) ++places;
      last = leg.into.what == fabric::On::ring ? last : leg.into.of;
    }
  return places;
}

bool taken_is_the_union_of_legs(const Fabric& fabric) {
  std::vector<std::uint8_t> taken(fabric.stitches.size(), stitch::no_loop);
  for (const fabric::Leg& leg : fabric.legs)
    if (leg.into.what == fabric::On::top) taken[leg.into.of] |= leg.into.loops;
  return taken == fabric.taken;
}

std::uint32_t sum_of_tallies(const Fabric& fabric, const fabric::Round& round) {
  std::uint32_t sum = 0;
  for (std::uint32_t i = 0; i < round.tallies; ++i) sum += fabric.tallies[round.first_tally + i].count;
  return sum;
}

} // namespace

TEST_CASE("Right pieces made by chance have no findings") {
  on_every_piece([](const pattern::Tree& tree, const fabric::Worked& worked) {
    CHECK(worked.findings.empty());
    CHECK(ids::said(fabric::check(tree, worked.fabric)) == std::vector<std::string>{});
  });
}

TEST_CASE("Every leg goes into a stitch of the round before") {
  on_every_piece([](const pattern::Tree&, const fabric::Worked& worked) {
    CHECK(every_leg_goes_into_the_round_before(worked.fabric));
  });
}

TEST_CASE("Stitches keep the order of what they are worked into") {
  on_every_piece(
      [](const pattern::Tree&, const fabric::Worked& worked) { CHECK(feet_never_run_back(worked.fabric)); });
}

TEST_CASE("A round uses what its legs go into") {
  on_every_piece([](const pattern::Tree&, const fabric::Worked& worked) {
    for (const fabric::Round& round : worked.fabric.rounds)
      CHECK(round.uses == places_used(worked.fabric, round));
  });
}

TEST_CASE("A round uses what the round before makes") {
  on_every_piece([](const pattern::Tree&, const fabric::Worked& worked) {
    const auto& rounds = worked.fabric.rounds;
    for (std::size_t i = 1; i < rounds.size(); ++i) CHECK(rounds[i].uses == rounds[i - 1].makes);
  });
}

TEST_CASE("The loops taken are those of all legs") {
  on_every_piece([](const pattern::Tree&, const fabric::Worked& worked) {
    CHECK(taken_is_the_union_of_legs(worked.fabric));
  });
}

TEST_CASE("The tallies of a round add up to its stitches") {
  on_every_piece([](const pattern::Tree&, const fabric::Worked& worked) {
    for (const fabric::Round& round : worked.fabric.rounds)
      CHECK(sum_of_tallies(worked.fabric, round) == round.count);
  });
}

TEST_CASE("The stitches of rounds follow one another without a gap") {
  on_every_piece([](const pattern::Tree&, const fabric::Worked& worked) {
    StitchId next = 0;
    for (const fabric::Round& round : worked.fabric.rounds) {
      CHECK(round.first_stitch == next);
      next += round.count;
    }
    CHECK(next == worked.fabric.stitches.size());
  });
}

TEST_CASE("What a reading says a round makes is what the fabric counts") {
  on_every_piece([](const pattern::Tree& tree, const fabric::Worked& worked) {
    std::int64_t open = 0;
    for (const fabric::Round& round : worked.fabric.rounds) {
      const pattern::Effect effect = pattern::effect_of(tree.nodes, tree.rounds[round.text].body, tree.kinds);
      const pattern::Outcome outcome = pattern::outcome(effect, open);
      CHECK(outcome.makes == round.makes);
      CHECK(outcome.left_over == round.left_over);
      CHECK(outcome.past_end == 0);
      open = outcome.makes;
    }
  });
}

namespace {

/// What each round's reading says against what the fabric worked; the first round may open its edge itself.
void check_law(const pattern::Tree& tree, const Fabric& fabric) {
  pattern::Open open;
  for (const fabric::Round& round : fabric.rounds) {
    if (round.text == fabric::none) continue;
    const pattern::Effect effect = pattern::effect_of(tree.nodes, tree.rounds[round.text].body, tree.kinds);
    CAPTURE(round.number, round.part, effect.uses, effect.makes, effect.pass_uses, effect.leave,
            open.stitches, open.spaces, open.carried);
    const pattern::Outcome outcome = pattern::outcome(effect, open);
    const bool in_spaces = effect.spaces + effect.pass_spaces > 0 || effect.passes_any;
    if (!effect.starts || !pattern::runs_to_end(effect)) {
      CHECK(outcome.makes == round.makes);
      CHECK(outcome.spaces == round.spaces);
    }
    if (!effect.starts && !in_spaces)
      CHECK(open.stitches - outcome.left_over - outcome.remainder == round.uses);
    CHECK(outcome.past_end == 0);
    open = {round.makes, round.spaces, outcome.carries, outcome.chains};
  }
}

} // namespace

TEST_CASE("What readings of every act say is what the fabric works") {
  for (std::uint32_t seed = 0; seed < 400; ++seed) {
    CAPTURE(seed);
    const pattern::Tree tree = sample::random_deep(seed);
    const fabric::Worked worked = fabric::work(tree);
    CHECK(ids::said(worked.findings) == std::vector<std::string>{});
    CHECK(ids::said(fabric::check(tree, worked.fabric)) == std::vector<std::string>{});
    check_law(tree, worked.fabric);
  }
}

TEST_CASE("The same tree is worked into the same fabric") {
  const pattern::Tree tree = sample::random_ball(7);
  CHECK(fabric::show(fabric::work(tree).fabric) == fabric::show(fabric::work(tree).fabric));
}

TEST_CASE("Repeats and the same round typed out make the same legs") {
  sample::Maker folded, typed;
  folded.round({folded.ring(), folded.sc(6)});
  folded.round({folded.around({folded.sc(1), folded.inc(1)})});
  typed.round({typed.ring(), typed.sc(6)});
  typed.round({typed.sc(1), typed.inc(1), typed.sc(1), typed.inc(1), typed.sc(1), typed.inc(1)});
  CHECK(fabric::show(fabric::work(folded.tree).fabric) == fabric::show(fabric::work(typed.tree).fabric));
}
