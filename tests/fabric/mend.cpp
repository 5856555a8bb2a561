#include "fabric/mend.hpp"

#include "sample.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using sample::Maker;

namespace {

/// The mend of a lone round worked into `open` stitches.
std::string mend(Maker& m, std::uint64_t open) {
  return fabric::mend(m.tree, fabric::needs_of(m.tree), 0, open);
}

} // namespace

TEST_CASE("A repeat number is solved from the stitches open and the stated count") {
  Maker m;
  m.round({m.repeat(5, {m.sc(3), m.inc(1)})}, 30);
  CHECK(mend(m, 24) == "repeat 6 times instead of 5");
}

TEST_CASE("A number of stitches is solved like that of a repeat") {
  Maker m;
  m.round({m.sc(12)}, 18);
  CHECK(mend(m, 18) == "18 sc instead of 12");
}

TEST_CASE("Without a stated count the stitches open are enough for a repeat") {
  Maker m;
  m.round({m.repeat(5, {m.sc(3), m.inc(1)})});
  CHECK(mend(m, 24) == "repeat 6 times instead of 5");
}

TEST_CASE("Without a stated count a number of stitches is no mend") {
  Maker m;
  m.round({m.sc(3)});
  CHECK(mend(m, 7).empty());
}

TEST_CASE("Increases are named as such") {
  Maker m;
  m.round({m.inc(5)}, 12);
  CHECK(mend(m, 6) == "6 increases instead of 5");
}

TEST_CASE("Where two numbers would do there is no mend") {
  Maker m;
  m.round({m.sc(3), m.inc(1), m.sc(3)}, 9);
  CHECK(mend(m, 8).empty());
}

TEST_CASE("A number that the stated count contradicts is no mend") {
  Maker m;
  m.round({m.repeat(5, {m.sc(3), m.inc(1)})}, 25);
  CHECK(mend(m, 24).empty());
}

TEST_CASE("A round that uses all has nothing to mend") {
  Maker m;
  m.round({m.repeat(6, {m.sc(3), m.inc(1)})}, 31);
  CHECK(mend(m, 24).empty());
}

TEST_CASE("A repeat that would not come out even is no mend") {
  Maker m;
  m.round({m.repeat(5, {m.sc(3), m.inc(1)})});
  CHECK(mend(m, 26).empty());
}

TEST_CASE("What runs to the end has no number to mend") {
  Maker m;
  m.round({m.sc(30), m.sc_around()});
  CHECK(mend(m, 24).empty());
}
