#pragma once

#include "layout/line.hpp"

namespace whorl::layout {

/// Bows the chains of a laid row that have no room to lie straight (`Course::bows`) up from head to head.
void bow_chains(const Extents& extents, Course& course);

} // namespace whorl::layout
