#include "drawing/steps.hpp"

#include "drawing/lit.hpp"
#include "drawing/repeat.hpp"
#include "drawing/sheets.hpp"
#include "pattern/read.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>
#include <set>

using namespace whorl;
using namespace whorl::drawing;
using sheets::Made;

namespace {

Made made(const std::string& text) {
  const pattern::Source source(text);
  return sheets::made(pattern::read(source, *words::find_vocabulary("en-US")).tree);
}

const std::string ball =
    "Moss ball\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: (sc, inc) x 6 (18)\n"
    "Rnd 4: (sc, dec) x 6 (12)\nRnd 5: dec x 6 (6)\nFasten off and close the last 6 sts.\n";

const std::string doily = "Frost\n\nRnd 1: MR, ch 3 (counts as dc), 11 dc in ring, join with sl st (12)\n"
                          "Rnd 2: ch 1, (sc in next st, ch 3, skip 1) 6 times, join (6 sc, 6 ch-3 sp)\n"
                          "Rnd 3: ch 1, ((sc, hdc, 3 dc, hdc, sc) in next ch-3 sp) 6 times, join\n";

Scene picture(const Made& it, std::size_t step, const StepPage& page = {}) {
  const Copy copy = it.copy();
  return step_picture(copy, built_in_marks(), steps_of(copy)[step], page);
}

Scene picture(const Made& it, const Step& step, const StepPage& page) {
  return step_picture(it.copy(), built_in_marks(), step, page);
}

/// Where the symbols of stitches stand, and how they are turned.
using Places = std::map<fabric::StitchId, std::pair<Point, Point>>;
void add_places(const std::vector<Item>& items, Places& places) {
  for (const Item& item : items) {
    if (const auto* group = std::get_if<Group>(&item)) add_places(group->items, places);
    if (const auto* symbol = std::get_if<Symbol>(&item); symbol && symbol->origin.stitch != fabric::none)
      places[symbol->origin.stitch] = {symbol->at, symbol->up};
  }
}
Places places_of(const Scene& scene) {
  Places places;
  add_places(scene.items, places);
  return places;
}

std::vector<std::string> ids(const Made& it) {
  std::vector<std::string> found;
  for (const Step& step : steps_of(it.copy())) found.push_back(step_id(it.copy(), step));
  return found;
}

/// The colours of the symbols that stand for stitches of a round.
std::set<std::uint32_t> colors_of(const Scene& scene, const std::string& id) {
  std::set<std::uint32_t> colors;
  for (const Item& item : scene.items)
    if (const auto* group = std::get_if<Group>(&item); group != nullptr && group->id == id)
      for (const Item& inside : group->items)
        if (const auto* symbol = std::get_if<Symbol>(&inside)) colors.insert(symbol->color.rgb);
  return colors;
}

std::vector<Point> feet_of(const Scene& scene, const std::string& id) {
  std::vector<Point> feet;
  for (const Item& item : scene.items)
    if (const auto* group = std::get_if<Group>(&item); group != nullptr && group->id == id)
      for (const Item& inside : group->items)
        if (const auto* symbol = std::get_if<Symbol>(&inside)) feet.push_back(symbol->at);
  return feet;
}

} // namespace

TEST_CASE("a part's steps are its start and its rounds in the order of work, inward figures too") {
  const std::vector<std::string> wanted{"part-start", "part-1", "part-2", "part-3", "part-4", "part-5"};
  CHECK(ids(made(ball)) == wanted);
}

TEST_CASE("in a step its round is black, what is done grey, the next pale and no later one there") {
  const Made it = made(ball);
  const Scene scene = picture(it, 2);
  CHECK(colors_of(scene, "part-1") == std::set<std::uint32_t>{ink::done.rgb});
  CHECK(colors_of(scene, "part-2") == std::set<std::uint32_t>{ink::black.rgb});
  CHECK(colors_of(scene, "part-3") == std::set<std::uint32_t>{ink::coming.rgb});
  CHECK(colors_of(picture(it, 1), "part-3").empty());
}

