#include "told.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

// Which chain the first stitch goes into where nothing says so: the second for sc, the third for hdc, the
// fourth for dc (common practice, no source).

TEST_CASE("an oval goes round a chain above it that names no chain for the first stitch") {
  CHECK(counts("Snout\nch 7\nR1: 5 sc, 3 sc in last ch, 4 sc, 2 sc in same (14)\nR2: sc around (14)\n") ==
        "14 14");
}

TEST_CASE("a row goes along a chain above it, the first stitch into the chain that its height asks for") {
  CHECK(counts("Ear\nCh 7\nRow 1: 6 sc (6)\nRow 2: ch 1, turn, 6 sc (6)\n") == "6 6");
  CHECK(counts("Leaf\nch 9\nRow 1: hdc across (7)\nRow 2: ch 1, turn, sc across (7)\n") == "7 7");
}

TEST_CASE("a few chains at the head of a round are no foundation") {
  CHECK(counts("Leaf\nRnd 1: ch 3, 11 dc in MR (12)\nRnd 2: ch 3, dc in each st around (12)\n") == "12 12");
}

TEST_CASE("a machine's words for making the chain lose nothing") {
  CHECK(counts("Scarf\nDial 10 air loops.\nRow 1: from the second loop 9 columns without crochet.\n"
               "Row 2: turn, 9 columns without a crochet.\n") == "9 9");
  CHECK(counts("Nose\nWe recruit a chain of 5 air loops, close in a ring.\n1 row: 10 sb (10)\n") == "10");
  CHECK(counts("Tail\nBlorp 10 air loops.\nRow 1: 9 sb.\n") == "9");
}

TEST_CASE("work into each chain follows the chain it begins in without a comma") {
  CHECK(counts("Moss\nch 13\nRow 1: from 2nd ch from hook in each ch 1 sc (12)\n") == "12");
}

TEST_CASE("a whole piece on one line below its name goes back along its chain") {
  const std::string head = "Owl\n\nHead\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n\n";
  CHECK(counts(head + "leaf\nch 6, sl st, sc, hdc, sc, sl st\n") == "6 12 5");
  CHECK(counts(head + "feet (yellow) x2\nch 4, sk 1, 3 sc. fo\n") == "6 12 3");
  CHECK(counts(head + "feet x2\nch 6, sk 2, 4 hdc. fo\n") == "6 12 4");
  CHECK(counts(head + "Ch 4, sk 1, 3 sc.\n") == "6 12");
}
