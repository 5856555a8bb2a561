#pragma once

#include "writing/instruction.hpp"

namespace whorl::writing {

/// The work of a line with its shortest repeats: what is worked several times in a row is said once. None
/// where the language has no form for something in it.
std::optional<std::string> shortest_instruction(const pattern::Tree& tree, const std::vector<Step>& steps,
                                                const Tongue& tongue);

} // namespace whorl::writing
