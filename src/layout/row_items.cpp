#include "layout/row_items.hpp"

#include "layout/items.hpp"

#include <algorithm>
#include <optional>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

Item one_of(const Item& item, std::uint32_t which) {
  Item one = item;
  one.first += which;
  one.count = one.key.in_one = 1;
  return one;
}

/// The items of a row whose stitches may stand each for itself.
class Parting {
public:
  Parting(const Fabric& fabric, const Extents& extents, const std::vector<Item>& items)
      : fabric_(fabric), extents_(extents), items_(items) {}

  std::vector<Item> parted() const {
    std::vector<Item> all;
    for (std::size_t i = 0; i < items_.size(); ++i)
      if (is_fan(i) && (has_chains_within(i) || is_half(i)))
        for (std::uint32_t j = 0; j < items_[i].count; ++j) all.push_back(one_of(items_[i], j));
      else
        all.push_back(items_[i]);
    return all;
  }

private:
  bool is_fan(std::size_t i) const {
    const Item& item = items_[i];
    return item.count > 1 && item.key.loops == stitch::both && legs_of(fabric_, item).size() == item.count &&
           extent(extents_, one_of(item, 0).key).stretches;
  }

  bool is_chain(std::size_t i) const { return legs_of(fabric_, items_[i]).size() == 0; }

  /// Chains to one side of it, and behind these what goes into its place.
  bool has_chains_within(std::size_t i) const {
    std::size_t before = i, behind = i + 1;
    while (before > 0 && is_chain(before - 1)) --before;
    while (behind < items_.size() && is_chain(behind)) ++behind;
    return (before > 0 && before < i && shares_place(fabric_, items_[before - 1], items_[i])) ||
           (behind < items_.size() && behind > i + 1 && shares_place(fabric_, items_[i], items_[behind]));
  }

  bool is_half(std::size_t i) const {
    std::size_t first = 0, last = items_.size() - 1;
    while (first < last && is_chain(first)) ++first;
    while (first < last && is_chain(last)) --last;
    if (first == last) return false;
    return (i == first && skips(i, i + 1)) || (i == last && skips(i - 1, i));
  }

  /// Whether places are left out between two items, with no chain there.
  bool skips(std::size_t one, std::size_t next) const {
    if (is_chain(one) || is_chain(next)) return false;
    const fabric::Place from = (legs_of(fabric_, items_[one]).end() - 1)->into,
                        to = legs_of(fabric_, items_[next]).begin()->into;
    if (!is_stitch(from) || !is_stitch(to)) return false;
    const StitchId low = std::min(from.of, to.of), high = std::max(from.of, to.of);
    return high - low > 1 && fabric_.stitches[low].round == fabric_.stitches[high].round;
  }

  const Fabric& fabric_;
  const Extents& extents_;
  const std::vector<Item>& items_;
};

} // namespace

void part_fans(const Fabric& fabric, const Extents& extents, std::vector<Item>& items) {
  const bool none = std::none_of(items.begin(), items.end(), [](const Item& item) { return item.count > 1; });
  if (!none) items = Parting(fabric, extents, items).parted();
}

std::vector<Item> each_alone(const std::vector<Item>& items) {
  std::vector<Item> all;
  for (const Item& item : items)
    for (std::uint32_t j = 0; j < item.count; ++j) all.push_back(one_of(item, j));
  return all;
}

} // namespace whorl::layout
