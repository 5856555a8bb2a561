#pragma once

#include "pattern/figures.hpp"
#include "pattern/stated.hpp"

namespace whorl::pattern {

/// "(12) To make a flat one, …": a capital letter and a small one begin a sentence of their own.
bool begins_sentence(const Search& search, std::uint32_t at);

/// "14 p. | Encher": the point of an abbreviation is the full stop too.
bool is_behind_point(const Search& search, std::uint32_t at);

bool ends_sentence(const Search& search, std::uint32_t at);

/// "24 sts in all, | slip stitch and cut": whether words that close the round, and nothing else, stand between
/// a place and the end of the line.
bool only_closes(const Search& search, std::uint32_t at);

/// A sentence of its own that only tells how many there are: "; men heeft nu 12 v.", ". Il t'en reste 6."
StatedCount told_in_words(const Search& search, std::uint32_t at);

/// Whether a count is one of stitches.
bool counts_stitches(const StatedCount& count);

/// "1目おきにふやして|18目とし", "her ilmekte artırma | 12 ilmek oldu": a number and the words behind it that
/// say what there is.
StatedCount said_behind(const Search& search, std::uint32_t at);

/// "2 oczka razem": two or three stitches worked together, where the word for it may mean "in all" too.
bool tells_together(const Search& search, const StatedCount& count);

} // namespace whorl::pattern
