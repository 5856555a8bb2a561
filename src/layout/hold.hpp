#pragma once

#include "layout/bounds.hpp"
#include "layout/own_place.hpp"

#include <functional>

namespace whorl::layout {

/// Bounds the items of a line so that their feet stand by their own places. `at`: where they are about.
void bound_feet(const std::vector<Foot>& feet, const Tops& heads, const Strung& strung,
                const std::vector<double>& at, Bounds& bounds);

/// Holds strung items where they stand.
void hold_there(Strung& strung, std::vector<double>& at);

/// Lets strung items settle with bounds where something asks them to move; whether nothing does in the end.
bool settle_by_places(const std::function<std::vector<Move>()>& asked, Strung& strung,
                      std::vector<double>& at, std::vector<char>& at_least);

/// Holds laid items so that these feet are in the cells of their own places, in whichever of some rounds
/// these are; false: they have no room there.
bool hold_feet(const std::vector<Foot>& feet, const std::vector<Tops>& rounds, Strung& strung,
               std::vector<double>& at);

/// The same where not all have room there: the others give way to them. How many items do.
std::size_t hold_most_feet(const std::vector<Foot>& feet, const std::vector<Tops>& rounds, Strung& strung,
                           std::vector<double>& at);

} // namespace whorl::layout
