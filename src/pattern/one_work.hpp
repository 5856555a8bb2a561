#pragma once

#include "stitch/kind.hpp"
#include "words/vocabulary.hpp"

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// The one piece of work that an explanation is: "2 sc in one stitch", "3 sc together".
struct OneWork {
  stitch::StitchKind kind;
  std::uint16_t in_one = 1;
  std::uint8_t down = 0; ///< into the stitch so many rounds below
};

/// The whole explanation, or its first clause: "dc3tog over the next 3 sts: it eats three and gives one.";
/// none if it is more, or one plain stitch.
std::optional<OneWork> one_work_of(std::string_view value, const words::Vocabulary& vocabulary,
                                   const std::vector<stitch::StitchKind>& kinds);

} // namespace whorl::pattern
