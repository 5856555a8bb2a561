#include "pattern/reading.hpp"
#include "reading_lines.hpp"

#include <catch2/catch.hpp>
#include <string>

using namespace whorl;
using namespace whorl::pattern;

namespace {

const words::Vocabulary& english() { return *words::find_vocabulary("en-US"); }

std::vector<Reading> read_all(const std::string& text, Effort effort, Stuck& stuck) {
  const Span span{0, static_cast<std::uint32_t>(text.size())};
  return read_work(text, span, english(), stitch::standard_kinds(), effort, stuck);
}

std::vector<Reading> read_all(const std::string& text, Effort effort = Effort::all) {
  Stuck stuck;
  return read_all(text, effort, stuck);
}

bool fits(const Reading& reading, const TypedLine& line) {
  const Outcome out = outcome(reading.effect, line.open);
  return out.makes == line.makes && out.left_over == 0 && out.past_end == 0 && out.remainder == 0;
}

std::int64_t stated(const Reading& reading) {
  return reading.stated.empty() ? -1 : static_cast<std::int64_t>(reading.stated.front().count);
}

std::string told(const std::vector<Reading>& readings, std::int64_t open) {
  std::string text;
  for (const Reading& reading : readings)
    text += " | cost " + std::to_string(reading.cost) + " uses " + std::to_string(reading.effect.uses) +
            " makes " + std::to_string(outcome(reading.effect, open).makes) + " stated " +
            std::to_string(stated(reading)) + " passed " + std::to_string(reading.passed_over.size());
  return text;
}

} // namespace

TEST_CASE("every way to type a round has a reading that agrees with its counts") {
  for (int i = 0; i < typed_line_count; ++i) {
    const TypedLine& line = typed_lines[i];
    const std::vector<Reading> readings = read_all(line.text);
    bool agrees = false;
    for (const Reading& reading : readings)
      agrees =
          agrees || (fits(reading, line) && reading.passed_over.empty() && stated(reading) == line.stated);
    INFO(line.text << told(readings, line.open));
    CHECK(agrees);
  }
}

TEST_CASE("the cheapest reading is right without the counts of the part where the words are plain") {
  for (int i = 0; i < typed_line_count; ++i) {
    const TypedLine& line = typed_lines[i];
    if (line.doubtful) continue;
    const std::vector<Reading> readings = read_all(line.text, Effort::cheapest);
    INFO(line.text << told(readings, line.open));
    CHECK((readings.size() == 1 && fits(readings.front(), line)));
  }
}
