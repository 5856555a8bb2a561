#pragma once

#include "drawing/copy.hpp"

#include <cstdint>
#include <set>
#include <vector>

namespace whorl::drawing {

/// What occurs on a sheet, for its legend.
struct Usage {
  std::vector<layout::SymbolKey> stitches; ///< each kind and number in one place, loops left out
  std::vector<layout::SymbolKey> looped;   ///< a symbol for each set of loops that is marked
  std::set<layout::Centre> centres;
  std::set<layout::Line> lines;
  std::vector<std::uint32_t> miscounted;        ///< rounds whose label carries "(!)"
  const layout::Figure* label_figure = nullptr; ///< where a label stands that can serve as the example …
  const layout::Label* label = nullptr;         ///< … the label …
  const layout::Label* count_below = nullptr;   ///< … and the one below it that has its count, if one has
  const layout::Pointer* pointer = nullptr;
  /// One of each kind, and of those with letters or yarns one of each text.
  std::vector<layout::Placed> signs;
  std::set<std::uint8_t> grounds; ///< yarns that have one
  bool owner = false;             ///< a faint round in whose loops a part is worked
  bool echo = false;
  bool starting_chain = false; ///< of a flat piece, lying under its first row
  bool strip = false;
  bool rows = false;
  bool disc = false;
  bool two_inks = false;
  bool cut = false;
};

Usage usage_of(const Copy& copy);

/// The first of the stitches that is neither chain nor slip stitch, for samples: dots would be taken for
/// beads. There must be one stitch at least.
const layout::SymbolKey& plainest(const Usage& usage, const fabric::Fabric& fabric);

} // namespace whorl::drawing
