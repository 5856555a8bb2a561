#pragma once

#include "pattern/sentence.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace whorl::pattern {

/// "6x 2 sc + 1 inc", "6 times 2 sc, inc": how often stands before a list without a mark between. The text
/// with a colon in place of the blank, as others type it, every byte keeping its place; none where it begins
/// otherwise. `text` is what the sentence was made of.
std::optional<std::string> mark_times_ahead(const Sentence& sentence, std::string_view text);

/// "… sc2tog. - 6x (18)": the text with a blank in place of the dash between a full stop and how often; none
/// where there is no such dash.
std::optional<std::string> without_dash_before_times(const Sentence& sentence, std::string_view text);

} // namespace whorl::pattern
