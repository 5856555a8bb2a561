/// A letter for a stitch that is worked in another way than the plain one beside it.

#include "fabric/text.hpp"

#include <catch2/catch.hpp>

namespace {

using whorl::pattern::How;

std::string kind_of(const test::Text& text, std::uint32_t index) {
  const auto& fabric = text.worked.fabric;
  return fabric.kinds[fabric.stitches[text.last().first_stitch + index].kind].name;
}

/// The kinds that a technique of the text is told of, in order.
std::string told_of(const test::Text& text) {
  std::string all;
  for (const auto& technique : text.read.tree.techniques)
    all += (all.empty() ? "" : " ") + (technique.of == whorl::pattern::Of::kind
                                           ? text.read.tree.kinds[technique.kind].name
                                           : std::string("all"));
  return all;
}

} // namespace

TEST_CASE("A letter for yarn under single crochet beside one for the plain one is a kind of its own") {
  for (const char* list :
       {"X = sc\nY = yarn under sc\nV = inc\n", "Abbreviations: X = sc, Y = yarn under sc, V = inc\n",
        "X = sc, V = inc, Y = sc worked yarn under\n", "Y = yarn under sc\nX = sc\nV = inc\n"}) {
    CAPTURE(list);
    const test::Text text("Moss mouse\nTerms: US\n" + std::string(list) +
                          "\nRnd 1: 6X in MR (6)\nRnd 2: 6V (12)\nRnd 3: (X, Y) x 6 (12 sc)\n");
    CHECK(text.said == "");
    CHECK(kind_of(text, 0) == "sc");
    CHECK(kind_of(text, 1) == "y");
    CHECK(told_of(text) == "y");
    CHECK(text.read.tree.techniques.front().how == How::yarn_under);
  }
}

TEST_CASE("Where the list has no plain one beside it, all are worked so") {
  const test::Text text(
      "Moss mouse\nTerms: US\nX = yarn under sc\nV = inc\n\nRnd 1: 6X in MR (6)\nRnd 2: 6V (12)\n");
  CHECK(text.said == "");
  CHECK(told_of(text) == "sc");
}

TEST_CASE("An increase beside stitches that are worked in another way is the plain one") {
  const test::Text text("Moss mouse\nTerms: US\nX = sc\nY = yarn under sc\nV = inc\n\nRnd 1: 6X in MR (6)\n"
                        "Rnd 2: (Y, V) x 3 (9)\n");
  CHECK(text.said == "");
  CHECK(kind_of(text, 0) == "y");
  CHECK(kind_of(text, 1) == "sc");
}
