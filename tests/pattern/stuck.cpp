#include "pattern/reading.hpp"

#include <catch2/catch.hpp>
#include <string>

using namespace whorl;
using namespace whorl::pattern;

namespace {

/// Where a line gets stuck: the word, what stood before it, what could follow.
std::string stuck_at(const std::string& text) {
  Stuck stuck;
  const auto readings =
      read_work(text, {0, static_cast<std::uint32_t>(text.size())}, *words::find_vocabulary("en-US"),
                stitch::standard_kinds(), Effort::all, stuck);
  if (!readings.empty()) return "read";
  std::string told =
      "'" + text.substr(stuck.span.begin, stuck.span.length()) + "' after '" + stuck.after + "':";
  for (const std::string& one : stuck.could_follow) told += " " + one + ";";
  return told;
}

} // namespace

TEST_CASE("a stitch into a place that nobody knows is stuck at the place") {
  CHECK(stuck_at("sc in flurb 2") == "'flurb' after 'sc in': next st; next 3 sts; each st;");
}

TEST_CASE("an unknown stitch in a passage is stuck at its name") {
  CHECK(stuck_at("(2 sc, flurb) x 6 (18)") == "'flurb' after '(2 sc': 3 sc; inc; dec;");
}

TEST_CASE("a line that is no work is stuck at its first word") {
  CHECK(stuck_at("flurb 3 (3)") == "'flurb' after '': 3 sc; inc; dec;");
}
