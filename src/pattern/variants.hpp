#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// The variants of one piece that a text names and tells apart: `Sizes: small (medium, large)`, `Variants:
/// summer / winter`, "Acorns S/M/L"; none if it names fewer than two, or never tells them apart.
std::vector<std::string> variants_in(std::string_view text);

/// The text as one of its variants has it. Of "6 (8, 10)" and "6/8/10" its own number stays; what is said of
/// others ("Large: …", "(winter only)") becomes blanks, dots that lead from column to column a bar. Every byte keeps its place.
std::string in_variant(std::string_view text, const std::vector<std::string>& names, std::size_t chosen);

} // namespace whorl::pattern