TEST_CASE("a stitch that is done stands in the next picture of its figure where it stood") {
  for (const Pace pace : {Pace::rounds, Pace::stitches})
    for (const Made& it :
         {made(ball), made(doily), sheets::made(sheets::gnome()), sheets::made(sheets::beetle())})
      for (const StepPage& page : {StepPage{192, 108}, StepPage{108, 192}, StepPage{108, 108}}) {
        const std::vector<Step> steps = steps_of(it.copy(), pace);
        std::size_t compared = 0;
        for (std::size_t step = 0; step + 1 < steps.size(); ++step) {
          if (steps[step].figure != steps[step + 1].figure) continue;
          const Places before = places_of(picture(it, steps[step], page)),
                       after = places_of(picture(it, steps[step + 1], page));
          for (const auto& [stitch, place] : before) {
            const auto found = after.find(stitch);
            if (found == after.end()) continue;
            CHECK(found->second == place);
            ++compared;
          }
          CHECK(compared > 0);
        }
      }
}

TEST_CASE("the close-up names every stitch of one repeat") {
  const Made it = made(ball);
  const std::string words = sheets::words_of(picture(it, 3), "close-up");
  CHECK(words.find("sc") != std::string::npos);
  CHECK(words.find("inc") != std::string::npos);
}

TEST_CASE("the words under a step are the author's line and the fabric's count") {
  const Made it = made(ball);
  const std::string words = sheets::words_of(picture(it, 3), "words");
  CHECK(words.find("Round 3") != std::string::npos);
  CHECK(words.find("18 stitches") != std::string::npos);
  CHECK(words.find("(+6)") != std::string::npos);
}

TEST_CASE("what is worked into is lit: stitches as one band, spaces one by one") {
  const Made it = made(doily);
  const auto lit = [&](std::size_t step) {
    std::size_t bands = 0;
    const Scene scene = picture(it, step);
    for (const Group* group : sheets::groups_of(scene, "lit")) bands += group->items.size();
    return bands;
  };
  CHECK(lit(1) == 2); // the ring, and the chain that the round is joined to
  CHECK(lit(3) == 7); // six spaces, and the stitch that it is joined to
  const Made even = made(ball);
  const Scene third = picture(even, 3);
  CHECK(sheets::groups_of(third, "lit").front()->items.size() == 1);
}

TEST_CASE("at a picture a stitch, an increase, a group into one place and chains in a row are one") {
  const Made it = made(doily);
  std::size_t second = 0, third = 0;
  for (const Step& step : steps_of(it.copy(), Pace::stitches)) {
    const std::string id = step_id(it.copy(), step);
    second += id.find("part-2-") == 0 ? 1 : 0;
    third += id.find("part-3-") == 0 ? 1 : 0;
  }
  CHECK(second == 14); // ch 1, six sc, six times ch 3, the join
  CHECK(third == 8);   // ch 1, six shells, the join
  CHECK(steps_of(made(ball).copy(), Pace::stitches).size() == 1 + 6 + 6 + 12 + 12 + 6);
}

TEST_CASE("at a picture a stitch, it alone is bold, those before it black, those after it faint") {
  const Made it = made(ball);
  const std::vector<Step> steps = steps_of(it.copy(), Pace::stitches);
  const auto at = std::find_if(steps.begin(), steps.end(),
                               [&](const Step& step) { return step_id(it.copy(), step) == "part-3-10"; });
  REQUIRE(at != steps.end());
  const Scene scene = picture(it, *at, {});
  std::map<std::uint32_t, int> colors;
  for (const Group* group : sheets::groups_of(scene, "round"))
    if (group->id == "part-3")
      for (const Item& item : group->items)
        if (const auto* symbol = std::get_if<Symbol>(&item)) ++colors[symbol->color.rgb];
  CHECK(colors == std::map<std::uint32_t, int>{{ink::black.rgb, 6}, {ink::coming.rgb, 5}});
  const std::vector<const Group*> now = sheets::groups_of(scene, "stitch now");
  REQUIRE(now.size() == 1);
  REQUIRE(now[0]->items.size() == 1);
  CHECK(scene.symbols[std::get<Symbol>(now[0]->items[0]).symbol].id.find("_now") != std::string::npos);
}

