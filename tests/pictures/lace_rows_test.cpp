/// Sheets of lace and ripples in rows.

#include "layout/lace_rows.hpp"

#include "pictures/touching.hpp"
#include "whorl.hpp"

#include <catch2/catch.hpp>

using namespace whorl;

TEST_CASE("nothing touches on sheets of lace and ripples in rows") {
  for (const std::string& text : test::lace_rows) {
    INFO(text);
    const Pattern pattern = read(text);
    REQUIRE_FALSE(pattern.has_errors());
    const Chart chart = pattern.chart();
    const auto contacts = pictures::touching(chart.scene(), nullptr);
    INFO(pictures::show(contacts));
    CHECK(contacts.empty());
  }
}
