#pragma once

#include "drawing/copy.hpp"

#include <string>
#include <vector>

namespace whorl::drawing {

/// Techniques of the text that hold for something on the sheet: numbers in Tree::techniques.
std::vector<std::size_t> techniques_on(const Copy& copy);

/// "yarn under in Body": a technique in words.
std::string technique_words(const Copy& copy, std::size_t technique);

/// "single crochet; yarn under": what a stitch's words become where a technique is told of stitches like it.
std::string with_techniques(const Copy& copy, stitch::KindId kind, int in_one, std::string words);

/// "worked inside out: the wrong side is outside" of a figure's part, where the text says so; else "".
std::string inside_out_words(const Copy& copy, std::size_t figure);

/// Techniques that hold for all stitches of a part: what the picture of its start says besides.
std::vector<std::string> part_techniques(const Copy& copy, std::uint32_t part);

} // namespace whorl::drawing
