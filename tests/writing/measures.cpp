#include "writing/measures.hpp"

#include <catch2/catch.hpp>

using namespace whorl::writing;

namespace {

const Measuring us{false, true}, german{true, false}, russian{true, false, "мм", "см", "г"};

} // namespace

TEST_CASE("measures are written as a language has them") {
  CHECK(measured("8 mm, 2.5 mm", us, german) == "8 mm, 2,5 mm");
  CHECK(measured("2,5 mm", german, us) == "2.5 mm");
  CHECK(measured("moss (30 g)", us, russian) == "moss (30 г)");
  CHECK(measured("5 sc = 1 in", us, german) == "5 sc = 2,5 cm");
  CHECK(measured("about 4 inches long", us, german) == "about 10 cm long");
  CHECK(measured("etwa 10 cm", german, us) == "etwa 10 cm (4 in)");
  CHECK(measured("16 cm", german, us) == "16 cm (6¼ in)");
  CHECK(measured("4 in (10 cm)", us, german) == "4 in (10 cm)");
  CHECK(measured("1.5 times", us, german) == "1.5 times");
  CHECK(measured("10 sc = 2 x 2 inches", us, german) == "10 sc = 5 x 5 cm");
  CHECK(measured("12 cm tall (4.7 in)", us, german) == "12 cm tall");
}

TEST_CASE("a hook goes by millimetres, and by its US name where that is the way") {
  CHECK(hook_size("3.5 mm", us, german) == "3,5 mm");
  CHECK(hook_size("3,5 mm", german, us) == "3.5 mm (US E-4)");
  CHECK(hook_size("US E-4", us, german) == "3,5 mm");
  CHECK(hook_size("3.5 mm (US E/4)", us, german) == "3,5 mm");
  CHECK(hook_size("3.5 mm (or what you like)", us, german) == std::nullopt);
  CHECK(hook_size("K/10½", us, german) == "6,5 mm");
  CHECK(hook_size("G", us, german) == std::nullopt); // 4 mm or 4.25 mm
  CHECK(hook_size("2 (2.5, 3) mm", us, german) == std::nullopt);
}

TEST_CASE("a number with or without a unit is a measure") {
  CHECK(is_measure("10 cm (4 in)"));
  CHECK(is_measure("6¼ in"));
  CHECK(is_measure("12"));
  CHECK_FALSE(is_measure("12 ears"));
  CHECK_FALSE(is_measure(""));
}
