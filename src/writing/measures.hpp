#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace whorl::writing {

/// How a language writes measures.
struct Measuring {
  bool comma = false;                        ///< 2,5 mm
  bool inches = false;                       ///< inches, and hooks by their US names
  std::string mm = "mm", cm = "cm", g = "g"; ///< units
};

/// The measures of a text as another language has them: centimetres for inches, inches behind centimetres,
/// and the mark of a fraction.
std::string measured(std::string_view text, const Measuring& from, const Measuring& to);

/// The size of a hook in the same way: "E-4", "3.5 mm (US E-4)"; none where it is no size alone, or one of
/// several.
std::optional<std::string> hook_size(std::string_view text, const Measuring& from, const Measuring& to);

/// Whether a text is a number, with or without a unit.
bool is_measure(std::string_view text);

} // namespace whorl::writing
