#include "pictures/chance.hpp"
#include "pictures/touching.hpp"
#include "whorl.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace whorl;

namespace {

/// Looks at the sheets of balls and toys by chance, the figures alone.
void check_nothing_touches(ChartOptions options, unsigned first_seed) {
  options.figures_only = true;
  for (unsigned seed = first_seed; seed < first_seed + 15; ++seed)
    for (const std::string& text : {pictures::ChanceBall(seed).text(), pictures::ChanceToy(seed).text()}) {
      const Chart chart = read(text).chart(options);
      const auto contacts = pictures::touching(chart.scene(), nullptr);
      INFO("seed " << seed << '\n' << text << pictures::show(contacts));
      CHECK(contacts.empty());
    }
}

} // namespace

TEST_CASE("nothing touches where increases and decreases carry strokes") {
  ChartOptions options;
  options.stroked = true;
  check_nothing_touches(options, 4100);
}

TEST_CASE("nothing touches where crosses are drawn upright") {
  ChartOptions options;
  options.plus = true;
  check_nothing_touches(options, 4200);
}

TEST_CASE("nothing touches where only some rounds are drawn") {
  ChartOptions options;
  options.first_round = 3;
  options.last_round = 6;
  check_nothing_touches(options, 4300);
}

TEST_CASE("nothing touches where rounds are always rings") {
  ChartOptions options;
  options.strips = false;
  check_nothing_touches(options, 4400);
}

TEST_CASE("nothing touches on a left-handed chart of every round") {
  ChartOptions options;
  options.left_handed = true;
  options.fold = false;
  check_nothing_touches(options, 4500);
}
