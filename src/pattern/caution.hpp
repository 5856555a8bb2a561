#pragma once

#include "pattern/source.hpp"
#include "pattern/tree.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// A thing in the text that small children can swallow or be caught in. No finding: the pattern is not wrong.
struct Caution {
  std::string what;  ///< what sort of thing, in the pattern's language: "safety eyes"
  std::string thing; ///< the same for all languages: "thing eyes"
  Span span;         ///< where the text names it
  bool operator==(const Caution&) const = default;
};

/// Every place, in the order of the text, where a pattern names such a thing: its materials, notes and
/// placings; not its title. Eyes that a line places are such things unless it says that they are sewn in
/// yarn.
std::vector<Caution> cautions(const Source& source, const Tree& tree);

/// What a language calls a sort of thing; nothing if it has no word for it.
std::optional<std::string> thing_in(std::string_view language, std::string_view thing);

} // namespace whorl::pattern
