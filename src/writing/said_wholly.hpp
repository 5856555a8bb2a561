#pragma once

#include "words/vocabulary.hpp"
#include "writing/tongue.hpp"

namespace whorl::writing {

/// Whether a text says no more than what was understood of it: what is placed, its rounds and stitches, small
/// words, and what its own language (`from`) says of such a thing itself. `tongue` knows the names of parts
/// and yarns.
bool is_said_wholly(const pattern::Tree& tree, const pattern::Placing& placing, std::string_view text,
                    const Tongue& from, const Tongue& tongue);

} // namespace whorl::writing
