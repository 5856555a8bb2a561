#pragma once

#include "pattern/part_lines.hpp"

#include <optional>

namespace whorl::pattern {

/// The earlier part along whose last round a part is worked that begins nothing of its own, as its heading, a
/// sentence above its first round or that round says: "Join yarn in the last round of the hand."
std::optional<std::size_t> part_worked_on(const Reader& reader, const std::vector<PartLines>& parts,
                                          std::size_t number);

/// The earlier part along the other side of whose starting chain such a part is worked: "Join yarn in the other
/// side of the stem's chain." It may be another that has a chain, where none is named.
std::optional<std::size_t> part_with_chain(const Reader& reader, const std::vector<PartLines>& parts,
                                           std::size_t number);

/// In which of that round's stitches it begins; 0: that is not said.
std::uint16_t stitch_begun_in(const Reader& reader, const PartLines& part);

/// Whether the same place says that it runs against that part's rounds.
bool runs_against(const Reader& reader, const PartLines& part);

} // namespace whorl::pattern
