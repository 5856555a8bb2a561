#include "drawing/placed.hpp"

#include "drawing/legend.hpp"
#include "drawing/sheets.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace whorl;
using namespace whorl::drawing;
using layout::Placed;
using layout::Sign;
using sheets::Made;

namespace {

/// A ball on whose figure these signs stand.
Made ball_with(const std::vector<Placed>& signs) {
  Made it = sheets::made(sample::ball({6, 12}));
  it.placement.figures[0].placed = signs;
  sheets::compose(it);
  return it;
}

Placed sign(Sign kind, const std::string& text = "") {
  return {kind, {9, 0}, {0, 1}, {text, layout::Face::bold, 0.5, 0, 0}, {9, 0.6}, 0};
}

std::vector<Entry> entries_of(const Made& it) {
  SymbolCase symbols(it.fabric.kinds, built_in_marks(), it.options.style, it.options.stitch);
  return legend_entries(it.copy(), symbols);
}

std::vector<std::string> words_of(const Made& it, const std::string& key) {
  std::vector<std::string> words;
  for (const Entry& entry : entries_of(it))
    if (entry.key == key) words.push_back(entry.words);
  return words;
}

std::size_t uses_of(const Made& it, const std::string& mark) {
  std::size_t uses = 0;
  for (const sheets::Found& found : sheets::items_of(it.scene))
    if (const auto* symbol = std::get_if<Symbol>(found.item))
      if (found.within.find("sign") != std::string::npos)
        uses += it.scene.symbols[symbol->symbol].id == "mark_" + mark ? 1 : 0;
  return uses;
}

} // namespace

TEST_CASE("The legend explains each kind of sign once") {
  const Made it = ball_with({sign(Sign::eye), sign(Sign::eye), sign(Sign::marker), sign(Sign::bead),
                             sign(Sign::tick, "10"), sign(Sign::tick, "20"), sign(Sign::attach),
                             sign(Sign::front, "front")});
  for (const char* key : {"eye", "marker", "bead", "tick", "attach", "front-side"})
    CHECK(words_of(it, key).size() == 1);
}

TEST_CASE("The legend explains the loops of every part and the flag of every yarn") {
  const Made it = ball_with({sign(Sign::free_loop, "B"), sign(Sign::free_loop, "C"),
                             sign(Sign::free_loop, "B"), sign(Sign::flag, "2")});
  CHECK(words_of(it, "free-loop") ==
        std::vector<std::string>{"loop left free, used by part B", "loop left free, used by part C"});
  CHECK(words_of(it, "flag") == std::vector<std::string>{"change to yarn 2"});
}

namespace {

/// What the legend says of the sign where part B goes into a stitch of the ball.
std::vector<std::string> words_where_used(std::uint8_t loops, const std::string& kind) {
  Made it = ball_with({sign(Sign::free_loop, "B")});
  fabric::Fabric& fabric = it.fabric;
  fabric.stitches[0].kind = stitch::find_kind(fabric.kinds, kind).value();
  fabric::Round first;
  first.part = 1;
  first.first_stitch = static_cast<fabric::StitchId>(fabric.stitches.size());
  first.count = 1;
  fabric::Part part;
  part.start = fabric::Start::free_loops;
  part.rounds = 1;
  part.first_round = static_cast<std::uint32_t>(fabric.rounds.size());
  fabric::Stitch one;
  one.kind = stitch::find_kind(fabric.kinds, "sc").value();
  one.round = part.first_round;
  one.first_leg = static_cast<std::uint32_t>(fabric.legs.size());
  fabric.legs.push_back({{0, fabric::On::top, loops}});
  fabric.stitches.push_back(one);
  fabric.rounds.push_back(first);
  fabric.parts.push_back(part);
  return words_of(it, "free-loop");
}

} // namespace

TEST_CASE("The legend says what it is that a part is worked into") {
  using Words = std::vector<std::string>;
  CHECK(words_where_used(stitch::front, "sc") == Words{"loop left free, used by part B"});
  CHECK(words_where_used(stitch::both, "sc") == Words{"stitch that part B is worked into"});
  CHECK(words_where_used(stitch::both, "ch") == Words{"chain that part B is worked into"});
}

TEST_CASE("The legend names a yarn as the text does, behind its number") {
  Made it = ball_with({sign(Sign::flag, "2")});
  it.tree.yarns = {"bark", "moss"};
  CHECK(words_of(it, "flag") == std::vector<std::string>{"change to yarn 2 (moss)"});
}

TEST_CASE("A sheet without signs has no entries for them") {
  const Made it = ball_with({});
  for (const char* key :
       {"eye", "marker", "bead", "tick", "attach", "front-side", "free-loop", "flag", "ground"})
    CHECK(words_of(it, key).empty());
}

TEST_CASE("A sign is drawn with its mark and its text in the middle of it") {
  const Made it = ball_with({sign(Sign::free_loop, "B"), sign(Sign::eye)});
  CHECK(uses_of(it, "free-loop") == 1);
  CHECK(uses_of(it, "eye") == 1);
  CHECK(sheets::words_of(it.scene, "sign") == "B ");
}

TEST_CASE("Grounds lie beneath everything else of their figure") {
  Made it = sheets::made(sample::ball({6, 12}));
  it.placement.figures[0].grounds = {{{{0, 0}, {1, 0}, {1, 0}, {1, 1}, {1, 1}, {0, 1}, {0, 0}}, 2, 0}};
  sheets::compose(it);
  const auto figures = sheets::groups_of(it.scene, "figure");
  REQUIRE(figures.size() == 1);
  const auto* first = std::get_if<Group>(&figures[0]->items.front());
  REQUIRE(first != nullptr);
  CHECK(first->kind == "grounds");
  CHECK(words_of(it, "ground") == std::vector<std::string>{"in yarn 2"});
}

TEST_CASE("The grounds of different yarns differ by how light they are") {
  const auto light = [](Color color) {
    return 3 * (color.rgb >> 16U) + 6 * ((color.rgb >> 8U) & 0xFFU) + (color.rgb & 0xFFU);
  };
  std::set<std::uint32_t> all;
  for (std::uint8_t yarn = 1; yarn <= 4; ++yarn) all.insert(light(ground_color(yarn)));
  CHECK(all.size() == 4);
}
