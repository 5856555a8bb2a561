#include "pattern/yarn.hpp"

#include "pattern/read.hpp"

#include <catch2/catch.hpp>

#include <sstream>

using namespace whorl;
using namespace whorl::pattern;

namespace {

const words::Vocabulary& english() { return *words::find_vocabulary("en-US"); }

/// "0 brown, 2 white": to which yarn is changed before which entry.
std::string changes_in(const std::string& pattern) {
  const Tree tree = read(Source(pattern), english()).tree;
  std::ostringstream text;
  for (const Placing& placing : tree.placings)
    if (placing.what == What::change && placing.yarn != 0)
      text << placing.after_round << " " << tree.yarns[placing.yarn - 1U] << ", ";
  return text.str();
}

} // namespace

TEST_CASE("a yarn is named by a colour or by a letter that is led to") {
  CHECK(yarn_named("change to brown", english()) == "brown");
  CHECK(yarn_named("Change to B", english()) == "B");
  CHECK(yarn_named("(white)", english()) == "white");
  CHECK(yarn_named("switch to MC", english()) == "MC");
  CHECK(yarn_named("A leaf for the gnome", english()) == "");
  CHECK(yarn_named("change hooks", english()) == "");
}

TEST_CASE("a short line that only names a yarn is known from a sentence that speaks of one") {
  CHECK(only_names_yarn("With green:", english()));
  CHECK(only_names_yarn("in white:", english()));
  CHECK(only_names_yarn("color A", english()));
  CHECK_FALSE(only_names_yarn("With green eyes he looks at you", english()));
  CHECK_FALSE(only_names_yarn("Fox", english()));
}

TEST_CASE("a change between the lines is done before the next round") {
  CHECK(changes_in("Slug\n\nRnd 1: 6 sc in MR (6)\nChange to brown.\nRnd 2: sc around (6)\n") == "1 brown, ");
  CHECK(changes_in("Slug\n\nRnd 1: 6 sc in MR (6)\nWith green:\nRnd 2: sc around (6)\n") == "1 green, ");
}

TEST_CASE("the yarn of rounds that name none is number 1, and A or MC told later is that yarn") {
  const auto yarns = [](const std::string& second, const std::string& third) {
    const Tree tree = read(Source("Slug\n\nRnd 1: 6 sc in MR (6)\nRnd 2: " + second +
                                  ", sc around (6)\nRnd 3: " + third + ", sc around (6)\n"),
                           english())
                          .tree;
    std::string text;
    for (const std::string& yarn : tree.yarns) text += "'" + yarn + "' ";
    return text;
  };
  CHECK(yarns("change to B", "change to C") == "'' 'B' 'C' ");
  CHECK(yarns("change to B", "change to A") == "'A' 'B' ");
  CHECK(yarns("change to brown", "change to MC") == "'MC' 'brown' ");
}

TEST_CASE("a yarn that the first round names is number 1") {
  const Tree tree =
      read(Source("Slug\n\nRnd 1 (brown): 6 sc in MR (6)\nRnd 2: change to white, sc around (6)\n"),
           english())
          .tree;
  CHECK(tree.yarns == std::vector<std::string>{"brown", "white"});
}

TEST_CASE("a change at the head of a line is done before that round") {
  CHECK(changes_in("Slug\n\nRnd 1: 6 sc in MR (6)\nRnd 2: change to B, sc around (6)\n") == "1 B, ");
}

TEST_CASE("a change at the end of a line is done before the next round") {
  CHECK(changes_in("Slug\n\nRnd 1: 6 sc in MR (6). Change to B.\nRnd 2: sc around (6)\n") == "1 B, ");
}

TEST_CASE("a colour between number and mark, or in a column of its own, is the yarn of the round") {
  CHECK(changes_in("Slug\n\nRnd 1 (brown): 6 sc in MR (6)\nRnd 2 (brown): sc around (6)\nRnd 3 (white): sc "
                   "around (6)\n") == "0 brown, 2 white, ");
  CHECK(changes_in("Slug\n\n1\tred\t6 sc in MR\t6\n2\tred\t6 inc\t12\n3\twhite\tsc around\t12\n") ==
        "0 red, 2 white, ");
}

namespace {

/// "charcoal A, pink B, " as the materials list them, then the yarns with their numbers: "1 charcoal, ".
std::string yarns_of(const std::string& pattern) {
  const Tree tree = read(Source(pattern), english()).tree;
  std::string text;
  for (const ListedYarn& yarn : tree.listed_yarns)
    text += yarn.name + (yarn.letter.empty() ? "" : " " + yarn.letter) + ", ";
  for (std::size_t i = 0; i < tree.yarns.size(); ++i)
    text += std::to_string(i + 1) + " " + tree.yarns[i] + ", ";
  return text;
}

const std::string two_rounds = "\nRnd 1: 6 sc in MR (6)\nChange to B.\nRnd 2: sc around (6)\n";

} // namespace

