#pragma once

#include <cmath>
#include <cstdint>
#include <string>

namespace whorl::drawing {

/// Writes `units` tenths-of-a-power as a decimal: 12500 with 3 places is "12.5". Never "-0".
inline void append_decimal(std::string& out, std::int64_t units, int places) {
  if (units < 0) out += '-';
  std::uint64_t rest = units < 0 ? 0 - static_cast<std::uint64_t>(units) : static_cast<std::uint64_t>(units);
  for (; places > 0 && rest % 10 == 0; --places) rest /= 10;
  char digits[24]; // filled from behind
  char* first = digits + sizeof digits;
  for (int written = 0; rest > 0 || written <= places; ++written) {
    if (written == places && places > 0) *--first = '.';
    *--first = static_cast<char>('0' + rest % 10);
    rest /= 10;
  }
  out.append(first, digits + sizeof digits);
}

/// Whole thousandths, halves away from zero; 0 for what is no number or lies far off any sheet.
inline std::int64_t thousandths(double value) {
  const double scaled = value * 1000;
  return std::abs(scaled) < 1e15 ? std::llround(scaled) : 0;
}

/// A number as drawings write it: rounded once to thousandths, as few digits as needed.
inline void append_number(std::string& out, double value) { append_decimal(out, thousandths(value), 3); }

} // namespace whorl::drawing
