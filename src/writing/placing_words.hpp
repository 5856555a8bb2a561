#pragma once

#include "writing/tongue.hpp"

namespace whorl::writing {

/// What is placed or done, in a sentence of the language; none where it has no sentence for all that is said
/// of it.
std::optional<std::string> placing_in_words(const pattern::Tree& tree, const pattern::Placing& placing,
                                            const Tongue& tongue);

/// Whether nothing says that a thing is placed but its name, which may be that of a part: "NOSE TIP".
bool may_be_a_name(const pattern::Placing& placing);

} // namespace whorl::writing
