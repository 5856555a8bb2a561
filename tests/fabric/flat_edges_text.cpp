#include "text.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;
using test::Text;

namespace {

/// An ear of five rows on six stitches that ends with two.
const std::string ear = "Fox ear\n\n"
                        "Row 1: Ch 7, sc in 2nd ch from hook and in each ch across, ch 1, turn (6)\n"
                        "Row 2: sc in each st across, ch 1, turn (6)\n"
                        "Row 3: dec, sc 2, dec, ch 1, turn (4)\n"
                        "Row 4: sc in each st across, ch 1, turn (4)\n"
                        "Row 5: dec, dec (2)\n";

/// A square of nine rows on eight stitches.
const std::string square = "Moss square\n\n"
                           "Row 1: Ch 9, sc in 2nd ch from hook and in each ch across, ch 1, turn (8)\n"
                           "Rows 2-8: sc in each st across, ch 1, turn (8)\n"
                           "Row 9: sc in each st across (8)\n";

struct Edge {
  std::uint32_t makes;
  const char* line;
};

const Edge of_ear[] = {
    {18, "Edging: sc evenly around the ear (18)"},
    {18, "Border: sc in each st around the ear (18)"},
    {18,
     "Edging: ch 1, sc evenly around the ear: 5 sc down the side, 6 sc along the bottom, 5 sc up the side, 2 "
     "sc across the top, sl st to first sc (18)"},
    {18,
     "Edging: ch 1, 5 sc down the side, 6 sc along the bottom, 5 sc up the side, 2 sc across the top (18)"},
    {18, "Edging: 18 sc evenly around the edge (18)"},
    {18, "Edging: sc evenly around (18)"},
    {18, "Edge: sc down the side (5), 6 sc along the bottom, 5 sc up the side, 2 sc across the top (18)"},
    {18, "Edging: sc evenly around all sides of the ear, 18 sts"},
    {18, "Ch 1, sc evenly around the edge of the ear (18)"},
    {18, "Rnd 6: sc evenly around the ear, sl st to first sc (18)"},
    {16,
     "Row 6: ch 1, sc in row ends down to the foundation chain, 6 sc along the chain, sc in row ends up the "
     "other side (16)"},
    {16, "Border: Ch 1, work 5 sc along the side, 6 sc along foundation ch, 5 sc up the other side. (16)"},
    {16, "Now work around the ear: 5 sc along row ends, 6 sc into the foundation chain, 5 sc along row ends "
         "(16)"},
    {16,
     "Do not turn. Sc evenly down the side (5), sc in each ch along the bottom (6), sc evenly up the other "
     "side (5). (16)"},
    {18, "Trim: Join cream, sc around the entire ear (18)"},
    {18, "border ch 1, sc evenly all around, sl st to 1st sc (18)"},
    {18, "Border in rust: sc around the ear (18)"},
    {22, "Edging: sc around the whole ear, working 3 sc in each corner (22)"},
    {18, "Edging round: 1 sc in the end of each row down the side, 1 sc in each of 6 ch, 1 sc in the end of "
         "each row "
         "up the side, 1 sc in each of the 2 sts at the top (18)"},
};

const Edge of_square[] = {
    {42, "Edging: sc in each st and row end around, working 3 sc in each corner, sl st to join (42)"},
    {42, "Rnd 10: sc around the entire square, putting 3 sc in each corner. (42)"},
    {34, "Edging: sl st evenly all around the edge."},
    {34, "Edging: Ch 1. Sc in the side of each row (9), 8 sc along the bottom, sc in the side of each row "
         "(9), 8 sc "
         "over the top. Join. (34)"},
    {34, "Round 10: Work 34 sc evenly round the square, join with sl st."},
    {34, "Border (optional): work sc all the way around the square."},
    {34, "Crab stitch around the whole edge (34)"},
    {34, "Edging: join cream with sl st to any corner, ch 1, 34 sc evenly around, join. Fasten off. (34)"},
    {34, "Edging Rnd 1: ch 1, 9 sc along the left side, 8 sc along the bottom, 9 sc along the right side, 8 "
         "sc along "
         "the top, join (34)"},
    {36, "Rnd 10 (edging): Ch 1, [3 sc in corner, 6 sc evenly along side] 4 times; join with a sl st in "
         "first sc. (36 sc)"},
    {38, "Edging\nRnd 1: sc evenly around, 3 sc in each corner, join (38)"},
};

/// What the last round makes, where nothing is to be said of the text.
void check(const std::string& piece, const Edge& edge) {
  INFO(edge.line);
  const Text text(piece + edge.line + "\n");
  CHECK(text.said == "");
  CHECK(text.last().worked);
  CHECK(text.last().makes == edge.makes);
}

/// How many stitches of the last round go into such places.
std::size_t legs_into(const Text& text, fabric::On what) {
  const fabric::Fabric& fabric = text.worked.fabric;
  std::size_t count = 0;
  for (fabric::StitchId id = text.last().first_stitch; id < fabric.stitches.size(); ++id)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, id)) count += leg.into.what == what;
  return count;
}

} // namespace

