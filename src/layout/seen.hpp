#pragma once

#include "layout/few.hpp"
#include "layout/lay.hpp"
#include "layout/own_place.hpp"

namespace whorl::layout {

/// A ring as it is laid.
struct RingLaid {
  const Ring& ring;
  const std::vector<Item>& items;
  const Band& band;
  const Size& size;
};

/// Points of a symbol seen from the middle of the disc, in order of work: how far from its ray, as an angle,
/// and how far out.
struct SeenPoint {
  double angle = 0, far = 0;
};
using Seen = Few<SeenPoint>;

/// The feet, or the tips, of all symbols of a ring.
std::vector<Seen> feet_seen(const RingLaid& laid, const Turn& turn);
std::vector<Seen> tips_seen(const RingLaid& laid, const Turn& turn);

/// The heads of a ring as they stand, counted along a contour of this radius.
std::vector<Head> heads_of(const fabric::Fabric& fabric, const RingLaid& laid, const std::vector<double>& at,
                           const std::vector<Seen>& tips, double radius);

/// The feet of its items along such a contour.
std::vector<Foot> feet_of(const fabric::Fabric& fabric, const RingLaid& laid, const std::vector<Seen>& seen,
                          double radius);

} // namespace whorl::layout
