#include "drawing/svg.hpp"

#include "drawing/number.hpp"
#include "drawing/symbol.hpp"

#include <catch2/catch.hpp>
#include <pugixml.hpp>

#include <limits>
#include <set>

using namespace whorl;
using namespace whorl::drawing;

namespace {

std::string number(double value) {
  std::string out;
  append_number(out, value);
  return out;
}

Path line() { return {{Verb::move, Verb::line}, {{0, 0}, {1.23456, -2}}}; }

/// A round of the acorn's cap worked into another: six stitches, then an increase and a single crochet.
fabric::Fabric small_cap() {
  fabric::Fabric cap;
  cap.kinds = stitch::standard_kinds();
  fabric::Part part;
  part.name = "Cap";
  part.key = "cap";
  part.rounds = 2;
  cap.parts = {part};
  fabric::Round first, second;
  first.number = 1;
  first.count = 6;
  second.number = 2;
  second.first_stitch = 6;
  second.count = 3;
  cap.rounds = {first, second};
  for (std::uint32_t i = 0; i < 9; ++i) {
    fabric::Stitch stitch;
    stitch.kind = *stitch::find_kind(cap.kinds, "sc");
    stitch.round = i < 6 ? 0 : 1;
    stitch.first_leg = i;
    cap.stitches.push_back(stitch);
    fabric::Place into{0, fabric::On::ring, stitch::both};
    if (i >= 6) into = {i < 8 ? 0U : 1U, fabric::On::top, stitch::both};
    cap.legs.push_back({into});
  }
  return cap;
}

Symbol symbol_of(std::uint32_t stitch, Color color = ink::black) {
  Symbol symbol;
  symbol.at = {10.0 + stitch, 20};
  symbol.color = color;
  symbol.origin.stitch = stitch;
  symbol.origin.span = {7, 11};
  return symbol;
}

Group round_of(std::uint32_t number, std::uint32_t from, std::uint32_t to, Color color) {
  Group round{"cap_round_" + std::to_string(number), "round", "Round " + std::to_string(number), {}};
  for (std::uint32_t i = from; i < to; ++i) round.items.push_back(symbol_of(i, color));
  return round;
}

Scene small_scene() {
  Scene scene;
  scene.title = "Acorn";
  scene.description = "A cap of two rounds.";
  scene.symbols.push_back({"sc", {{line(), 0.44, 0}}});
  scene.items.push_back(round_of(1, 0, 6, ink::black));
  scene.items.push_back(round_of(2, 6, 9, ink::second));
  Text text;
  text.text = "Fig. 1";
  text.at = {15, 40};
  scene.items.push_back(text);
  scene.items.push_back(Stroke{line(), 0.25, ink::hairline, 0.9, {}});
  return scene;
}

struct Drawn {
  fabric::Fabric fabric = small_cap();
  pattern::Source source{"Acorn\nR1: 6 sc in mr\n"};
  std::string text(const Scene& scene, const std::string& prefix = {}) const {
    SvgOptions options;
    options.prefix = prefix;
    options.fabric = &fabric;
    options.source = &source;
    return svg(scene, options);
  }
};

pugi::xml_document parsed(const std::string& text) {
  pugi::xml_document document;
  REQUIRE(document.load_string(text.c_str(), pugi::parse_full));
  return document;
}

std::string text_back(const std::string& text) {
  Scene scene;
  Text item;
  item.text = text;
  scene.items.push_back(item);
  scene.title = text;
  const auto document = parsed(svg(scene));
  return document.child("svg").child_value("text");
}

pugi::xml_node by_id(const pugi::xml_document& document, const char* id) {
  return document.find_node(
      [id](const pugi::xml_node& node) { return node.attribute("id").value() == std::string(id); });
}

} // namespace

TEST_CASE("numbers are written in as few digits as thousandths need") {
  CHECK(number(0) == "0");
  CHECK(number(12.5) == "12.5");
  CHECK(number(-0.25) == "-0.25");
  CHECK(number(1.0004) == "1");
  CHECK(number(2.0626) == "2.063");
  CHECK(number(0.007) == "0.007");
  CHECK(number(210) == "210");
}

TEST_CASE("no number is written as minus nothing") {
  CHECK(number(-0.0) == "0");
  CHECK(number(-0.0004) == "0");
}

TEST_CASE("what is no number is written as nothing at all") {
  CHECK(number(std::numeric_limits<double>::quiet_NaN()) == "0");
  CHECK(number(std::numeric_limits<double>::infinity()) == "0");
}

