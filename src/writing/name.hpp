#pragma once

#include "writing/telling.hpp"

namespace whorl::writing {

/// "sc", in UK terms "dc"; "FPdc", "inc".
std::string short_name(const Used& used, const pattern::Tree& tree, const words::Vocabulary& terms,
                       const Say& say);

/// "single crochet", "double crochet 2 together", "front post double crochet".
std::string full_name(const Used& used, const pattern::Tree& tree, const Say& say);

/// Whether the wording has words of this id.
bool has_words(const Say& say, const std::string& id);

} // namespace whorl::writing
