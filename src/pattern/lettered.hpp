#pragma once

#include "pattern/label.hpp"

#include <optional>

namespace whorl::pattern {

/// "a) 6 sc in MR", "b. inc around": the label of a round whose number is a letter, `number` 1 being a; none
/// if that letter does not begin the line.
std::optional<Label> letter_label(std::string_view text, std::uint32_t begin, int number);

} // namespace whorl::pattern
