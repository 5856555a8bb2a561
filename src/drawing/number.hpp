#pragma once

#include <cmath>
#include <cstdint>
#include <string>

namespace whorl::drawing {

/// Writes `units` tenths-of-a-power as a decimal: 12500 with 3 places is "12.5". Never "-0".
inline void append_decimal(std::string& out, std::int64_t units, int places) {
  if (units < 0) out += '-';
  std::uint64_t rest = units < 0 ? 0 - static_cast<std::uint64_t>(units) : static_cast<std::uint64_t>(units);
  std::uint64_t one = 1;
  for (int i = 0; i < places; ++i) one *= 10;
  out += std::to_string(rest / one);
  rest %= one;
  if (rest == 0) return;
  out += '.';
  for (one /= 10; rest > 0; one /= 10) {
    out += static_cast<char>('0' + rest / one);
    rest %= one;
  }
}

/// Whole thousandths, halves away from zero; 0 for what is no number or lies far off any sheet.
inline std::int64_t thousandths(double value) {
  const double scaled = value * 1000;
  return std::abs(scaled) < 1e15 ? std::llround(scaled) : 0;
}

/// A number as drawings write it: rounded once to thousandths, as few digits as needed.
inline void append_number(std::string& out, double value) { append_decimal(out, thousandths(value), 3); }

} // namespace whorl::drawing
