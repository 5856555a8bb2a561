/// Leaves round a chain, typed: slip stitches at their points.

#include "fabric/check.hpp"
#include "fabric/work.hpp"
#include "ids.hpp"
#include "pattern/read.hpp"

#include <catch2/catch.hpp>

using namespace whorl;

namespace {

/// What the fabric counts of the only round, and what is said of it.
std::string told(const std::string& work) {
  const pattern::Source source("Leaf\nTerms: US\nRnd 1: " + work + "\n");
  const pattern::Read read = pattern::read(source, *words::find_vocabulary("en-US"));
  const fabric::Worked worked = fabric::work(read.tree);
  std::string text = std::to_string(worked.fabric.rounds.back().counted);
  for (const std::string& said : ids::said(fabric::check(read.tree, worked.fabric))) text += " " + said;
  return text;
}

} // namespace

TEST_CASE("A leaf that begins with a slip stitch at its point ends with one in the last chain") {
  CHECK(
      told(
          "Ch 6, sl st in 2nd ch from hook, sc, dc, sc, 3 sc in last ch. On the other side of the chain: sc, "
          "dc, sc, sl st in last ch. (11)") == "11");
}

TEST_CASE("A slip stitch behind a chain that single crochet began closes the round") {
  CHECK(told("Ch 6, sc in 2nd ch from hook, sc in next 3 ch, 3 sc in last ch. On the other side of the "
             "chain: sc "
             "in next 3 ch, sl st in first sc. (10)") == "10");
}
