#pragma once
/// The sheet's English as the tests hand it in.

#include "pattern/read.hpp"
#include "writing/telling.hpp"

#include <string>
#include <vector>

namespace wording {

using namespace whorl;

/// The words of symbols/words/sheet-en.xml, with what the terms of `language` say otherwise.
writing::Say english(const std::string& language = "en-US");

pattern::Tree tree_of(const std::string& text);

const words::Vocabulary& terms_of(const pattern::Tree& tree);

/// The stitches of a text, told; only those of a name where it is given.
std::vector<writing::ToldStitch> told(const std::string& text, const std::string& name = "");

/// The sentences of the only stitch of that name.
std::vector<std::string> sentences(const std::string& text, const std::string& name);

} // namespace wording
