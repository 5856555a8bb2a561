#include "pattern/choice.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::pattern;

namespace {

Reading reading(std::uint32_t uses, std::uint32_t makes, int cost = 0, std::uint16_t habits = 0) {
  Reading made;
  made.effect.uses = uses;
  made.effect.makes = makes;
  made.cost = cost;
  made.habits = habits;
  return made;
}

/// A repeat to the end.
Reading passes(std::uint32_t uses, std::uint32_t makes, int cost = 0) {
  Reading made = reading(0, 0, cost);
  made.effect.pass_uses = uses;
  made.effect.pass_makes = makes;
  return made;
}

Reading ring(std::uint32_t makes) {
  Reading made = reading(0, makes);
  made.effect.starts = true;
  return made;
}

Reading stating(Reading made, std::uint32_t count) {
  made.stated.push_back({count, Unit::any, stitch::no_kind, {}});
  return made;
}

Label numbered(int from, int to) {
  Label label;
  label.from = from;
  label.to = to;
  return label;
}

Ways line(int number, std::vector<Reading> readings) {
  Way way;
  way.label = numbered(number, number);
  way.readings = std::move(readings);
  return {way};
}

std::vector<Settled> settle(std::vector<Ways>& lines) {
  return choose(lines, 0, 0, {}, [](Way&) {});
}

} // namespace

TEST_CASE("the likeliest reading is taken where it agrees with the counts") {
  std::vector<Ways> lines{line(1, {stating(ring(6), 6)}),
                          line(2, {stating(reading(6, 12), 12), reading(12, 12, 4)})};
  const auto settled = settle(lines);
  CHECK(settled[1].reading == 0);
  CHECK(settled[1].agrees());
  CHECK(settled[1].open == 12);
}

TEST_CASE("a glued number is an increase where only that uses up the round") {
  std::vector<Ways> lines{
      line(1, {stating(ring(6), 6)}),
      line(2, {stating(reading(12, 12), 12), stating(reading(6, 12, 4), 12)}),
  };
  CHECK(settle(lines)[1].reading == 1);
}

TEST_CASE("stitches used decide before stitches made") {
  std::vector<Ways> lines{
      line(1, {stating(ring(6), 6)}),
      line(2, {stating(reading(6, 12), 18), stating(reading(9, 18), 18)}),
  };
  const auto settled = settle(lines);
  CHECK(settled[1].reading == 0);
  CHECK_FALSE(settled[1].meets);
}

TEST_CASE("a count never makes a reading up, and a slip of the author stays one") {
  std::vector<Ways> lines{line(1, {stating(ring(6), 6)}), line(2, {stating(passes(1, 2), 13)}),
                          line(3, {stating(passes(1, 1), 12)})};
  const auto settled = settle(lines);
  CHECK_FALSE(settled[1].meets);
  CHECK(settled[2].agrees());
}

TEST_CASE("where the count is right and the work is not, the round after goes on with the count") {
  std::vector<Ways> lines{line(1, {stating(ring(6), 6)}), line(2, {stating(reading(6, 11), 12)}),
                          line(3, {stating(reading(12, 18), 18)})};
  const auto settled = settle(lines);
  CHECK_FALSE(settled[1].meets);
  CHECK(settled[2].opened == 12);
  CHECK(settled[2].agrees());
}

TEST_CASE("a round without a count is settled by the round after it") {
  std::vector<Ways> lines{line(1, {ring(6)}), line(2, {passes(1, 1), passes(1, 2, 3)}),
                          line(3, {stating(reading(12, 18), 18)})};
  CHECK(settle(lines)[1].reading == 1);
}

TEST_CASE("a repeat that divides is taken before one that does not") {
  std::vector<Ways> lines{line(1, {stating(ring(6), 6)}), line(2, {passes(4, 5), passes(3, 4, 2)})};
  CHECK(settle(lines)[1].reading == 1);
}

TEST_CASE("two readings that agree are counted and the likelier is taken") {
  std::vector<Ways> lines{line(1, {stating(ring(6), 6)}),
                          line(2, {stating(reading(6, 12), 12), passes(1, 2, 1)})};
  const auto settled = settle(lines);
  CHECK(settled[1].reading == 0);
  CHECK(settled[1].agreeing == 2);
  CHECK(settled[1].other == std::pair<std::size_t, std::size_t>{0, 1});
}

TEST_CASE("a line that is not read goes on with its stated count") {
  Way unread;
  unread.label = numbered(2, 2);
  unread.stated = 12;
  std::vector<Ways> lines{line(1, {ring(6)}), {unread}, line(3, {reading(12, 18)})};
  const auto settled = settle(lines);
  CHECK(settled[1].reading == not_read);
  CHECK(settled[2].opened == 12);
  CHECK(settled[2].agrees());
}

TEST_CASE("a line that reads only with something left out is not read where its counts do not agree either") {
  Reading poor = stating(reading(7, 13, 25), 18);
  poor.passed_over = {{0, 1}};
  Ways ways = line(2, {poor});
  ways.front().stated = 18;
  std::vector<Ways> lines{line(1, {ring(12)}), ways, line(3, {reading(18, 18)})};
  CHECK(settle(lines)[1].reading == not_read);
  std::vector<Ways> agreeing{line(1, {ring(7)}), line(2, {poor}), line(3, {reading(13, 18)})};
  agreeing[1].front().readings.front().stated.clear();
  CHECK(settle(agreeing)[1].reading == 0);
}

