#pragma once

#include "drawing/scene.hpp"

#include <vector>

namespace whorl::drawing {

/// Pictures of steps side by side on one sheet like those of a film, smaller, in rows of three or, of narrower
/// ones, four. Its title is the first's up to the colon.
Scene strip_of(const std::vector<Scene>& pictures);

} // namespace whorl::drawing
