#include "reading_lines.hpp"

namespace {
const TypedLine lines[] = {
    // every nth
    {"every 4th and 5th st together =28", 35, 28, 28},
    {"decrease every 5th and 6th - 20", 24, 20, 20},
    {"every 4th st inc =35", 28, 35, 35},
    {"every 3rd and 4th together =21", 28, 21, 21},
    {"increase in every third stitch (24)", 18, 24, 24},
    {"Single crochet every 4th and 5th stitch together (24)", 30, 24, 24},
    {"1 sc, 1 inc. Do so 3 times in all (9)", 6, 9, 9},
    {"sc in the next 3 stitches, decrease; do this twice (8)", 10, 8, 8},
};
} // namespace

const TypedLines repeat_lines{lines, static_cast<int>(sizeof lines / sizeof lines[0])};
