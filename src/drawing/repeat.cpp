#include "drawing/repeat.hpp"

#include "layout/direction.hpp"

#include <algorithm>
#include <cstdlib>
#include <vector>

namespace whorl::drawing {
namespace {

using layout::Figure;
using layout::Ring;

constexpr std::uint32_t most = 10; ///< items
constexpr std::uint32_t few = 4;

/// Where in the text the author wrote an item's stitch.
std::uint32_t written_at(const Copy& copy, const layout::Item& item) {
  const pattern::NodeId origin = copy.fabric.stitches[item.first].origin;
  return origin < copy.tree.nodes.size() ? copy.tree.nodes[origin].span.begin : 0;
}

/// The passes of repeats: one begins wherever the text is gone back in.
std::vector<Repeat> passes_of(const Copy& copy, const layout::Item* items, std::uint32_t count) {
  std::vector<Repeat> passes;
  for (std::uint32_t i = 0; i < count; ++i) {
    const bool begins = i == 0 || written_at(copy, items[i]) < written_at(copy, items[i - 1]);
    if (begins) passes.push_back({i, 0});
    ++passes.back().count;
  }
  return passes;
}

bool are_same(const layout::Item* one, const layout::Item* other, std::uint32_t count) {
  return std::equal(one, one + count, other,
                    [](const layout::Item& a, const layout::Item& b) { return a.key == b.key; });
}

/// Whether another pass is like one; the first has what comes before the repeat in it, the last what comes
/// after.
bool is_like(const layout::Item* items, const Repeat& one, const Repeat& other) {
  return other.count >= one.count &&
         (are_same(items + one.first, items + other.first, one.count) ||
          are_same(items + one.first, items + other.first + other.count - one.count, one.count));
}

/// How far the middle of some items is from the middle of the ring, doubled.
std::uint32_t off_middle(const Repeat& one, std::uint32_t count) {
  return static_cast<std::uint32_t>(
      std::abs(static_cast<int>(2 * one.first + one.count) - static_cast<int>(count)));
}

/// The pass that most others are like, of those the middle one; none: nothing is repeated.
Repeat usual_pass(const layout::Item* items, const std::vector<Repeat>& passes, std::uint32_t count) {
  Repeat best;
  std::size_t best_alike = 1;
  for (const Repeat& pass : passes) {
    std::size_t alike = 0;
    for (const Repeat& other : passes) {
      const bool at_end = &other == &passes.front() || &other == &passes.back();
      const bool same = other.count == pass.count || at_end;
      alike += same && is_like(items, pass, other) ? 1 : 0;
    }
    const bool nearer = off_middle(pass, count) < off_middle(best, count);
    if (alike > best_alike || (alike == best_alike && alike > 1 && nearer)) best = pass, best_alike = alike;
  }
  return best;
}

std::size_t kinds_in(const layout::Item* items, const Repeat& window) {
  std::size_t kinds = 0;
  for (std::uint32_t i = window.first; i < window.first + window.count; ++i)
    kinds += std::none_of(items + window.first, items + i,
                          [&](const layout::Item& before) { return before.key == items[i].key; })
                 ? 1
                 : 0;
  return kinds;
}

/// So many items beside one another, as different and as near to the middle as can be.
Repeat various(const layout::Item* items, std::uint32_t count, std::uint32_t wanted) {
  Repeat best{0, std::min(wanted, count)};
  for (Repeat window = best; window.first + window.count <= count; ++window.first) {
    const std::size_t kinds = kinds_in(items, window), most_kinds = kinds_in(items, best);
    if (kinds > most_kinds || (kinds == most_kinds && off_middle(window, count) < off_middle(best, count)))
      best = window;
  }
  return best;
}

bool is_uniform(const layout::Item* items, const Repeat& pass) {
  return std::all_of(items + pass.first, items + pass.first + pass.count,
                     [&](const layout::Item& item) { return item.key == items[pass.first].key; });
}

/// A ring's items without the chains that it begins with and the stitch that joins it.
Repeat without_ends(const Copy& copy, const Figure& figure, const Ring& ring) {
  if (ring.chain) return {0, ring.items};
  constexpr std::uint8_t ends = fabric::joins | fabric::starts_chain;
  const auto is_end = [&](std::uint32_t i) {
    return (copy.fabric.stitches[figure.items[ring.first_item + i].first].flags & ends) != 0;
  };
  Repeat inner{0, ring.items};
  while (inner.count > 1 && is_end(inner.first)) ++inner.first, --inner.count;
  while (inner.count > 1 && is_end(inner.first + inner.count - 1)) --inner.count;
  return inner;
}

/// The stitches that go into one place together, in the middle, if that is what the author repeats.
Repeat in_one_place(const Copy& copy, const layout::Item* items, std::uint32_t count) {
  const auto go_together = [&](std::uint32_t i) {
    const auto one = fabric::own_legs_of(copy.fabric, items[i].first),
               next = fabric::own_legs_of(copy.fabric, items[i + 1].first);
    return one.size() == 1 && next.size() == 1 && one.begin()->into == next.begin()->into &&
           one.begin()->into.what != fabric::On::ring;
  };
  Repeat run{count / 2, 1};
  while (run.first > 0 && go_together(run.first - 1)) --run.first, ++run.count;
  while (run.first + run.count < count && go_together(run.first + run.count - 1)) ++run.count;
  const auto is_run = [&](std::uint32_t first) {
    if (first + run.count > count || !are_same(items + first, items + run.first, run.count)) return false;
    for (std::uint32_t i = first; i + 1 < first + run.count; ++i)
      if (!go_together(i)) return false;
    return true;
  };
  const bool again =
      (run.first >= run.count && is_run(run.first - run.count)) || is_run(run.first + run.count);
  run.repeated = run.count > 1 && again;
  return run.repeated ? run : Repeat{};
}

Repeat repeat_in(const Copy& copy, const layout::Item* items, std::uint32_t count) {
  if (count == 0) return {};
  const std::vector<Repeat> passes = passes_of(copy, items, count);
  Repeat pass = usual_pass(items, passes, count);
  if (pass.count == 0 || (pass.count < 3 && is_uniform(items, pass))) {
    const Repeat run = in_one_place(copy, items, count);
    return run.repeated ? run : various(items, count, is_uniform(items, {0, count}) ? 3 : few);
  }
  pass.count = std::min(pass.count, most);
  pass.repeated = true;
  return pass;
}

} // namespace

Repeat repeat_shown(const Copy& copy, const Figure& figure, const Ring& ring) {
  const Repeat inner = without_ends(copy, figure, ring);
  const layout::Item* items = figure.items.data() + ring.first_item + inner.first;
  Repeat shown = repeat_in(copy, items, inner.count);
  shown.first += inner.first;
  return shown;
}

Repeat with_neighbours(const Figure& figure, const Ring& ring, Repeat some) {
  constexpr double near = 2.2; // W, of heads
  const layout::Item* items = figure.items.data() + ring.first_item;
  const auto head = [&](std::uint32_t i) { return items[i].foot + items[i].height * items[i].up; };
  const auto is_near = [&](std::uint32_t one, std::uint32_t other) {
    return layout::length(head(one) - head(other)) < near;
  };
  for (int i = 0; i < 2 && some.first > 0 && is_near(some.first - 1, some.first); ++i)
    --some.first, ++some.count;
  const std::uint32_t end = some.first + some.count;
  if (end < ring.items && is_near(end - 1, end)) ++some.count;
  return some;
}

} // namespace whorl::drawing
