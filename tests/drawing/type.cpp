#include "drawing/type.hpp"

#include "drawing/widths.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace whorl::drawing;

namespace {
double sans(std::string_view text) { return text_width(Typeface::sans, false, false, text); }
} // namespace

TEST_CASE("a text is as wide as its letters") { CHECK(sans("acorn") == Approx(sans("a") + sans("corn"))); }

TEST_CASE("the table is sorted by character, none twice") {
  const AdvanceTable table = advance_table();
  CHECK(std::adjacent_find(table.begin(), table.end(), [](const AdvanceRow& a, const AdvanceRow& b) {
          return a.character >= b.character;
        }) == table.end());
}

TEST_CASE("digits are all of one width, so that numbers stand in columns") {
  for (const char* digit : {"1", "2", "3", "4", "5", "6", "7", "8", "9"}) CHECK(sans(digit) == sans("0"));
}

TEST_CASE("every sign of a label has a width in every face") {
  for (const AdvanceRow& row : advance_table()) {
    const std::u32string signs = U"0123456789·–−×+()!½¼¾ÄÖÜäöüßéèçñåøæœ←→";
    if (signs.find(row.character) == std::u32string::npos) continue;
    INFO(static_cast<std::uint32_t>(row.character));
    CHECK(std::count(row.advance, row.advance + 8, 0) == 0);
  }
}

TEST_CASE("every sign of a label is in the table") {
  for (const char32_t sign : std::u32string(U"·–−×½¼¾ßéœ←→")) {
    const AdvanceTable table = advance_table();
    INFO(static_cast<std::uint32_t>(sign));
    CHECK(std::any_of(table.begin(), table.end(),
                      [sign](const AdvanceRow& row) { return row.character == sign; }));
  }
}

TEST_CASE("bold is wider than regular, serif other than sans") {
  CHECK(text_width(Typeface::sans, true, false, "Gnome") > sans("Gnome"));
  CHECK(text_width(Typeface::serif, false, false, "Gnome") != sans("Gnome"));
}

TEST_CASE("an accent set apart takes no room") { CHECK(sans("e\xCC\x81") == sans("e")); }

TEST_CASE("a Chinese character is as wide as it is high") { CHECK(sans("\xE9\x92\xA9") == 1); }

TEST_CASE("broken bytes take room and no more") {
  CHECK(sans("\xFF\xC3") == Approx(2 * sans("\xEF\xBF\xBD")));
}

TEST_CASE("layout is given the same widths that drawing uses") {
  whorl::layout::Widths widths{advance_widths(Typeface::sans, true, false), 0.6};
  CHECK(whorl::layout::text_width(widths, "6–10 · 24") ==
        Approx(text_width(Typeface::sans, true, false, "6–10 · 24")));
}
