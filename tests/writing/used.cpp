#include "writing/used.hpp"

#include "writing/wording.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using Names = std::vector<std::string>;

namespace {

const std::string acorn = "Acorn\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, bo) x 6 (12)\n"
                          "Rnd 4: (sc2tog) x 6 (6)\n";

Names names(const std::string& text, const std::string& name = "") {
  Names all;
  for (const writing::ToldStitch& told : wording::told(text, name)) all.push_back(told.name);
  return all;
}

} // namespace

TEST_CASE("Each stitch that a pattern uses comes once, in the order of the text") {
  CHECK(names(acorn) == Names{"sc", "inc", "bo", "sc2tog"});
}

TEST_CASE("A stitch is found as the pattern calls it, by its US name and by its full name") {
  for (const char* name : {"sc2tog", "dec", "Decrease", "SC2TOG"})
    CHECK(names(acorn, name) == Names{"sc2tog"});
  for (const char* name : {"bo", "bobble", "Bobbles"}) CHECK(names(acorn, name) == Names{"bo"});
  for (const char* name : {"inc", "increase"}) CHECK(names(acorn, name) == Names{"inc"});
}

TEST_CASE("A plain stitch's name means the plain stitch") {
  CHECK(names(acorn, "single crochet") == Names{"sc"});
}

TEST_CASE("Where there are only increases, a stitch's name means them") {
  CHECK(names("Acorn\n\nRnd 1: 6 hdc in MR (6)\nRnd 2: 2 dc in each st (12)\n", "dc") == Names{"dc inc"});
}

TEST_CASE("A stitch that the pattern does not use is not found") {
  for (const char* name : {"puff", "moss", "round"}) CHECK(names(acorn, name).empty());
}

TEST_CASE("In a UK pattern its own terms come first") {
  const std::string text =
      "Fern\nUK terms\n\nRnd 1: 6 dc in magic ring (6)\nRnd 2: tr in each st around (6)\n";
  CHECK(names(text, "dc") == Names{"dc"});
  CHECK(names(text, "treble") == Names{"tr"});
  CHECK(names(text, "sc") == Names{"dc"});
}
