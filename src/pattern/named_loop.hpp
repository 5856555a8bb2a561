#pragma once

#include "words/vocabulary.hpp"

#include <cstdint>
#include <string_view>

namespace whorl::pattern {

/// Which of a round's loops a sentence begins in: "join yarn in the 5th free front loop of Rnd 3", "in the
/// back loop of st 5"; 0: it does not say.
std::uint16_t loop_named(std::string_view sentence, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
