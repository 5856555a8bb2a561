#pragma once

#include <string>

namespace whorl::paint {

/// The PDF with what Cairo cannot say: the language, that its title is shown, an id made from its own bytes,
/// and no version of Cairo. Empty if `pdf` cannot be read.
std::string with_language(const std::string& pdf, const std::string& language);

} // namespace whorl::paint
