#include "fabric/work.hpp"

#include "sample.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using fabric::Fabric;
using sample::Maker;

namespace {

Fabric worked(const pattern::Tree& tree) {
  fabric::Worked worked = fabric::work(tree);
  for (const auto& finding : worked.findings) UNSCOPED_INFO(finding.message);
  CHECK(worked.findings.empty());
  return std::move(worked.fabric);
}

std::vector<std::uint32_t> counted(const Fabric& fabric) {
  std::vector<std::uint32_t> counts;
  for (const fabric::Round& round : fabric.rounds) counts.push_back(round.counted);
  return counts;
}

/// The legs of the last round as ids.
std::string legs(const Fabric& fabric) {
  std::string text;
  const fabric::Round& round = fabric.rounds.back();
  for (fabric::StitchId id = round.first_stitch; id < round.first_stitch + round.count; ++id) {
    if (id != round.first_stitch) text += " |";
    for (const fabric::Leg& leg : fabric::legs_of(fabric, id)) text += " " + fabric::id_of(fabric, leg.into);
  }
  return text;
}

} // namespace

TEST_CASE("A ring and rounds of increases and decreases have their counts") {
  const Fabric fabric = worked(sample::ball({6, 12, 18, 18, 12, 6}));
  CHECK(counted(fabric) == std::vector<std::uint32_t>{6, 12, 18, 18, 12, 6});
}

TEST_CASE("Both stitches of an increase go into the same place") {
  Maker m;
  m.round({m.ring(), m.sc(3)});
  m.round({m.around({m.inc(1)})});
  CHECK(legs(worked(m.tree)) == " part-1-1 | part-1-1 | part-1-2 | part-1-2 | part-1-3 | part-1-3");
}
