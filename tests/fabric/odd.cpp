/// Trees that no designer writes: whatever comes in, working ends, stays within its limit and leaves a sound
/// fabric.

#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "sample.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using fabric::Fabric;
using fabric::StitchId;
using pattern::NodeKind;

namespace {

constexpr std::uint32_t limit = 3000;

std::uint32_t some_number(sample::Chance& chance) {
  switch (chance.pick(0, 9)) {
  case 0:
    return 0;
  case 1:
    return 999999999;
  case 2:
    return 4294967295u;
  default:
    return chance.pick(1, 9);
  }
}

pattern::Work some_work(sample::Chance& chance, std::size_t kinds) {
  pattern::Work work;
  work.act = chance.pick(0, 2) > 0 ? pattern::Act::stitch : static_cast<pattern::Act>(chance.pick(0, 9));
  work.where = chance.pick(0, 2) > 0 ? pattern::Where::next : static_cast<pattern::Where>(chance.pick(0, 5));
  work.loops = static_cast<std::uint8_t>(chance.pick(0, 4));
  work.yarn = static_cast<std::uint8_t>(chance.pick(0, 3));
  work.kind = static_cast<stitch::KindId>(chance.pick(0, static_cast<std::uint32_t>(kinds)));
  work.in_one = static_cast<std::uint16_t>(chance.pick(0, 3));
  work.into = static_cast<pattern::Into>(chance.pick(0, 3) == 0 ? chance.pick(0, 4) : 0);
  work.down = static_cast<std::uint8_t>(chance.pick(0, 3));
  work.counts = chance.pick(0, 4) == 0;
  work.nth = static_cast<std::uint16_t>(chance.pick(0, 4));
  work.to_end = chance.pick(0, 3) == 0;
  work.leave = chance.pick(0, 3) == 0 ? some_number(chance) : 0;
  work.times = some_number(chance);
  return work;
}

/// A node with a few children, down to a depth.
sample::NodeId some_node(pattern::Tree& tree, sample::Chance& chance, std::uint32_t depth) {
  pattern::Node node;
  node.kind =
      depth == 0 ? NodeKind::work : static_cast<NodeKind>(chance.pick(0, chance.pick(0, 9) == 0 ? 7 : 6));
  node.work = some_work(chance, tree.kinds.size());
  node.round = chance.pick(0, static_cast<std::uint32_t>(tree.rounds.size()));
  node.number = static_cast<std::uint16_t>(chance.pick(0, 3) == 0 ? chance.pick(1, 9) : 0);
  node.name = static_cast<std::uint16_t>(chance.pick(0, 2));
  sample::NodeId last = pattern::no_node;
  for (std::uint32_t i = depth == 0 ? 0 : chance.pick(0, 3); i > 0; --i) {
    const sample::NodeId child = some_node(tree, chance, depth - 1);
    if (last == pattern::no_node)
      node.child = child;
    else
      tree.nodes[last].next = child;
    last = child;
  }
  tree.nodes.push_back(node);
  return static_cast<sample::NodeId>(tree.nodes.size() - 1);
}

pattern::Tree odd_tree(std::uint32_t seed) {
  sample::Chance chance(seed);
  sample::Maker maker;
  maker.tree.group_names = {"shell"};
  for (std::uint32_t part = chance.pick(1, 3); part > 0; --part) {
    maker.part("Odd");
    if (chance.pick(0, 3) > 0) maker.round({maker.ring(), maker.sc(chance.pick(1, 9))});
    for (std::uint32_t round = chance.pick(0, 6); round > 0; --round)
      maker.round({some_node(maker.tree, chance, chance.pick(0, 3))},
                  chance.pick(0, 1) == 0 ? -1 : some_number(chance));
    pattern::Placing& placing = maker.place(static_cast<pattern::What>(chance.pick(0, 8)));
    placing.from = static_cast<int>(chance.pick(0, 5));
    placing.apart = chance.pick(0, 9);
    placing.gather = chance.pick(0, 1) == 0;
  }
  return maker.tree;
}

bool is_sound(const Fabric& fabric, const fabric::Place& place, StitchId worker) {
  switch (place.what) {
  case fabric::On::ring:
    return place.of < fabric.parts.size();
  case fabric::On::space:
    return place.of < fabric.arches.size() && fabric.arches[place.of].first_chain < worker;
  default:
    return place.of < worker;
  }
}

bool is_sound(const Fabric& fabric) {
  for (StitchId i = 0; i < fabric.stitches.size(); ++i) {
    const fabric::Round& round = fabric.rounds.at(fabric.stitches[i].round);
    if (i < round.first_stitch || i >= round.first_stitch + round.count || !round.worked) return false;
    for (const fabric::Leg& leg : fabric::legs_of(fabric, i))
      if (!is_sound(fabric, leg.into, i)) return false;
  }
  return fabric.taken.size() == fabric.stitches.size();
}

} // namespace

TEST_CASE("The oddest trees are worked into sound fabrics within the limit") {
  for (std::uint32_t seed = 0; seed < 1500; ++seed) {
    CAPTURE(seed);
    const pattern::Tree tree = odd_tree(seed);
    const Fabric fabric = fabric::work(tree, limit).fabric;
    CHECK(fabric.stitches.size() <= limit);
    CHECK(is_sound(fabric));
    CHECK_FALSE(fabric::show(fabric).empty());
    fabric::check(tree, fabric);
  }
}

TEST_CASE("Many lines of absurd counts cost nothing") {
  sample::Maker m;
  m.round({m.ring(), m.sc(6)});
  for (int i = 0; i < 20000; ++i) m.round({m.skip(999999)}, 999999);
  CHECK(fabric::work(m.tree).fabric.parts[0].counted_only == 20000);
}
