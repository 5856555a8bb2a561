#include "told.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

// Steps with letters: common practice, no source.

TEST_CASE("letters that run on from the ring are labels of rounds") {
  CHECK(counts("Fox ear\na) 6 sc in MR (6)\nb) inc around (12)\nc) (sc, inc) around (18)\n") == "6 12 18");
}

TEST_CASE("letters below a label are steps of one round") {
  CHECK(counts("Fox ear\nRnd 1: 6 sc in MR (6)\nRnd 2:\na) inc in first 3 st\nb) sc in next 3 st (9)\n") ==
        "6 9");
}

TEST_CASE("letters before what is no work are no labels") {
  CHECK(counts("Fox ear\na) wash the yarn\nb) wind it\nRnd 1: 6 sc in MR (6)\n") == "6");
}
