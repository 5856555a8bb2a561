#include "fabric/fabric.hpp"

#include "fabric/work.hpp"
#include "ids.hpp"
#include "sample.hpp"

#include <catch2/catch.hpp>

#include <set>

using namespace whorl;
using fabric::Fabric;
using sample::Maker;

namespace {

Fabric worked(const pattern::Tree& tree) { return fabric::work(tree).fabric; }

} // namespace

TEST_CASE("A stitch takes 16 bytes and a leg 8") {
  CHECK(sizeof(fabric::Stitch) == 16);
  CHECK(sizeof(fabric::Leg) == 8);
}

TEST_CASE("A fabric is shown a stitch a line") {
  Maker m;
  m.part("Red Cap", 2);
  m.round({m.ch(2), m.in_chain(4, 2)}, 4);
  m.round({m.blo({m.sc(1), m.inc(1)}), m.invdec(1), m.slip(1)}, 4);
  m.gather();
  CHECK(fabric::show(worked(m.tree)) ==
        R"(part red-cap "Red Cap", make 2, starts: second chain, ends: gathered
round 0: uses 0, makes 0, counted 0
  red-cap-0-1 ch (starting chain)
  red-cap-0-2 ch (starting chain)
round 1: uses 0, makes 4, counted 4, stated 4
  red-cap-1-1 sc -> red-cap-0-ch-2
  red-cap-1-2 sc -> red-cap-0-ch-2
  red-cap-1-3 sc -> red-cap-0-ch-2
  red-cap-1-4 sc -> red-cap-0-ch-2
round 2: uses 4, makes 4, counted 4, stated 4
  red-cap-2-1 sc -> red-cap-1-1 back
  red-cap-2-2 sc -> red-cap-1-2 back
  red-cap-2-3 sc -> red-cap-1-2 back
  red-cap-2-4 invdec -> red-cap-1-3 front, red-cap-1-4 front
  red-cap-2-5 sl st (joins) -> red-cap-2-1
placing cut
)");
}

TEST_CASE("An id is the part, the round and the place in the round") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.sc(3)});
  m.round({m.sc_around(), m.join()});
  const Fabric fabric = worked(m.tree);
  CHECK(fabric::id_of(fabric, fabric::StitchId{2}) == "cap-1-3");
  CHECK(fabric::id_of(fabric, fabric::StitchId{6}, "w-") == "w-cap-2-4");
  CHECK(fabric::id_of(fabric, fabric.legs[0].into, "w-") == "w-cap-ring");
}

TEST_CASE("A round that stands again has a letter behind its number") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.sc(3)});
  m.rounds(1, 1, {m.sc_around()});
  const Fabric fabric = worked(m.tree);
  CHECK(fabric::id_of(fabric, fabric::StitchId{3}) == "cap-1b-1");
  CHECK(fabric::name_of(fabric.rounds[1]) == "round 1b");
}

TEST_CASE("No two stitches have the same id, also where parts have the same name") {
  Maker m;
  for (const char* name : {"Leaf", "leaf", "Leaf 2", "", "\xE8\x91\x89", "1", "part 1"}) {
    m.part(name);
    m.round({m.ring(), m.sc(12)});
    m.rounds(1, 1, {m.sc_around()});
    m.rounds(11, 12, {m.sc_around()});
  }
  const Fabric fabric = worked(m.tree);
  std::set<std::string> ids;
  for (fabric::StitchId i = 0; i < fabric.stitches.size(); ++i) ids.insert(fabric::id_of(fabric, i));
  CHECK(ids.size() == fabric.stitches.size());
}

TEST_CASE("Who works into a stitch is known in order") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.sc(3)});
  m.round({m.inc(1), m.dec(1)});
  const Fabric fabric = worked(m.tree);
  const fabric::Workers workers = fabric::workers_of(fabric);
  CHECK(workers.first == std::vector<std::uint32_t>{0, 2, 3, 4, 4, 4, 4});
  CHECK(workers.stitch == std::vector<fabric::StitchId>{3, 4, 5, 5});
}

TEST_CASE("An empty fabric has no workers") {
  const fabric::Workers workers = fabric::workers_of(Fabric{});
  CHECK(workers.first == std::vector<std::uint32_t>{0});
}

TEST_CASE("A part without rounds is a part without stitches") {
  Maker m;
  m.part("Assembly");
  const Fabric fabric = worked(m.tree);
  REQUIRE(fabric.parts.size() == 1);
  CHECK(fabric.parts[0].rounds == 0);
  CHECK(fabric.parts[0].whole);
}

TEST_CASE("A part's yarn is cut by what stands behind its last round only") {
  Maker m;
  m.part("Cap");
  m.round({m.ring(), m.sc(3)});
  m.place(pattern::What::cut);
  m.round({m.sc_around()});
  CHECK(worked(m.tree).parts[0].end == fabric::End::open);
  m.place(pattern::What::cut);
  CHECK(worked(m.tree).parts[0].end == fabric::End::cut);
}
