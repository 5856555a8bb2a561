#include "layout/turn.hpp"

#include <array>
#include <cmath>
#include <cstdint>
#include <initializer_list>

namespace whorl::layout {
namespace {

/// An angle within a quarter turn's half of a multiple of pi/2.
struct Reduced {
  double rest = 0;
  unsigned quarter = 0;
};

Reduced reduce(double angle) {
  // pi/2 in two pieces, the first short enough that its multiples are exact
  constexpr double coarse = 1.57079632673412561417e+00, fine = 6.07710050650619224932e-11;
  const double turns = angle / (pi / 2);
  const auto whole = static_cast<std::int64_t>(turns < 0 ? turns - 0.5 : turns + 0.5);
  const auto n = static_cast<double>(whole);
  return {(angle - n * coarse) - n * fine, static_cast<unsigned>(whole & 3)};
}

/// The first nine terms of the sine's series: the next is below 1e-19 for |x| <= pi/4.
double sine_near_zero(double x) {
  const double q = x * x;
  double sum = 1.0 / 355687428096000.0;
  for (const double c : {-1.0 / 1307674368000.0, 1.0 / 6227020800.0, -1.0 / 39916800.0, 1.0 / 362880.0,
                         -1.0 / 5040.0, 1.0 / 120.0, -1.0 / 6.0})
    sum = sum * q + c;
  return x + x * q * sum;
}

double cosine_near_zero(double x) {
  const double q = x * x;
  double sum = 1.0 / 20922789888000.0;
  for (const double c : {-1.0 / 87178291200.0, 1.0 / 479001600.0, -1.0 / 3628800.0, 1.0 / 40320.0,
                         -1.0 / 720.0, 1.0 / 24.0, -0.5})
    sum = sum * q + c;
  return 1.0 + q * sum;
}

/// A sine and a cosine turned on by quarters.
SineCosine turned(SineCosine near_zero, unsigned quarter) {
  const auto [sine, cosine] = near_zero;
  switch (quarter) {
  case 0:
    return {sine, cosine};
  case 1:
    return {cosine, -sine};
  case 2:
    return {-sine, -cosine};
  default:
    return {-cosine, sine};
  }
}

constexpr std::size_t arc_sine_terms = 24; ///< behind x: the next is below 1e-17 for |x| <= 1/2 …
constexpr std::size_t few_terms = 8;       ///< … and that behind so many for |x| <= 1/8

/// What each power of x squared is multiplied by in the arc sine's series, after x itself.
constexpr std::array<double, arc_sine_terms> arc_sine_series() {
  std::array<double, arc_sine_terms> series{};
  double part = 1;
  for (std::size_t k = 0; k < arc_sine_terms; ++k) {
    const double odd = 2.0 * static_cast<double>(k) + 1.0;
    part *= odd / (odd + 1.0);
    series[k] = part / (odd + 2.0);
  }
  return series;
}

/// For x from 0 to 1/2.
double arc_sine_near_zero(double x) {
  static constexpr std::array<double, arc_sine_terms> series = arc_sine_series();
  const double q = x * x, q_squared = q * q;
  double even = 0, odd = 0; // side by side, since neither waits for the other
  for (std::size_t k = x <= 0.125 ? few_terms : arc_sine_terms; k > 0; k -= 2) {
    odd = odd * q_squared + series[k - 1];
    even = even * q_squared + series[k - 2];
  }
  return x + x * q * (even + q * odd);
}

} // namespace

SineCosine sine_cosine(double angle) {
  const Reduced reduced = reduce(angle);
  return turned({sine_near_zero(reduced.rest), cosine_near_zero(reduced.rest)}, reduced.quarter);
}

double sine(double angle) { return sine_cosine(angle).sine; }

double cosine(double angle) { return sine_cosine(angle).cosine; }

double arc_sine(double x) {
  if (x < 0) return -arc_sine(-x);
  if (x >= 1) return pi / 2;
  if (x <= 0.5) return arc_sine_near_zero(x);
  return pi / 2 - 2.0 * arc_sine_near_zero(std::sqrt((1.0 - x) / 2.0));
}

} // namespace whorl::layout
