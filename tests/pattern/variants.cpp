#include "pattern/variants.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using whorl::pattern::in_variant;
using whorl::pattern::variants_in;
using Names = std::vector<std::string>;

namespace {

/// The text without the blanks that others left at line ends.
std::string chosen(const std::string& text, std::size_t number) {
  std::string out;
  for (const char c : in_variant(text, variants_in(text), number)) {
    if (c == '\n')
      while (!out.empty() && out.back() == ' ') out.pop_back();
    if (c != ' ' || (!out.empty() && out.back() != ' ')) out += c;
  }
  return out;
}

} // namespace

TEST_CASE("a header names the variants that numbers in brackets or behind slashes tell apart") {
  CHECK(variants_in("Acorn\n\nSizes: small (medium, large)\n\nRnd 1: 6 (8, 10) sc in MR\n") ==
        Names{"small", "medium", "large"});
  CHECK(variants_in("PUFFBALL, small (large)\n\nR1: 6 (8) sc in MR = 6 (8)\n") == Names{"small", "large"});
  CHECK(variants_in("Acorns S/M/L\n\nR1: 6/7/8 sc in MR\n") == Names{"S", "M", "L"});
  CHECK(variants_in("Cap for a gnome (sizes: S, M)\n\nR1: 6/7 sc in MR\n") == Names{"S", "M"});
  CHECK(variants_in("Cap\nComes in two sizes: small (large)\n\nR1: 6 (7) sc in MR (6, 7)\n") ==
        Names{"small", "large"});
  CHECK(variants_in("Acorn\nSize: 6 (8, 10) cm\n\nR1: 6 (8, 10) sc in MR\n") == Names{"6", "8", "10"});
}

TEST_CASE("a header of measures, or names that nothing tells apart, are no variants") {
  CHECK(variants_in("Acorn\nSize: about 12 cm tall, 8 cm wide\n\nRnd 1: 6 sc in MR (6)\n").empty());
  CHECK(variants_in("Cap\nHook sizes: 3 mm, 4 mm\n\nRnd 1: 6 (7) sc in MR\n").empty());
  CHECK(variants_in("Acorn\nSizes: small, large\n\nRnd 1: 6 sc in MR (6)\n").empty());
  CHECK(variants_in("Acorn\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n").empty());
}

TEST_CASE("each variant has its own number, in its place") {
  const std::string text =
      "Acorn\nSizes: small (medium, large)\nR1: 6 (8, 10) sc in MR (6 (8, 10))\nHook: 2.5/3/3.5 mm\n";
  CHECK(chosen(text, 1) == "Acorn\nSizes: small (medium, large)\nR1: 8 sc in MR (8 )\nHook: 3 mm\n");
  CHECK(chosen(text, 2) == "Acorn\nSizes: small (medium, large)\nR1: 10 sc in MR (10 )\nHook: 3.5 mm\n");
  CHECK(in_variant(text, variants_in(text), 2).size() == text.size());
}

TEST_CASE("with two variants a count in brackets behind a repeat is no size") {
  const std::string text = "Cap\nSizes: owl, bear\nR1: 6 (8) sc in MR (6 (8))\nR2: inc x 6 (12)\n";
  CHECK(chosen(text, 1) == "Cap\nSizes: owl, bear\nR1: 8 sc in MR (8 )\nR2: inc x 6 (12)\n");
}

TEST_CASE("what is said of one variant is not read in another") {
  const std::string text =
      "Gnome\nVariants: summer / winter\n\nR1: 6 sc in MR (6)\n"
      "R2: summer: sc around (6). winter: inc x 6 (12)\nR3 (winter only): sc around (12)\n";
  CHECK(chosen(text, 0) == "Gnome\nVariants: summer / winter\n\nR1: 6 sc in MR (6)\nR2: sc around (6).\n\n");
  CHECK(chosen(text, 1) ==
        "Gnome\nVariants: summer / winter\n\nR1: 6 sc in MR (6)\nR2: inc x 6 (12)\nR3 : sc around (12)\n");
}

TEST_CASE("a part of one variant is left out of the others with all its rounds") {
  const std::string text =
      "Gnome\nVariants: summer, winter\n\nBody\nR1: 6 sc in MR (6)\n\nScarf (winter only)\n\n"
      "R1: ch 20\nR2: sc across (20)\n\nHat\nR1: 5 sc in MR (5)\n";
  CHECK(chosen(text, 0).find("Scarf") == std::string::npos);
  CHECK(chosen(text, 0).find("ch 20") == std::string::npos);
  CHECK(chosen(text, 0).find("Hat\nR1: 5 sc") != std::string::npos);
  CHECK(chosen(text, 1).find("Scarf\n\nR1: ch 20") != std::string::npos);
}

