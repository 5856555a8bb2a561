#pragma once

#include "pattern/sentence.hpp"
#include "pattern/tree.hpp"

#include <optional>
#include <vector>

namespace whorl::pattern {

/// What a clause places or does, if a word at its head says so; fillers, numbers and a few words may stand
/// before.
std::optional<What> clause_places(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

/// Everything that [begin, end) of a sentence places, clause by clause; what places nothing is a note.
std::vector<Placing> placings_in(const Sentence& sentence, std::uint32_t begin, std::uint32_t end);

/// A note that covers `span`.
Placing make_note(Span span);

} // namespace whorl::pattern