TEST_CASE("an edging goes around a flat piece, however it is told") {
  for (const Edge& edge : of_ear) check(ear, edge);
  for (const Edge& edge : of_square) check(square, edge);
}

TEST_CASE("a line that only speaks of an edging is a note") {
  check(square, {8, "Finishing: weave in all ends and block lightly."});
  check(square, {8, "Edging: use cream and your 3.5 mm hook."});
}

TEST_CASE("an edging goes once into each end of a row, each chain and each stitch at the top") {
  const Text text(ear + of_ear[3].line + "\n");
  CHECK(legs_into(text, fabric::On::row_end) == 10);
  CHECK(legs_into(text, fabric::On::chain_side) == 6);
  CHECK(legs_into(text, fabric::On::top) == 2);
}

namespace {

/// How many of the last round go into each place that has more than one, in order, as "9-end 3".
std::string crowded(const Text& text) {
  const fabric::Fabric& fabric = text.worked.fabric;
  std::string all;
  fabric::Place last;
  int many = 0;
  const auto close = [&] {
    if (many > 1) all += fabric::id_of(fabric, last) + " " + std::to_string(many) + ", ";
  };
  for (fabric::StitchId id = text.last().first_stitch; id < fabric.stitches.size(); ++id)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, id)) {
      if (leg.into == last) {
        ++many;
        continue;
      }
      close();
      last = leg.into, many = 1;
    }
  close();
  return all;
}

} // namespace

TEST_CASE("what an edging has beyond the places there are goes into the corners") {
  CHECK(crowded(Text(square + of_square[0].line + "\n")) ==
        "part-9-end 3, part-0-ch-9 3, part-1-start 3, part-9-1 3, ");
}

TEST_CASE("three in a corner take the place of two where one more is counted at each") {
  const Text text(square + "Rnd 10: sc evenly around, 3 sc in each corner, join (38)\n");
  CHECK(crowded(text) == "part-9-end 3, part-0-ch-9 3, part-1-start 3, part-9-1 3, ");
  CHECK(text.last().makes == 38);
}

TEST_CASE("corners that are named between the sides are where these meet") {
  CHECK(crowded(Text(square + of_square[9].line + "\n")) ==
        "part-9-end 3, part-0-ch-9 3, part-1-start 3, part-9-1 3, ");
}

TEST_CASE("stitches begun without a chain stand on a chain of their own") {
  const Text text("Mole's cape\n\nRow 1: 15 fsc, turn (15)\nRow 2: ch 1, (sc 2, inc) x 5 (20)\n");
  CHECK(text.said == "");
  CHECK(text.worked.fabric.rounds[0].kind == pattern::RoundKind::chain);
  CHECK(text.worked.fabric.rounds[0].count == 16); // a single crochet begins in the second
  CHECK(text.worked.fabric.rounds[1].makes == 15);
}

TEST_CASE("round a piece whose last row ended where its first began the chain is worked from there") {
  const Text text(square + "Row 10: ch 1, turn, sc in each st across (8)\nRnd 11: sc evenly around (36)\n");
  const fabric::Fabric& fabric = text.worked.fabric;
  std::vector<std::string> chain;
  for (fabric::StitchId id = text.last().first_stitch; id < fabric.stitches.size(); ++id)
    for (const fabric::Leg& leg : fabric::legs_of(fabric, id))
      if (leg.into.what == fabric::On::chain_side) chain.push_back(fabric::id_of(fabric, leg.into));
  REQUIRE(chain.size() == 8);
  CHECK(chain.front() == "part-0-ch-2");
  CHECK(chain.back() == "part-0-ch-9");
}
