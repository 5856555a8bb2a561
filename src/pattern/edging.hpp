#pragma once

#include "pattern/label.hpp"
#include "pattern/reading.hpp"
#include "words/vocabulary.hpp"

#include <optional>
#include <string_view>

namespace whorl::pattern {

/// "Edging: …", "Border - …": a round that has a name instead of a number; none if the line begins otherwise.
std::optional<Label> edging_label(std::string_view text, std::uint32_t begin,
                                  const words::Vocabulary& vocabulary);

/// "2 inc x 6 (12)" with this number for the round's own, whose full stop was forgotten; none if the line
/// does not begin with it and a blank.
std::optional<Label> unmarked_label(std::string_view text, std::uint32_t begin, int number,
                                    const words::Vocabulary& vocabulary);

/// Whether a reading goes along the edges of a flat piece: the ends of its rows, its top, all of them.
bool goes_along_edges(const Reading& reading);

/// Whether a node does something else to the edge than work, skip, join or turn.
bool opens(const Node& node);

/// Of a round behind rows: what goes around the piece goes along all its edges rather than over its last row;
/// each reading that only goes around gets one beside it that does so.
void prefer_edges(std::vector<Reading>& readings);

} // namespace whorl::pattern
