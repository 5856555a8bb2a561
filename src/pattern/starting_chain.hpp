#pragma once

#include "pattern/meaning.hpp"

namespace whorl::pattern {

/// Settles how likely chains stand for a stitch, in the cost and the habits of the piece; false if the piece
/// cannot be meant. A piece without chains is left alone.
bool settle_chains(const Sentence& sentence, const Match& match, const Kinds& kinds, Piece& piece);

} // namespace whorl::pattern
