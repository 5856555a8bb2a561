#pragma once

#include "pattern/label.hpp"
#include "pattern/label_numbers.hpp"

namespace whorl::pattern {

/// Marks that close a label with a word for round, and those that close a number alone.
inline constexpr std::string_view closing_marks = ":.)->=]";
inline constexpr std::string_view closing_marks_of_numbers = ":.)->/";
inline constexpr std::string_view closing_marks_of_wide_numbers = ":.)->/,";

/// The place in the folded line of a byte of the file.
std::size_t place_of(const Head& head, std::uint32_t byte);

/// "3.", "3)", "6-10:", "#4".
std::vector<Label> number_alone(const Head& head, std::size_t begin);

/// Labels that have a word for round or row, before or behind their numbers: "Rnd 3", "2nd Round", "Next 3
/// rounds"; none if the text from `begin` has none. Loose ones are among them.
std::vector<Label> labels_with_word(const Head& head, std::size_t begin);

} // namespace whorl::pattern
