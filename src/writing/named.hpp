#pragma once

#include "writing/name.hpp"

namespace whorl::writing {

/// Which of `used` are meant by a name: as they are called in full or in short, as the pattern's terms or
/// else the US terms say it, by the kind's own name; capitals do not matter. A plain stitch goes before its
/// increases.
std::vector<Used> named(const std::vector<Used>& used, const pattern::Tree& tree, std::string_view name,
                        const words::Vocabulary& own_terms, const words::Vocabulary& us_terms,
                        const Say& say);

} // namespace whorl::writing
