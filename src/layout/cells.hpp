#pragma once

#include "layout/relax.hpp"

#include <cstddef>
#include <vector>

namespace whorl::layout {

/// How far items must move along their line: what stands there is not by its own place.
struct Move {
  std::size_t item = 0;
  double by = 0;
};

/// Whether moving on still leads somewhere: false when all together came no nearer for some time.
class Progress {
public:
  bool goes_on(const std::vector<Move>& moves);

private:
  double least_ = 1e300;
  int in_vain_ = 0;
};

/// Holds strung items by their own places: bounds are set where something is not by its own, and let go where
/// nothing presses against them.
class Holding {
public:
  /// `strung` comes to be what they are held by.
  Holding(Strung& strung, std::vector<double>& at, std::vector<char>& at_least);

  /// Lets all settle again, with bounds where these moves lead.
  void move(const std::vector<Move>& moves);

private:
  struct Bound {
    bool low = false, high = false; ///< it presses from below, from above
    double low_at = 0, high_at = 0;
  };
  void let_go();
  void settle();

  Strung free_; ///< without bounds
  Strung& strung_;
  double hold_ = 0; ///< strength of a bound
  std::vector<double>& at_;
  std::vector<char>& at_least_;
  std::vector<Bound> bounds_;
};

} // namespace whorl::layout
