#pragma once
/// Which marks of a scene touch or come too near, measured by GEOS.

#include "pictures/ink.hpp"

#include <string>
#include <vector>

namespace whorl::pictures {

/// What is asked of the ink, in mm.
struct Asked {
  double air = 0.001;   ///< marks keep at least so much apart
  double meeting = 1.2; ///< stitches that share a place may meet so near their feet
};

/// Two marks that are too near.
struct Contact {
  std::string one, other;
  double air = 0; ///< mm between their ink; 0 or less: they touch
  Point at;       ///< where
};

/// All pairs that are nearer than asked, in the order of the scene. Stitches with a leg in one place may meet
/// at their feet and nowhere else; `fabric` says which those are.
std::vector<Contact> touching(const drawing::Scene& scene, const fabric::Fabric* fabric,
                              const Asked& asked = {});

/// The same, but for the picture of loops, whose strands lie over one another as yarn does.
std::vector<Contact> touching_besides_loops(const drawing::Scene& scene);

/// The least air between any two marks, and which; no more than `within` is looked for.
Contact nearest(const drawing::Scene& scene, const fabric::Fabric* fabric, double within);

/// The contacts a line each, for messages of failed tests.
std::string show(const std::vector<Contact>& contacts);

} // namespace whorl::pictures
