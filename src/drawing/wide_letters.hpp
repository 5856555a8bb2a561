#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace whorl::drawing {

/// A word of a script that sets no blanks between words, taken apart where a line may end: between its
/// letters, but not before a mark that closes or goes on (、 。 ） ー ょ) and not behind one that opens. Other
/// words stay whole. After the classes ID, CL, NS, OP of Unicode Standard Annex 14 (from memory).
std::vector<std::string> breakable_pieces(std::string_view word);

} // namespace whorl::drawing
