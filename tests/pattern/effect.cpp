#include "pattern/effect.hpp"

#include "pattern/reading.hpp"

#include <catch2/catch.hpp>

#include <cstdint>

using namespace whorl;

TEST_CASE("the largest numbers that a text can hold stop at the largest and go no further") {
  constexpr std::uint32_t largest = 0xFFFFFFFF;
  pattern::Effect each;
  each.pass_uses = 1;
  each.pass_makes = largest;
  const pattern::Outcome out = pattern::outcome(each, std::int64_t{largest});
  CHECK(out.makes == largest);
  CHECK(out.past_end == 0);
}