TEST_CASE("at a picture a stitch, the count runs on to that of the round") {
  const Made it = made(ball);
  const std::vector<Step> steps = steps_of(it.copy(), Pace::stitches);
  std::vector<std::string> counts;
  for (const Step& step : steps)
    if (step_id(it.copy(), step).find("part-2-") == 0) {
      const std::string words = sheets::words_of(picture(it, step, {}), "words");
      counts.push_back(words.find(" of 12") == std::string::npos ? "" : words);
    }
  REQUIRE(counts.size() == 6);
  CHECK(counts[0].find("2 of 12") != std::string::npos);
  CHECK(counts[5].find("12 of 12") != std::string::npos);
}

TEST_CASE("files of a picture a stitch sort as they are worked") {
  const Made it = made(ball);
  const std::vector<std::string> first{"part-2-01", "part-2-03", "part-2-05",
                                       "part-2-07", "part-2-09", "part-2-11"};
  std::vector<std::string> found;
  for (const Step& step : steps_of(it.copy(), Pace::stitches))
    if (step_id(it.copy(), step).find("part-2-") == 0) found.push_back(step_id(it.copy(), step));
  CHECK(found == first);
}

TEST_CASE("nothing of a long line of the author is lost under a picture") {
  std::string line;
  for (int i = 1; i <= 12; ++i) line += "inc in the next stitch" + std::string(i < 12 ? ", " : "");
  Made it = made(ball);
  it.text.round_lines.assign(it.tree.rounds.size(), line);
  for (const StepPage& page : {StepPage{192, 108}, StepPage{108, 192}, StepPage{108, 108}}) {
    const std::string words = sheets::words_of(picture(it, 2, page), "words");
    CHECK(words.find("\u2026") == std::string::npos);
    CHECK(std::count(words.begin(), words.end(), ',') == 11);
  }
}

TEST_CASE("words and picture can stand in layers of their own") {
  const Made it = made(ball);
  StepPage page;
  page.words = false;
  CHECK(sheets::words_of(picture(it, 3, page), "words").empty());
  page.words = true;
  page.picture = false;
  const Scene words = picture(it, 3, page);
  CHECK(feet_of(words, "part-1").empty());
  CHECK_FALSE(sheets::words_of(words, "words").empty());
}

TEST_CASE("nothing of a step stands outside the safe margin, whatever its shape") {
  const Made it = made(ball);
  for (const StepPage& page : {StepPage{192, 108}, StepPage{108, 192}, StepPage{108, 108}})
    for (std::size_t step = 0; step < steps_of(it.copy()).size(); ++step) {
      const Scene scene = picture(it, step, page);
      Box all;
      for (const sheets::Found& found : sheets::items_of(scene))
        join(all, bounds(*found.item, scene.symbols));
      const double margin = 0.03 * std::min(page.width, page.height);
      CAPTURE(step, page.width, page.height);
      CHECK(all.left >= margin);
      CHECK(all.top >= margin);
      CHECK(all.right <= page.width - margin);
      CHECK(all.bottom <= page.height - margin);
    }
}

TEST_CASE("a repeat is shown whole, a round of one stitch by three, a round without repeats by four") {
  const auto shown = [](const Made& it, std::uint32_t ring) {
    return repeat_shown(it.copy(), it.placement.figures[0], it.placement.figures[0].rings[ring]).count;
  };
  const Made it = made(ball);
  CHECK(shown(it, 0) == 3);
  CHECK(shown(it, 2) == 2); // (sc, inc)
  const Made odd =
      made("Moss\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: 5 sc, inc, 3 sc, inc, 2 sc (14)\n");
  CHECK(shown(odd, 2) == 4);
  const Made shells =
      made("Frost\n\nRnd 1: MR, ch 3 (counts as dc), 11 dc in ring, join with sl st (12)\n"
           "Rnd 2: ch 1, sc in same st, (ch 3, skip 1, sc in next) 5 times, ch 3, join (6 sc)\n"
           "Rnd 3: sl st in ch-3 sp, ch 3, 2 dc in same sp, (3 dc in next ch-3 sp) 5 times, join\n");
  CHECK(shown(shells, 2) == 3);
}

