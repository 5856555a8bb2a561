#pragma once

#include <string>
#include <string_view>

namespace whorl::drawing {

/// Text for an element or a double-quoted attribute. Controls that XML forbids are dropped, line ends and
/// tabs become blanks, bytes that are no UTF-8 the sign for it.
void append_escaped(std::string& out, std::string_view text);

/// A word as one name of a `class`: what would end the name becomes a hyphen.
void append_class(std::string& out, std::string_view word);

/// A word as part of an id that may be pointed at: what is no ASCII letter, digit or underscore becomes a
/// hyphen.
std::string id_word(std::string_view word);

} // namespace whorl::drawing
