#pragma once
/// Whole patterns by chance, in every form that a figure may have and with stitches of every kind, for
/// looking at their ink. The same seed gives the same text on every machine.

#include <cstdint>
#include <string>
#include <vector>

namespace whorl::pictures {

/// A generator of numbers that is the same everywhere.
class Dice {
public:
  explicit Dice(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15ULL + 0x632BE59BD9B4E019ULL) {}
  /// 0 … sides - 1.
  int below(int sides);
  int between(int low, int high) { return low + below(high - low + 1); }
  bool one_in(int sides) { return below(sides) == 0; }
  template <class T, std::size_t n> const T& any(const T (&of)[n]) {
    return of[static_cast<std::size_t>(below(static_cast<int>(n)))];
  }

private:
  std::uint64_t state_;
};

/// What a pattern by chance is made of.
enum class Shape { ball, tube, oval, rows, frill, legs, folded, joined, lace, eared, sewn, flaps, fans };
constexpr Shape all_shapes[] = {Shape::ball,  Shape::tube,  Shape::oval,   Shape::rows,
                                Shape::frill, Shape::legs,  Shape::folded, Shape::joined,
                                Shape::lace,  Shape::eared, Shape::sewn,   Shape::flaps,
                                Shape::fans};
const char* name(Shape shape);

/// Its text.
std::string pattern_by_chance(Shape shape, std::uint64_t seed);

} // namespace whorl::pictures
