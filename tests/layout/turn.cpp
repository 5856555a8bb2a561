#include "layout/turn.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace whorl::layout;

TEST_CASE("the sine of an angle is the library's to 1e-14") {
  for (int i = -200000; i <= 200000; ++i) {
    const double angle = i * 0.0001237;
    if (std::abs(sine(angle) - std::sin(angle)) > 1e-14) FAIL("at " << angle);
  }
}

TEST_CASE("the cosine of an angle is the library's to 1e-14") {
  for (int i = -200000; i <= 200000; ++i) {
    const double angle = i * 0.0001237;
    if (std::abs(cosine(angle) - std::cos(angle)) > 1e-14) FAIL("at " << angle);
  }
}

TEST_CASE("sine and cosine hold up to a thousand") {
  for (int i = -1000; i <= 1000; ++i) {
    const double angle = i * 0.99871;
    CHECK(std::abs(sine(angle) - std::sin(angle)) < 1e-14);
    CHECK(std::abs(cosine(angle) - std::cos(angle)) < 1e-14);
  }
}

TEST_CASE("the arc sine is the library's to 1e-14") {
  for (int i = -100000; i <= 100000; ++i) {
    const double x = i / 100000.0;
    if (std::abs(arc_sine(x) - std::asin(x)) > 1e-14) FAIL("at " << x);
  }
}

TEST_CASE("the arc sine of what is no sine is that of the nearer end") {
  CHECK(arc_sine(1.5) == pi / 2);
  CHECK(arc_sine(-7) == -pi / 2);
}
