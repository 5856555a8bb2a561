#pragma once

#include "writing/tongue.hpp"

namespace whorl::writing {

/// "sc = single crochet, inc = 2 sc in one stitch": the abbreviations that a pattern uses, as the language
/// has them, in the order of the text; "": there are none. Stitches of the pattern's own are told apart.
/// `usual`: the tongue without the pattern's own abbreviations, which are explained in it.
std::string abbreviations_of(const pattern::Tree& tree, const Tongue& tongue, const Tongue& usual);

} // namespace whorl::writing
