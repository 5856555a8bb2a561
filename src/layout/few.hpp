#pragma once

#include <algorithm>
#include <cstddef>
#include <utility>
#include <vector>

namespace whorl::layout {

/// One thing or several: what nearly all symbols have one of stands in no list of its own.
template <class Thing> class Few {
public:
  explicit Few(const Thing& one) : one_(one) {}
  /// Of several; where there are none, one otherwise.
  Few(const std::vector<Thing>& all, const Thing& otherwise) : one_(all.empty() ? otherwise : all.front()) {
    if (all.size() > 1) several_ = all;
  }

  std::size_t size() const { return several_.empty() ? 1 : several_.size(); }
  Thing* begin() { return several_.empty() ? &one_ : several_.data(); }
  Thing* end() { return begin() + size(); }
  const Thing* begin() const { return several_.empty() ? &one_ : several_.data(); }
  const Thing* end() const { return begin() + size(); }
  const Thing& operator[](std::size_t i) const { return begin()[i]; }
  /// Where there are fewer, the last stands for the rest.
  const Thing& or_last(std::size_t i) const { return begin()[std::min(i, size() - 1)]; }

private:
  Thing one_;
  std::vector<Thing> several_;
};

} // namespace whorl::layout
