#pragma once

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

/// Points of a symbol seen from the middle of the disc: angles from its ray, in order of work, and how far
/// out.
struct Seen {
  std::vector<double> angle, far;
};

/// What all symbols of a ring look like from the middle.
struct Looks {
  std::vector<Seen> feet, tips;
};

Looks looks_of(const RingLaid& laid, const Turn& turn);

/// The heads of a ring as they stand, counted along a contour of this radius.
std::vector<Head> heads_of(const fabric::Fabric& fabric, const RingLaid& laid, const std::vector<double>& at,
                           const Looks& looks, double radius);

/// The feet of its items along such a contour.
std::vector<Foot> feet_of(const fabric::Fabric& fabric, const RingLaid& laid, const Looks& looks,
                          double radius);

} // namespace whorl::layout
