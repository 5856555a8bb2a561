#pragma once

#include "pattern/way.hpp"

#include <optional>
#include <string_view>

namespace whorl::pattern {

/// A line that names a part and says where its first round goes.
struct NamedPlace {
  Span name;  ///< "Skirt"
  Span place; ///< "worked in the front loops of Rnd 3"
};

/// "PETALS: working in the free front loops of round 3, join yarn.", "Skirt (in the front loops of Rnd 3)";
/// none if the line is no such one.
std::optional<NamedPlace> named_place(const Reader& reader, Span line);

/// The same of a line that says along which round a part is worked: "Cuff (along the last round of the
/// body)".
std::optional<NamedPlace> named_round(const Reader& reader, Span line);

/// Whether what stands before a colon only leads to a note: "Tip", "NB".
bool is_name_of_note(std::string_view name);

/// "Owl, body (magic ring)": a name and, in the brackets behind it, the ring or chain its part begins with.
std::optional<NamedPlace> named_start(const Reader& reader, Span line);

} // namespace whorl::pattern
