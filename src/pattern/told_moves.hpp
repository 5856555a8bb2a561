#pragma once

#include <string>
#include <string_view>

namespace whorl::pattern {

/// The moves that words tell: "yo, insert hook, pull up a loop, yo, pull through 2 loops" is `o i d p2`.
struct ToldMoves {
  std::string moves; ///< as stitch::parse_moves reads them; "" if the words tell no insertion
  int left = 1;      ///< loops on the hook after them: one if the stitch is whole, 0 if they need more than
                     ///< there are
  int legs = 0;      ///< insertions
  int places = 1;    ///< different places that they go into, as far as the words say
};

/// `language`: of the words, "en-US".
ToldMoves told_moves(std::string_view text, std::string_view language = "en-US");

} // namespace whorl::pattern
