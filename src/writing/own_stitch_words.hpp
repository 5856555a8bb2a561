#pragma once

#include "writing/tongue.hpp"

#include <optional>
#include <string>

namespace whorl::writing {

/// How a stitch of the pattern's own is made, as the language's patterns explain it: several closed together in one
/// place, a stitch with chains, chains closed into a ring; none for any other.
std::optional<std::string> own_stitch_in_words(const stitch::StitchKind& kind, const pattern::Tree& tree,
                                               const Tongue& tongue);

} // namespace whorl::writing
