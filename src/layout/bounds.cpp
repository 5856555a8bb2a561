#include "layout/bounds.hpp"

#include <algorithm>

namespace whorl::layout {

void Bounds::rise(std::size_t item, double low) { low_[item] = std::max(low_[item], low); }
void Bounds::sink(std::size_t item, double high) { high_[item] = std::min(high_[item], high); }

void Bounds::rise_with_before(std::size_t item, Weights weights, double low) {
  pairs_[item].weights = weights;
  pairs_[item].low = std::max(pairs_[item].low, low);
}

void Bounds::sink_with_before(std::size_t item, Weights weights, double high) {
  pairs_[item].weights = weights;
  pairs_[item].high = std::min(pairs_[item].high, high);
}

/// No item is asked to stand nearer to either end than the least gaps let it.
void Bounds::yield_to_ends(const Strung& strung) {
  const std::size_t items = low_.size();
  std::vector<double> first(items), last(items);
  double at = 0;
  for (std::size_t i = 0; i < items; ++i) first[i] = at += strung.least[i];
  at = strung.length;
  for (std::size_t i = items; i-- > 0;) last[i] = at -= strung.least[i + 1];
  for (std::size_t i = 0; i < items; ++i) {
    low_[i] = std::min(low_[i], last[i]);
    high_[i] = std::max(high_[i], first[i]);
    if (i == 0) continue;
    Pair& pair = pairs_[i];
    const auto [before, own] = pair.weights;
    pair.low = std::min(pair.low, before * last[i - 1] + own * last[i]);
    pair.high = std::max(pair.high, before * first[i - 1] + own * first[i]);
  }
}

/// Where an item can stand so that all before it can.
void Bounds::bind(std::size_t i, const Strung& strung) {
  if (low_[i] > high_[i]) low_[i] = high_[i] = (low_[i] + high_[i]) / 2;
  if (i == 0) {
    if (!strung.free_ends) rise(0, strung.least[0]);
  } else {
    const Pair& pair = pairs_[i];
    const auto [before, own] = pair.weights;
    rise(i, low_[i - 1] + strung.least[i]);
    rise(i, (pair.low - before * high_[i - 1]) / own);
    rise(i, (pair.low + before * strung.least[i]) / (before + own));
    sink(i, (pair.high - before * low_[i - 1]) / own);
  }
}

bool Bounds::fit(const Strung& strung, Ends ends) {
  if (ends == Ends::yield) yield_to_ends(strung);
  const std::size_t items = low_.size();
  for (std::size_t i = 0; i < items; ++i) {
    bind(i, strung);
    if (i + 1 == items && !strung.free_ends) sink(i, strung.length - strung.least[items]);
    if (low_[i] > high_[i]) return false;
  }
  return true;
}

bool Bounds::fit_most(const Strung& strung) {
  const std::size_t items = low_.size();
  if (!strung.free_ends) yield_to_ends(strung);
  for (std::size_t i = 0; i < items; ++i) {
    bind(i, strung);
    high_[i] = std::max(high_[i], low_[i]);
  }
  return strung.free_ends || items == 0 || low_.back() <= strung.length - strung.least[items];
}

void Bounds::stand(const Strung& strung, std::vector<double>& at) const {
  for (std::size_t i = at.size(); i-- > 0;) {
    double low = low_[i], high = high_[i];
    if (i + 1 < at.size()) {
      const Pair& pair = pairs_[i + 1];
      const auto [before, own] = pair.weights;
      high = std::min({high, at[i + 1] - strung.least[i + 1], (pair.high - own * at[i + 1]) / before});
      low = std::max(low, (pair.low - own * at[i + 1]) / before);
    }
    at[i] = std::max(low, std::min(high, at[i]));
  }
}

} // namespace whorl::layout
