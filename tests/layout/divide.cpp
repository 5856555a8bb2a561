#include "layout/divide.hpp"

#include "balls.hpp"
#include "layout/section.hpp"
#include "layout/width.hpp"

#include <catch2/catch.hpp>

using namespace whorl;
using namespace whorl::layout;

namespace {

struct Row {
  std::vector<std::uint32_t> counts;
  Ends ends;
  std::vector<Stretch> stretches;
};

constexpr Ends open_end{true, false}, closed_end{true, true}, from_loops{false, false},
    loops_closed{false, true};

/// Common practice, no source: the rules of sheet.md section 2.
const std::vector<Row>& table() {
  static const std::vector<Row> rows = {
      {{}, open_end, {}},
      {{6}, open_end, {{0, 0, false}}},
      {{6}, closed_end, {{0, 0, false}}},
      {{6, 12, 18}, open_end, {{0, 2, false}}},
      {{6, 12, 18, 18, 18}, open_end, {{0, 4, false}}},
      // a closing turns inward
      {{6, 12, 12, 6}, closed_end, {{0, 2, false}, {3, 3, true}}},
      {{6, 12, 18, 18, 12, 6}, closed_end, {{0, 3, false}, {4, 5, true}}},
      // so does even one decrease before it
      {{6, 12, 18, 17}, closed_end, {{0, 2, false}, {3, 3, true}}},
      // a quarter lost is not yet inward, more is
      {{6, 12, 18, 24, 18}, open_end, {{0, 4, false}}},
      {{6, 12, 18, 24, 17}, open_end, {{0, 3, false}, {4, 4, true}}},
      {{6, 12, 18, 24, 30, 36, 36, 36, 30}, open_end, {{0, 8, false}}},
      // even rounds inside a shrinking stretch belong to it
      {{6, 12, 24, 20, 20, 16, 16}, open_end, {{0, 2, false}, {3, 6, true}}},
      {{6, 12, 24, 22, 22, 20, 20}, open_end, {{0, 6, false}}},
      // a neck: growth follows
      {{6, 12, 18, 12, 18}, open_end, {{0, 2, false}, {3, 3, true}, {4, 4, false}}},
      {{6, 12, 18, 17, 18}, open_end, {{0, 2, false}, {3, 3, true}, {4, 4, false}}},
      {{6, 12, 18, 12, 12, 12, 18, 18}, open_end, {{0, 2, false}, {3, 5, true}, {6, 7, false}}},
      {{6, 12, 18, 12, 18, 12, 6}, closed_end, {{0, 2, false}, {3, 3, true}, {4, 4, false}, {5, 6, true}}},
      // shrinking at once
      {{36, 30, 24}, from_loops, {{0, 2, true}}},
      {{36, 36, 30, 24}, from_loops, {{0, 1, false}, {2, 3, true}}},
      {{12, 6}, closed_end, {{0, 0, false}, {1, 1, true}}},
      {{36, 35}, from_loops, {{0, 1, false}}},
      {{18, 12, 6}, loops_closed, {{0, 2, true}}},
      // a lone stitch that comes and goes
      {{1, 1, 2, 1}, closed_end, {{0, 2, false}, {3, 3, true}}},
  };
  return rows;
}

} // namespace

TEST_CASE("rounds are divided into discs outward and inward") {
  for (const Row& row : table()) {
    INFO("row " << &row - table().data());
    CHECK(divide(row.counts, row.ends) == row.stretches);
  }
}

TEST_CASE("the gnome is four figures") {
  const fabric::Fabric gnome = test::gnome();
  const std::vector<std::uint32_t> rounds = sections_of(gnome, 0).front().rounds;
  const std::vector<Stretch> stretches = divide(gnome, 0, rounds, widths_of(gnome, rounds));
  CHECK(stretches == std::vector<Stretch>{{0, 10, false}, {11, 13, true}, {14, 21, false}, {22, 25, true}});
}
