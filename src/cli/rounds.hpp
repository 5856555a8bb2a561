#pragma once

#include <string>
#include <string_view>

namespace whorl::cli {

/// "7", "5-12", "5-" or "-12": the first and the last round, 0 where none is named; false: it is none of
/// them.
bool read_rounds(std::string_view text, int& first, int& last);

/// What to say of rounds that are not clear.
std::string unclear_rounds(const std::string& text);

} // namespace whorl::cli