TEST_CASE("what is said of several variants is read in each of them") {
  const std::string text = "Hat\nSizes: small (medium, large)\nR1: 6 sc in MR (6)\n"
                           "Medium and large only: R2: inc x 6 (12)\nR3: 6 (12, 12) sc\n";
  CHECK(chosen(text, 0).find("R2") == std::string::npos);
  CHECK(chosen(text, 1).find("R2: inc x 6 (12)") != std::string::npos);
  CHECK(chosen(text, 2).find("R2: inc x 6 (12)") != std::string::npos);
  const std::string letters =
      "Hat\nSizes: S, M, L\nR1: 6 sc in MR (6)\nS, M: R2: 6 sc (6)\nL: R2: inc x 6 (12)\n";
  CHECK(chosen(letters, 1).find("R2: 6 sc (6)") != std::string::npos);
  CHECK(chosen(letters, 2).find("R2: inc x 6 (12)") != std::string::npos);
  CHECK(chosen(letters, 2).find("6 sc (6)\nR2: 6") == std::string::npos);
}

TEST_CASE("options that lines begin with are variants without a header") {
  const std::string text = "Gnome\nOption A (wool)\nOption B (cotton)\nR1: 6 sc in MR (6)\n"
                           "Option A: R2: sc around (6)\nOption B: R2: inc x 6 (12)\n";
  CHECK(variants_in(text) == Names{"Option A", "Option B"});
  CHECK(chosen(text, 1).find("R2: inc x 6 (12)") != std::string::npos);
  CHECK(chosen(text, 1).find("sc around") == std::string::npos);
  CHECK(variants_in("Gnome\nOption A: a hat\nR1: 6 sc in MR (6)\n").empty());
}

TEST_CASE("numbers behind the names of variants are theirs, in counts too") {
  const std::string text = "Cub (Small; Large)\nR1: 6 (Large: 9) sc in MR (6; Large: 9)\n"
                           "R2: inc around (Small: 12, Large: 18)\nR3: Small: 12; Large: 18 sc [12 (18)]\n";
  REQUIRE(variants_in(text) == Names{"Small", "Large"});
  CHECK(chosen(text, 0).find("R1: 6 sc in MR (6 )\nR2: inc around ( 12 )\nR3: 12 sc [12 ]") !=
        std::string::npos);
  CHECK(chosen(text, 1).find("R1: 9 sc in MR (9 )\nR2: inc around ( 18 )\nR3: 18 sc [18 ]") !=
        std::string::npos);
}

TEST_CASE("what one size alone works ends where the next is named, or all of them are") {
  const std::string text = "Hat\nSizes: S (M, L)\n\nR4: inc x 6 (24)\nSize M and L only:\nR5: inc x 6 (30)\n"
                           "Size L only:\nR6: inc x 6 (36)\nAll sizes:\nR7: sc around (24, 30, 36)\n"
                           "Both sizes: R8: sc around\n";
  CHECK(chosen(text, 0).find("R5") == std::string::npos);
  CHECK(chosen(text, 1).find("R5: inc x 6 (30)") != std::string::npos);
  CHECK(chosen(text, 1).find("R6") == std::string::npos);
  CHECK(chosen(text, 2).find("R6: inc x 6 (36)") != std::string::npos);
  for (std::size_t size = 0; size < 3; ++size) {
    CHECK(chosen(text, size).find("sizes:") == std::string::npos);
    CHECK(chosen(text, size).find("R8: sc around") != std::string::npos);
  }
  CHECK(chosen(text, 0).find("R7: sc around (24 )") != std::string::npos);
  CHECK(chosen(text, 2).find("R7: sc around (36 )") != std::string::npos);
}

TEST_CASE("\"all sizes\" tells none apart") {
  CHECK(variants_in("Hat\nSizes: S, M\n\nAll sizes:\nR1: 6 sc in MR (6)\n").empty());
}

TEST_CASE("ranges of rounds are chosen by size, and the label before them stays whole") {
  const std::string text = "Hat\nSizes: S (M, L)\nRnds 8-10 (8-11, 8-12): sc around\n";
  CHECK(chosen(text, 0).find("Rnds 8-10 : sc") != std::string::npos);
  CHECK(chosen(text, 2).find("Rnds 8-12 : sc") != std::string::npos);
}

TEST_CASE("a count behind the sentence of a round is that of two sizes") {
  CHECK(chosen("Hat\nSizes: S (M)\nR7: sc around. 24 (30)\n", 1).find("around. 30") != std::string::npos);
  CHECK(chosen("Hat\nSizes: S (M)\nR1: 6 (7) sc\nR2: inc x 6 (12)\n", 1).find("x 6 (12)") !=
        std::string::npos);
}
