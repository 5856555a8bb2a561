#include "layout/heads.hpp"

#include "layout/items.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {

double turned_near(double place, double at) { return place + std::floor(at - place + 0.5); }

void Heads::put(fabric::StitchId stitch, Spotted head) {
  if (stitch >= first_ && stitch - first_ < tops_.size()) tops_[stitch - first_] = head;
}

std::optional<Spotted> Heads::of(const fabric::Place& place) const {
  if (place.what == fabric::On::space) return space(place.of);
  if (is_gap(place)) return between(top(before_gap(fabric_, place)), top(place.of));
  return is_stitch(place) ? top(place.of) : std::nullopt;
}

std::optional<Spotted> Heads::top(fabric::StitchId stitch) const {
  return stitch >= first_ && stitch - first_ < tops_.size() ? tops_[stitch - first_] : std::nullopt;
}

std::optional<Spotted> Heads::between(std::optional<Spotted> before, std::optional<Spotted> behind) {
  if (!before || !behind) return before ? before : behind;
  return Spotted{std::max(before->r, behind->r), (before->at + turned_near(behind->at, before->at)) / 2};
}

/// The middle of its chains.
std::optional<Spotted> Heads::space(std::uint32_t arch) const {
  if (arch >= fabric_.arches.size()) return std::nullopt;
  const fabric::Arch& chains = fabric_.arches[arch];
  Spotted middle;
  std::uint32_t known = 0;
  for (std::uint32_t i = 0; i < chains.count; ++i) {
    const std::optional<Spotted> one = top(chains.first_chain + i);
    if (!one) continue;
    middle.at = (middle.at * known + (known == 0 ? one->at : turned_near(one->at, middle.at))) / (known + 1);
    middle.r = std::max(middle.r, one->r);
    ++known;
  }
  return known > 0 ? std::optional(middle) : std::nullopt;
}

} // namespace whorl::layout
