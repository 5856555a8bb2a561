#pragma once

#include "drawing/scene.hpp"

#include <string>

/// The same sheet as anybody would paint it: every path a stroke or a fill of its own on a Cairo ARGB surface
/// of as many dots, written by Cairo as PNG. Letters are left out, in its favour.
std::string plain_page(const whorl::drawing::Scene& scene, double dots_per_inch);
