#pragma once

namespace whorl::layout {

inline constexpr double pi = 3.14159265358979323846;

/// Sine and cosine of an angle, in radians: the same bits on every machine, right to 1e-14 for |angle| up to
/// 1000.
double sine(double angle);
double cosine(double angle);

/// Both at once, the same bits.
struct SineCosine {
  double sine = 0, cosine = 1;
};
SineCosine sine_cosine(double angle);

/// The angle in [-pi/2, pi/2] whose sine is x; x outside [-1, 1] counts as the nearer end.
double arc_sine(double x);

} // namespace whorl::layout
