#pragma once

#include "pattern/part_lines.hpp"

#include <optional>

namespace whorl::pattern {

/// The earlier part along whose last round a part is worked that begins nothing of its own, as its heading, a
/// sentence above its first round or that round says: "Join yarn in the last round of the hand."
std::optional<std::size_t> part_worked_on(const Reader& reader, const std::vector<PartLines>& parts,
                                          std::size_t number);

/// Whether the same place says that it runs against that part's rounds.
bool runs_against(const Reader& reader, const PartLines& part);

} // namespace whorl::pattern
