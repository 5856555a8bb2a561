#include "drawing/scene.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace whorl::drawing;

namespace {

/// WCAG 2.2, https://www.w3.org/TR/WCAG22/ : relative luminance.
double luminance(Color color) {
  const auto linear = [color](int shift) {
    const double c = ((color.rgb >> shift) & 0xFF) / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
  };
  return 0.2126 * linear(16) + 0.7152 * linear(8) + 0.0722 * linear(0);
}

/// WCAG 2.2: contrast ratio.
double contrast(Color a, Color b) {
  const double light = std::max(luminance(a), luminance(b)), dark = std::min(luminance(a), luminance(b));
  return (light + 0.05) / (dark + 0.05);
}

// WCAG 2.2, criteria 1.4.3 (text) and 1.4.11 (parts of graphics), level AA.
constexpr double for_text = 4.5, for_strokes = 3.0;

} // namespace

TEST_CASE("black on white has the contrast that WCAG 2.2 gives as the highest") {
  CHECK(contrast({0}, ink::paper) == Approx(21.0));
}

TEST_CASE("both inks can be read as text on paper") {
  CHECK(contrast(ink::black, ink::paper) >= for_text);
  CHECK(contrast(ink::second, ink::paper) >= for_text);
}

TEST_CASE("both inks can be read as text on the ground of the second yarn") {
  CHECK(contrast(ink::black, ink::yarn_ground) >= for_text);
  CHECK(contrast(ink::second, ink::yarn_ground) >= for_text);
}

TEST_CASE("grey can be read as text on paper") { CHECK(contrast(ink::grey, ink::paper) >= for_text); }

TEST_CASE("the faint round can be made out on paper") {
  CHECK(contrast(ink::faint, ink::paper) >= for_strokes);
}

TEST_CASE("the faint round is told from the second ink by its lightness") {
  CHECK(contrast(ink::faint, ink::paper) <= contrast(ink::second, ink::paper) / 1.5);
}
