#include "drawing/steps.hpp"

#include "drawing/closeup.hpp"
#include "drawing/sheets.hpp"
#include "pattern/read.hpp"

#include <catch2/catch.hpp>

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

Scene picture(const Made& it, std::size_t step, const StepPage& page = {}) {
  const Copy copy = it.copy();
  return step_picture(copy, built_in_marks(), steps_of(copy)[step], page);
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

TEST_CASE("a round stands in the same place in all steps of its figure") {
  const Made it = made(ball);
  CHECK(feet_of(picture(it, 1), "part-1") == feet_of(picture(it, 3), "part-1"));
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
    return repeat_shown(it.placement.figures[0], it.placement.figures[0].rings[ring]).count;
  };
  const Made it = made(ball);
  CHECK(shown(it, 0) == 3);
  CHECK(shown(it, 2) == 4); // (sc, inc), two passes
  const Made odd =
      made("Moss\n\nRnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nRnd 3: 5 sc, inc, 3 sc, inc, 2 sc (14)\n");
  CHECK(shown(odd, 2) == 4);
}
