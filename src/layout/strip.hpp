#pragma once

#include "layout/straight.hpp"

namespace whorl::layout {

/// Draws a strip: a line a ring, from the bottom up, each begun on the side where the hand begins, all as
/// wide as the widest.
Straight draw_strip(const fabric::Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page);

} // namespace whorl::layout