TEST_CASE("a range does to the edge what its round does, as often as it says") {
  Way range;
  range.label = numbered(2, 4);
  range.readings = {stating(passes(1, 2), 48)};
  std::vector<Ways> lines{line(1, {ring(6)}), {range}};
  const auto settled = settle(lines);
  CHECK(settled[1].open == 48);
  CHECK(settled[1].meets);
}

TEST_CASE("the number of the line after settles whether a label is a range") {
  Way alone, range;
  alone.label = numbered(3, 3);
  range.label = numbered(3, 9);
  range.label.cost = 2;
  alone.readings = {reading(6, 6)};
  range.readings = {passes(1, 1)};
  std::vector<Ways> to_ten{line(2, {ring(6)}), {alone, range}, line(10, {passes(1, 1)})};
  std::vector<Ways> to_four{line(2, {ring(6)}), {alone, range}, line(4, {passes(1, 1)})};
  CHECK(settle(to_ten)[1].way == 1);
  CHECK(settle(to_four)[1].way == 0);
}

TEST_CASE("a number that does not follow on is no reason to read a line otherwise") {
  std::vector<Ways> lines{line(1, {ring(6)}), line(4, {stating(reading(6, 12), 12), reading(3, 6)})};
  const auto settled = settle(lines);
  CHECK(settled[1].reading == 0);
  CHECK_FALSE(settled[1].in_step);
}

TEST_CASE("a count of one kind says nothing about a round that has others") {
  Reading mixed = reading(6, 12);
  Node work;
  work.kind = NodeKind::work;
  mixed.nodes = {work, work};
  mixed.nodes[1].work.kind = 1;
  mixed.first_new_kind = 2;
  mixed.stated.push_back({6, Unit::kind, 0, {}});
  std::vector<stitch::StitchKind> kinds(2);
  kinds[0].name = "bobble";
  kinds[1].name = "sc";
  std::vector<Ways> lines{line(1, {ring(6)}), line(2, {mixed})};
  const auto settled = choose(lines, 0, 0, kinds, [](Way&) {});
  CHECK_FALSE(settled[1].states);
  CHECK(settled[1].meets);
}

TEST_CASE("other readings are made only where a count disagrees") {
  std::vector<Ways> lines{line(1, {stating(ring(6), 6)}), line(2, {stating(reading(12, 12), 12)}),
                          line(3, {stating(passes(1, 1), 12)})};
  for (Ways& ways : lines) ways.front().effort = Effort::cheapest;
  std::vector<int> asked;
  const auto settled = choose(lines, 0, 0, {}, [&](Way& way) {
    asked.push_back(way.label.from);
    if (way.label.from == 2) way.readings.push_back(stating(reading(6, 12, 4), 12));
  });
  CHECK(asked == std::vector<int>{2});
  CHECK(settled[1].reading == 1);
}

TEST_CASE("a line that no count confirmed is read again when the round after it disagrees") {
  std::vector<Ways> lines{line(1, {stating(ring(6), 6)}), line(2, {passes(1, 1)}),
                          line(3, {stating(reading(12, 18), 18)})};
  for (Ways& ways : lines) ways.front().effort = Effort::cheapest;
  const auto settled = choose(lines, 0, 0, {}, [&](Way& way) {
    if (way.label.from == 2) way.readings.push_back(passes(1, 2, 3));
  });
  CHECK(settled[1].reading == 1);
  CHECK(settled[2].agrees());
}

TEST_CASE("what a part starts on is compared with its first round where it is known") {
  std::vector<Ways> lines{line(1, {reading(8, 8), reading(6, 6, 2)})};
  CHECK(choose(lines, 6, 0, {}, [](Way&) {})[0].reading == 1);
  CHECK(choose(lines, unknown, 0, {}, [](Way&) {})[0].reading == 0);
}

TEST_CASE("settled lines vote for a habit and lines that no count settles follow it") {
  std::vector<Ways> lines{
      line(1, {stating(ring(6), 6)}),
      line(2, {stating(reading(12, 12, 0, glued_number_repeats), 12),
               stating(reading(6, 12, 4, glued_number_increases), 12)}),
      line(3, {reading(12, 12, 0, glued_number_repeats), reading(12, 24, 1, glued_number_increases)}),
  };
  auto settled = settle(lines);
  CHECK(settled[2].reading == 0);
  Votes votes{};
  count_votes(lines, settled, votes);
  CHECK(winners(votes) == glued_number_increases);
  REQUIRE(lean_unsettled(lines, settled, winners(votes), [](Way&) {}));
  settled = settle(lines);
  CHECK(lines[2][0].readings[settled[2].reading].effect.makes == 24);
}

TEST_CASE("habits with as many votes on either side move nothing") {
  Votes votes{};
  votes[0] = votes[1] = 3;
  CHECK(winners(votes) == 0);
}

TEST_CASE("a part of thousands of rounds is settled round by round") {
  std::vector<Ways> lines{line(1, {ring(6)})};
  for (int number = 2; number <= 3000; ++number) lines.push_back(line(number, {stating(passes(1, 1), 6)}));
  const auto settled = settle(lines);
  CHECK(settled.back().agrees());
  CHECK(settled.back().open == 6);
}

TEST_CASE("an increase all round in a range without end does not run away") {
  Way range;
  range.label = numbered(2, 90'000);
  range.readings = {passes(1, 2)};
  std::vector<Ways> lines{line(1, {ring(6)}), {range}};
  CHECK(settle(lines)[1].open > 0);
}
