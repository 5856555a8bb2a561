#pragma once

#include "words/vocabulary.hpp"

#include <string>

namespace whorl::pattern {

/// "sc B 4, A 12": a yarn between the stitch, which may be told once, and its number is put behind the
/// number, as others type it; every other byte keeps its place. Whether anything was moved.
bool put_yarns_behind(std::string& text, const words::Vocabulary& vocabulary);

} // namespace whorl::pattern
