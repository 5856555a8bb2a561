#include "layout/cells.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

constexpr double hold = 400; ///< strength of a bound, of the strongest spring's

} // namespace

bool Progress::goes_on(const std::vector<Move>& moves) {
  constexpr double nearer = 0.97;
  constexpr int patience = 2;
  double all = 0;
  for (const Move& move : moves) all += move.by > 0 ? move.by : 0 - move.by;
  in_vain_ = all < nearer * least_ ? 0 : in_vain_ + 1;
  least_ = std::min(least_, all);
  return in_vain_ < patience;
}

Holding::Holding(Strung& strung, std::vector<double>& at, std::vector<char>& at_least)
    : free_(strung), strung_(strung), at_(at), at_least_(at_least), bounds_(at.size()) {
  hold_ = hold; // the springs between items are of strength 1
  for (const double pull : strung.pull) hold_ = std::max(hold_, hold * pull);
}

void Holding::move(const std::vector<Move>& moves) {
  let_go();
  for (const Move& move : moves) {
    Bound& bound = bounds_[move.item];
    const double to = at_[move.item] + move.by;
    if (move.by > 0) {
      bound.low_at = bound.low ? std::max(bound.low_at, to) : to;
      bound.low = true;
    } else {
      bound.high_at = bound.high ? std::min(bound.high_at, to) : to;
      bound.high = true;
    }
  }
  settle();
}

void Holding::let_go() {
  for (std::size_t i = 0; i < at_.size(); ++i) {
    if (bounds_[i].low && at_[i] > bounds_[i].low_at) bounds_[i].low = false;
    if (bounds_[i].high && at_[i] < bounds_[i].high_at) bounds_[i].high = false;
  }
}

void Holding::settle() {
  for (std::size_t i = 0; i < at_.size(); ++i) {
    const Bound& bound = bounds_[i];
    const double own = free_.pull[i];
    double pull = own, drawn = own * free_.target[i];
    if (bound.low) pull += hold_, drawn += hold_ * bound.low_at;
    if (bound.high) pull += hold_, drawn += hold_ * bound.high_at;
    strung_.pull[i] = pull;
    strung_.target[i] = pull > own ? drawn / pull : free_.target[i];
  }
  at_ = relax(strung_, at_least_);
}

} // namespace whorl::layout