namespace {

const std::string cup =
    "Cup\n\nCUP\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: in BLO, sc around (12)\n"
    "Rnds 4-5: sc around (12)\nRnd 6: in BLO, sc around (12)\nPlace eyes between rounds 4 and 5, 4 sts "
    "apart.\n\n"
    "FRILL\nHold the cup upside down. Join yarn in the first free front loop of Rnd 2.\n"
    "Rnd 1: (sc, ch 2) x 12 (12 sc)\n";

std::size_t signs_of(const Scene& scene) {
  for (const Item& item : scene.items)
    if (const auto* group = std::get_if<Group>(&item); group != nullptr && group->kind == "signs")
      return group->items.size();
  return 0;
}

std::size_t step_of(const Made& it, const std::string& id) {
  const std::vector<std::string> all = ids(it);
  return static_cast<std::size_t>(std::find(all.begin(), all.end(), id) - all.begin());
}

} // namespace

TEST_CASE("a stitch is of one size in all pictures of a pattern") {
  const Made it = made(cup);
  std::set<long> sizes;
  for (std::size_t step = 0; step < ids(it).size(); ++step) {
    const Scene scene = picture(it, step);
    for (const SymbolDefinition& symbol : scene.symbols)
      if (symbol.id == "sc") sizes.insert(std::lround(1000 * bounds(symbol).width()));
  }
  CHECK(sizes.size() == 1);
}

TEST_CASE("eyes stand in the pictures from where the text puts them in") {
  const Made it = made(cup);
  CHECK(signs_of(picture(it, step_of(it, "cup-5"))) == 0);
  CHECK(signs_of(picture(it, step_of(it, "cup-6"))) == 2);
}

TEST_CASE("a part that stands on another has a start too") {
  const Made it = made(cup);
  const Scene scene = picture(it, step_of(it, "frill-start"));
  CHECK(feet_of(scene, "frill-1").size() == 36);
  CHECK(colors_of(scene, "frill-1") == std::set<std::uint32_t>{ink::coming.rgb});
  CHECK(std::any_of(scene.items.begin(), scene.items.end(), [](const Item& item) {
    const auto* group = std::get_if<Group>(&item);
    return group != nullptr && group->id.rfind("cup-2_", 0) == 0 && !group->items.empty();
  }));
}

TEST_CASE("a stitch in another yarn stands on its ground in a step and close up") {
  const Made it = made("Wall\n\nYarn: A red, B white\n\nRnd 1: in A, 6 sc in MR (6)\nRnd 2: inc x 6 (12)\n"
                       "Rnd 3: (A: sc 1, B: sc 1) x 6 (12)\nRnd 4: with A, sc around (12)\n");
  const auto grounds = [&](const std::string& id) {
    const Scene scene = picture(it, step_of(it, id));
    return std::count_if(scene.items.begin(), scene.items.end(), [](const Item& item) {
      const auto* group = std::get_if<Group>(&item);
      return group != nullptr && group->kind == "grounds" && !group->items.empty();
    });
  };
  CHECK(grounds("part-2") == 0);
  CHECK(grounds("part-3") == 1);
}

TEST_CASE("a ring of chains has as many as the author wrote, on the chart's steps and close up") {
  const Made it = made("Bud\n\nCh 5, join with sl st to form a ring.\nRnd 1: 10 sc in ring (10)\n");
  const auto ovals = [](const Group& group, const Scene& scene) {
    return std::count_if(group.items.begin(), group.items.end(), [&](const Item& item) {
      const auto* symbol = std::get_if<Symbol>(&item);
      return symbol && scene.symbols[symbol->symbol].id.find("mark_oval") == 0;
    });
  };
  const Scene start = picture(it, 0), first = picture(it, 1);
  CHECK(ovals(*sheets::groups_of(start, "centre").front(), start) == 5);
  CHECK(ovals(*sheets::groups_of(start, "close-up").front(), start) == 5);
  CHECK(ovals(*sheets::groups_of(first, "close-up").front(), first) == 5);
  CHECK(sheets::words_of(start, "words").find("chains joined to a ring") != std::string::npos);
}