TEST_CASE("a drawing is well formed and ends its last line") {
  const std::string text = Drawn().text(small_scene());
  parsed(text);
  CHECK(text.substr(text.size() - 7) == "</svg>\n");
}

TEST_CASE("the same scene is the same bytes") {
  CHECK(Drawn().text(small_scene()) == Drawn().text(small_scene()));
}

TEST_CASE("the sheet is as large in millimetres as it says") {
  const auto document = parsed(svg(small_scene()));
  const auto root = document.child("svg");
  CHECK(root.attribute("width").value() == std::string("210mm"));
  CHECK(root.attribute("viewBox").value() == std::string("0 0 210 297"));
}

// Names and roles: trade-facts 8c, W3C SVG-AAM.
TEST_CASE("the drawing is named by its title, its first child, and described") {
  const auto document = parsed(svg(small_scene()));
  const auto root = document.child("svg");
  const auto title = root.first_child();
  CHECK(title.name() == std::string("title"));
  CHECK(title.child_value() == std::string("Acorn"));
  CHECK(root.attribute("aria-labelledby").value() == std::string(title.attribute("id").value()));
  CHECK(root.attribute("aria-describedby").value() ==
        std::string(root.child("desc").attribute("id").value()));
}

TEST_CASE("a round is a named group") {
  const auto document = parsed(svg(small_scene()));
  const auto round = by_id(document, "cap_round_1");
  CHECK(round.attribute("class").value() == std::string("round"));
  CHECK(round.attribute("aria-label").value() == std::string("Round 1"));
  CHECK(round.first_child().child_value() == std::string("Round 1"));
}

TEST_CASE("a stitch has its id, its kind, what it goes into and its place in the text") {
  const auto document = parsed(Drawn().text(small_scene()));
  const auto stitch = by_id(document, "cap-2-3");
  CHECK(stitch.name() == std::string("use"));
  CHECK(stitch.attribute("class").value() == std::string("sc"));
  CHECK(stitch.attribute("data-into").value() == std::string("cap-1-2"));
  CHECK(stitch.attribute("data-line").as_int() == 2);
  CHECK(stitch.attribute("data-column").as_int() == 2);
}

TEST_CASE("a stitch says which it is and, where it takes one loop, which loop") {
  Drawn drawn;
  drawn.fabric.legs[8].into.loops = stitch::back;
  const auto document = parsed(drawn.text(small_scene()));
  CHECK(by_id(document, "cap-2-3").attribute("data-stitch").value() == std::string("sc"));
  CHECK(by_id(document, "cap-2-3").attribute("data-loop").value() == std::string("back"));
  CHECK(by_id(document, "cap-2-2").attribute("data-loop").empty());
}

TEST_CASE("the second stitch of an increase has its id and says what it goes into") {
  Scene scene = small_scene();
  auto& round = std::get<Group>(scene.items[1]);
  std::get<Symbol>(round.items[0]).origin.count = 2;
  round.items.erase(round.items.begin() + 1);
  const auto document = parsed(Drawn().text(scene));
  CHECK(by_id(document, "cap-2-1").attribute("data-stitches").as_int() == 2);
  CHECK(by_id(document, "cap-2-2").attribute("data-stitch").value() == std::string("sc"));
  CHECK(by_id(document, "cap-2-2").attribute("data-into").value() == std::string("cap-1-1"));
}

TEST_CASE("a folded round names all the rounds that it shows") {
  Scene scene = small_scene();
  std::get<Group>(scene.items[1]).rounds = {"cap-2", "cap-3"};
  const auto document = parsed(Drawn().text(scene, "a-"));
  CHECK(by_id(document, "a-cap_round_2").attribute("data-rounds").value() == std::string("a-cap-2 a-cap-3"));
}

TEST_CASE("stitches are silent for screen readers") {
  const auto document = parsed(Drawn().text(small_scene()));
  CHECK(by_id(document, "cap-2-3").first_child().empty());
  CHECK(by_id(document, "cap-2-3").attribute("aria-label").empty());
}

TEST_CASE("no id is given twice, even where a round is drawn again") {
  Scene scene = small_scene();
  scene.items.push_back(round_of(1, 0, 6, ink::faint));
  scene.symbols.push_back(scene.symbols[0]);
  const auto document = parsed(Drawn().text(scene));
  std::set<std::string> ids;
  document.find_node([&ids](const pugi::xml_node& node) {
    if (const auto id = node.attribute("id")) CHECK(ids.insert(id.value()).second);
    return false;
  });
  CHECK(ids.size() == 2 + 2 + 3 + 9);
}

