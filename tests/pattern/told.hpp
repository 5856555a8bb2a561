#pragma once
/// What tests of this room ask of a text, in words.

#include "pattern/read.hpp"
#include "pattern/reading.hpp"

#include <string>

inline whorl::pattern::Read read_text(std::string_view text) {
  return whorl::pattern::read(whorl::pattern::Source(text), *whorl::words::find_vocabulary("en-US"));
}

/// What each line of instruction leaves open, worked out from its effect alone: "6 12 18".
inline std::string counts(std::string_view text) {
  std::string told;
  std::int64_t open = 0;
  for (const whorl::pattern::RoundText& round : read_text(text).tree.rounds) {
    for (int number = round.from; number <= round.to; ++number)
      open = whorl::pattern::outcome(round.effect, open).makes;
    told += (told.empty() ? "" : " ") + std::to_string(open);
  }
  return told;
}
