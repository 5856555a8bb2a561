#include "drawing/wide_letters.hpp"

#include <catch2/catch.hpp>

using whorl::drawing::breakable_pieces;
using Pieces = std::vector<std::string>;

TEST_CASE("lines break between the letters of scripts without blanks, not before what closes or behind what "
          "opens") {
  CHECK(breakable_pieces("細編み、記号") == Pieces{"細", "編", "み、", "記", "号"});
  CHECK(breakable_pieces("（こま編み）") == Pieces{"（こ", "ま", "編", "み）"});
  CHECK(breakable_pieces("ちょっと") == Pieces{"ちょっ", "と"});
  CHECK(breakable_pieces("図12～15段目") == Pieces{"図", "12～", "15", "段", "目"});
}

TEST_CASE("words of other scripts stay whole") {
  CHECK(breakable_pieces("single") == Pieces{"single"});
  CHECK(breakable_pieces("Luftmaschenbögen") == Pieces{"Luftmaschenbögen"});
  CHECK(breakable_pieces("столбик") == Pieces{"столбик"});
}
