#include "reading_lines.hpp"

namespace {
const TypedLine lines[] = {
    {"sc around (12) (counts as dc)", 12, 12, 12},
};
} // namespace

const TypedLines count_lines{lines, static_cast<int>(sizeof lines / sizeof lines[0])};
