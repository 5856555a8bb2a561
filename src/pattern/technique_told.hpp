#pragma once

#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// The ways of working that a text tells anywhere: "All sc are worked yarn under", "Body: worked inside out",
/// "From round 5 on work tightly". `vocabulary` is the one that its rounds were read with.
std::vector<Technique> techniques_told(const Source& source, const Tree& tree,
                                       const words::Vocabulary& vocabulary);

/// The way of working that a text of this language names first, or none.
std::optional<How> how_told(std::string_view text, std::string_view language);

} // namespace whorl::pattern
