#pragma once

#include "writing/measures.hpp"
#include "writing/phrasebook.hpp"

#include <string>
#include <string_view>

namespace whorl::writing {

/// A text in another language as far as it is known.
struct HeaderWords {
  std::string text;
  bool whole = true; ///< false: something stays as typed
};

/// What stands behind a header's name, item by item: yarns, materials, sizes. `hook`: it is a hook's size.
HeaderWords header_in_words(std::string_view value, bool hook, const Phrasebook& book, const Tongue& tongue,
                            const Measuring& from, const Measuring& to);

} // namespace whorl::writing
