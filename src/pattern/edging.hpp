#pragma once

#include "pattern/label.hpp"
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

} // namespace whorl::pattern
