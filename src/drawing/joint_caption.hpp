#pragma once

#include "drawing/copy.hpp"
#include "layout/place.hpp"

#include <string>
#include <vector>

namespace whorl::drawing {

/// What a figure's caption says of parts that are worked together with it: where another part is taken up,
/// and where it is itself.
std::vector<std::string> joints_said(const Copy& copy, const layout::Figure& figure);

} // namespace whorl::drawing