TEST_CASE("yarns have the numbers and names that the materials list") {
  const std::string told = "charcoal A, pink B, 1 charcoal, 2 pink, ";
  for (const char* list : {"Yarn A: charcoal\nYarn B: pink\n", "Yarn: charcoal (A), pink (B)\n",
                           "MC: black\nYarn A charcoal, yarn B pink\n", "Yarn: A charcoal, B pink\n",
                           "Yarn: 20 g charcoal (A) and 5 g pink (B)\n"}) {
    INFO(list);
    const std::string found = yarns_of("Mole\n\n" + std::string(list) + "\nBODY" + two_rounds);
    CHECK(found.find("charcoal A") != std::string::npos);
    CHECK(found.find("pink B") != std::string::npos);
  }
  CHECK(yarns_of("Mole\n\nYarn: charcoal (A), pink (B)\n\nBODY" + two_rounds) == told);
}

TEST_CASE("rounds that name no yarn are in the first of the list that is not changed to") {
  CHECK(yarns_of("Slug\n\nYarn: black and white\n\nRnd 1: 6 sc in MR (6)\nChange to white.\nRnd 2: sc around "
                 "(6)\n") == "black, white, 1 black, 2 white, ");
  CHECK(yarns_of("Slug\n\nYarn: black and white\n\nRnd 1: 6 sc in MR (6)\nChange to black.\nRnd 2: sc around "
                 "(6)\n") == "white, black, 1 white, 2 black, ");
}

TEST_CASE("what the materials call a yarn is a colour where the text works in it") {
  CHECK(yarns_of("Acorn\n\nYarn: light worsted, walnut and moss\n\nNUT\nIn walnut, from the tip.\n\nRnd 1: 6 "
                 "sc in MR "
                 "(6)\n\nCAP\nIn moss.\n\nRnd 1: 6 sc in MR (6)\n") == "walnut, moss, 1 walnut, 2 moss, ");
  CHECK(yarns_of("Owl\n\nYarn: cotton, oak brown, midnight blue\n\nRnd 1: 6 sc in MR (6)\nRnd 2: with "
                 "midnight blue, sc "
                 "around (6)\nRnd 3: with oak brown, sc around (6)\n") ==
        "oak brown, midnight blue, 1 oak brown, 2 midnight blue, ");
}

TEST_CASE("a part is in the yarn that its heading or the sentence below it tells") {
  const auto yarn_of_second = [](const std::string& heading) {
    const Tree tree =
        read(Source("Owl\n\nBODY\nRnd 1: 6 sc in MR (6)\nRnd 2: change to brown, sc around (6)\n\n" +
                    heading + "\nRnd 1: 6 sc in MR (6)\n"),
             english())
            .tree;
    REQUIRE(tree.parts.size() == 2);
    return static_cast<int>(tree.parts[1].yarn);
  };
  for (const char* heading : {"WING (brown)", "WING (make 2, brown)", "WING - brown", "WING, make 2 in brown",
                              "Wings (make 2) in brown", "WING\nIn brown, worked in a spiral.",
                              "WING\nUse brown yarn.", "WING\nStart at the tip with brown"}) {
    INFO(heading);
    CHECK(yarn_of_second(heading) == 2);
  }
  CHECK(yarn_of_second("WING (make 2)") == 0);
  CHECK(yarn_of_second("WING\nA brown thing, as they are in spring.") == 0);
}

TEST_CASE("letters in brackets behind what yarns are called list them, whatever stands before") {
  const std::string body = "\n\nBODY\nWith B.\nRnd 1: 6 sc in MR (6)\n";
  CHECK(yarns_of("Moss gnome\n\nMaterials: DK cotton in rust (A) and cream (B), 3 mm hook" + body) ==
        "rust A, cream B, 1 rust, 2 cream, ");
  CHECK(yarns_of("Moss gnome\n\n- Cotton: dark brown (color A), sand (color B), a black scrap" + body) ==
        "dark brown A, sand B, black, 1 dark brown, 2 sand, 3 black, ");
  CHECK(yarns_of("Moss gnome\n\nYou will need: 4ply in tawny (MC) and oatmeal (CC), hook\n\nBODY\nRnd 1: "
                 "with CC, 6 sc in MR (6)\n") == "tawny MC, oatmeal CC, 1 tawny, 2 oatmeal, ");
}

TEST_CASE("stitches with the letter of a yarn behind them list no yarns") {
  CHECK(yarns_of("Moss gnome\n\nRnd 1: 6 sc in MR (6)\nRnd 2: 3 sc (A), 3 sc (B)\n") == "1 A, 2 B, ");
}

TEST_CASE("a letter alone in a part's heading is a yarn where the materials list it") {
  const auto yarn_of_last = [](const std::string& list, const std::string& heading) {
    const Tree tree = read(Source("Toadstool\n\n" + list + "\nSTEM\nRnd 1: 6 sc in MR (6)\n\n" + heading +
                                  "\nRnd 1: 6 sc in MR (6)\n"),
                           english())
                          .tree;
    const std::uint8_t yarn = tree.parts.back().yarn;
    return yarn == 0 ? std::string() : tree.yarns[yarn - 1U];
  };
  for (const char* heading : {"CAP (B)", "CAP (make 2, B)", "CAP (in B)"})
    CHECK(yarn_of_last("Yarn: A white, B red\n", heading) == "red");
  CHECK(yarn_of_last("", "CAP (B)").empty());
}
