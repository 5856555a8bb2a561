#pragma once
/// What tests of this room ask of a text, in words.

#include "pattern/read.hpp"
#include "pattern/reading.hpp"

#include <string>

inline whorl::pattern::Read read_text(std::string_view text) {
  return whorl::pattern::read(whorl::pattern::Source(text), *whorl::words::find_vocabulary("en-US"));
}

/// What each line of instruction leaves open, worked out from its effect alone: "6 12 18".
/// `language`: the text is read in it alone.
inline std::string counts(std::string_view language, std::string_view text) {
  std::string told;
  std::int64_t open = 0;
  const whorl::words::Vocabulary& vocabulary = *whorl::words::find_vocabulary(language);
  for (const whorl::pattern::RoundText& round :
       whorl::pattern::read(whorl::pattern::Source(text), vocabulary).tree.rounds) {
    for (int number = round.from; number <= round.to; ++number)
      open = whorl::pattern::outcome(round.effect, open).makes;
    told += (told.empty() ? "" : " ") + std::to_string(open);
  }
  return told;
}

inline std::string counts(std::string_view text) { return counts("en-US", text); }
