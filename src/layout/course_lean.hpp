#pragma once

#include "layout/line.hpp"

namespace whorl::layout {

/// Sets how far aside of their heads the feet of a laid line's stems stand: what goes into one place together
/// fans out of it.
void lean_to_places(const fabric::Fabric& fabric, const Extents& extents, const Footing& footing,
                    Course& course);

} // namespace whorl::layout
