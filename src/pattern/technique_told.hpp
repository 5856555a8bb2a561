#pragma once

#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

#include <vector>

namespace whorl::pattern {

/// The ways of working that a text tells anywhere: "All sc are worked yarn under", "Body: worked inside out",
/// "From round 5 on work tightly". `vocabulary` is the one that its rounds were read with.
std::vector<Technique> techniques_told(const Source& source, const Tree& tree,
                                       const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
