#pragma once

#include "pattern/meaning.hpp"

#include <optional>

namespace whorl::pattern {

/// Settles how likely chains stand for a stitch, in the cost and the habits of the piece; false if the piece
/// cannot be meant. A piece without chains is left alone.
bool settle_chains(const Sentence& sentence, const Match& match, const Kinds& kinds, Piece& piece);

/// The same piece with the chains skipped at the hook taken for a stitch, where stitches begin in a chain: "from
/// the 4th ch on: 14 dc"; none if they cannot be meant so.
std::optional<Piece> with_skipped_counted(const Sentence& sentence, const Match& match, const Kinds& kinds,
                                          Piece piece);

} // namespace whorl::pattern
