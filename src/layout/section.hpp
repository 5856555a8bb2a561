#pragma once

#include "fabric/fabric.hpp"
#include "layout/place.hpp"

#include <cstdint>
#include <vector>

namespace whorl::layout {

/// Rounds of a part that follow each other, or rows: what figures of one kind show. Indices into
/// Fabric::rounds, without those that have no stitch.
struct Section {
  std::vector<std::uint32_t> rounds;
  bool rows = false;
  std::vector<std::uint32_t> edging; ///< of rows: the rounds behind them that go along their edges
  std::uint32_t owner =
      fabric::none; ///< of an edging that is a part of its own: that whose rows it goes along
  /// The round or row that it goes on from; of rows begun in the loops of another part that part's round.
  /// None: it begins the part.
  std::uint32_t before = fabric::none;
};

/// The sections of a part as far as they can be drawn: to the first chain, or row that has nothing to stand
/// on.
std::vector<Section> sections_of(const fabric::Fabric& fabric, std::uint32_t part);

/// Whether the first stitches of a part go into its ring of chains; else they go into the chains one by one,
/// and it is wide.
bool goes_into_chain_ring(const fabric::Fabric& fabric, const fabric::Part& part);

/// Whether a round goes along the ends of rows.
bool goes_along_rows(const fabric::Fabric& fabric, std::uint32_t round);

/// Whether a round is worked with the wrong side facing: seen from the right side it runs the other way.
bool runs_against(const fabric::Round& round);

/// Whether rounds of a figure are worked to and fro.
bool is_turned(const Figure& figure);

/// The other parts along whose edges a round goes, in the order of the round; none where it joins no parts.
std::vector<std::uint32_t> joined_parts(const fabric::Fabric& fabric, std::uint32_t round);

} // namespace whorl::layout
