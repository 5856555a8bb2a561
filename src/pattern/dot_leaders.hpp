#pragma once

#include <string>

namespace whorl::pattern {

/// Columns that dots lead to, "T1 ........ 6 sc ........ 6", become columns with a bar between them: where two
/// lines or more are typed so. Every byte keeps its place.
void rule_dot_leaders(std::string& text);

} // namespace whorl::pattern