TEST_CASE("a stitch drawn again points to where it has its id") {
  Scene scene = small_scene();
  scene.items.push_back(round_of(1, 0, 6, ink::faint));
  const auto document = parsed(Drawn().text(scene));
  CHECK(by_id(document, "cap_round_1_2").child("use").attribute("data-again").value() ==
        std::string("cap-1-1"));
}

TEST_CASE("every use points to a symbol of the document") {
  const auto document = parsed(Drawn().text(small_scene(), "fox\" & <b> "));
  document.find_node([&document](const pugi::xml_node& node) {
    if (node.name() == std::string("use")) CHECK(by_id(document, node.attribute("href").value() + 1));
    return false;
  });
}

TEST_CASE("a prefix goes before every id and what points to one") {
  const auto document = parsed(Drawn().text(small_scene(), "fox-"));
  document.find_node([](const pugi::xml_node& node) {
    for (const char* name : {"id", "data-into", "aria-labelledby", "aria-describedby"})
      if (const auto id = node.attribute(name)) CHECK(std::string(id.value()).substr(0, 4) == "fox-");
    if (const auto href = node.attribute("href")) CHECK(std::string(href.value()).substr(0, 5) == "#fox-");
    return false;
  });
}

TEST_CASE("the colour of a round stands once, at its group") {
  const auto document = parsed(Drawn().text(small_scene()));
  CHECK(by_id(document, "cap_round_2").attribute("color").value() == std::string("#a23b12"));
  CHECK(by_id(document, "cap-2-3").attribute("color").empty());
}

TEST_CASE("a symbol in another colour than its round's says so") {
  Scene scene = small_scene();
  auto& round = std::get<Group>(scene.items[0]);
  std::get<Symbol>(round.items[2]).color = ink::grey;
  const auto document = parsed(Drawn().text(scene));
  CHECK(by_id(document, "cap-1-3").attribute("color").value() == std::string("#77736c"));
}

TEST_CASE("an upright symbol is only moved, one that looks right is turned a quarter") {
  Scene scene = small_scene();
  std::get<Symbol>(std::get<Group>(scene.items[0]).items[1]).up = {1, 0};
  const auto document = parsed(Drawn().text(scene));
  CHECK(by_id(document, "cap-1-1").attribute("transform").value() == std::string("matrix(1 0 0 1 10 20)"));
  CHECK(by_id(document, "cap-1-2").attribute("transform").value() == std::string("matrix(0 1 -1 0 11 20)"));
}

TEST_CASE("a path is written in thousandths of a millimetre") {
  const auto document = parsed(svg(small_scene()));
  CHECK(document.child("svg").child("path").attribute("d").value() == std::string("M0 0L1.235-2"));
}

TEST_CASE("marks and signs of a text come back as they were typed") {
  CHECK(text_back("a < b & \"c\" ]]> 'd'") == "a < b & \"c\" ]]> 'd'");
  CHECK(text_back("8 · 24 – Blätter") == "8 · 24 – Blätter");
}

TEST_CASE("control characters are dropped and broken bytes replaced") {
  CHECK(text_back("a\x01\x1B\x7F"
                  "b\xEF\xBF\xBF") == "ab");
  CHECK(text_back("a\xFF") == "a\xEF\xBF\xBD");
}

TEST_CASE("line ends in a text become blanks") { CHECK(text_back("a\r\nb\tc") == "a  b c"); }

TEST_CASE("blanks at the ends of a text are kept") {
  const std::string text = svg([] {
    Scene scene;
    Text item;
    item.text = " from the tip";
    scene.items.push_back(item);
    return scene;
  }());
  CHECK(text.find("xml:space=\"preserve\"> from the tip</text>") != std::string::npos);
}

TEST_CASE("a name that the designer gave is one class and cannot leave its quotes") {
  Drawn drawn;
  drawn.fabric.kinds[drawn.fabric.stitches[0].kind].name = "my \"leaf\"\n<st>";
  const auto document = parsed(drawn.text(small_scene()));
  CHECK(by_id(document, "cap-1-1").attribute("class").value() == std::string("my-\"leaf\"-<st>"));
}

TEST_CASE("a use of a symbol that is not there is left out") {
  Scene scene = small_scene();
  std::get<Symbol>(std::get<Group>(scene.items[0]).items[0]).symbol = 7;
  const auto document = parsed(Drawn().text(scene));
  CHECK_FALSE(by_id(document, "cap-1-1"));
}

TEST_CASE("a stitch takes less than two hundred bytes") {
  Scene fewer = small_scene();
  std::get<Group>(fewer.items[1]).items.pop_back();
  CHECK(Drawn().text(small_scene()).size() - Drawn().text(fewer).size() < 200);
}
