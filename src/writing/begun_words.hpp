#pragma once

#include "writing/tongue.hpp"

namespace whorl::writing {

/// Sentences for a part that is worked on another: how that one is held, and where the yarn is joined. None
/// where nothing of the sort is said, or the language has no words for it.

/// "join yarn in free front loop 5 of Rnd 3 of the BODY", without its full stop.
std::optional<std::string> joined_in_loop(const pattern::Tree& tree, const pattern::Work& opened,
                                          std::uint32_t round, const std::string& number,
                                          const Tongue& tongue);

/// "Join yarn in stitch 7 of the last round of the BODY."
std::optional<std::string> joined_at_edge(const pattern::Tree& tree, std::uint32_t part,
                                          const Tongue& tongue);

/// "Hold the BODY with its start up."
std::optional<std::string> held_in_words(const pattern::Tree& tree, std::uint32_t part, const Tongue& tongue);

/// Whether a node is nothing but what such a sentence says above the line.
bool is_said_above(const pattern::Work& work);

} // namespace whorl::writing
