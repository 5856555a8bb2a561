#pragma once

#include "pattern/source.hpp"
#include "pattern/tree.hpp"
#include "words/vocabulary.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace whorl::pattern {

/// The yarns that the materials list, in their order: "Yarn: light worsted, walnut and moss", "Yarn A:
/// charcoal", "Yarn: black (A), white (B)", "Yarn A green, yarn B brown".
std::vector<ListedYarn> yarns_listed(const Source& source, const words::Vocabulary& vocabulary);

/// A word of such a list that no dictionary knows as one for colours.
struct OwnColour {
  std::string word;
  bool shade = false; ///< it tells a colour only with another word behind it
};

/// What such a list calls its yarns, where the text works in them: "moss" of "In moss, from the top down",
/// "oak" of "with oak brown".
std::vector<OwnColour> own_colours(const Source& source, const words::Vocabulary& vocabulary);

/// Whether a line lists yarns by their letters, without a colon: "Yarn A green, yarn B brown".
bool lists_yarns(std::string_view line, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
