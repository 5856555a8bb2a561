#pragma once

#include "layout/contour.hpp"
#include "layout/items.hpp"

#include <optional>
#include <vector>

namespace whorl::layout {

/// What an item of a bunch does where its heads must stand further out: its stem is longer, it stands apart
/// from other chains on end, it stays by its place, or it rises with the heads.
enum class Rising : std::uint8_t { stem, on_end, none, whole };

/// What stands together on a ring of lace and moves as one.
struct Bunch {
  /// stitch: on its base, alone or as a group that fans out of one place; column: chains on end; bow: chains
  /// between heads; hung: what else is level with the heads beside it (a join, a picot).
  enum class Sort : std::uint8_t { stitch, column, bow, hung };
  Sort sort = Sort::stitch;
  std::uint32_t first = 0;       ///< of the ring's items
  std::vector<Item> standing;    ///< its items as they stand on (0, 0), outward being up
  double before = 0, behind = 0; ///< ink to either side of its middle, in the order of work
  double low_head = 0;           ///< heads beside which other chains hang, above its feet
  double slot = 0;               ///< of a ring, air included
  double share = 0;              ///< of it without the dot that joins the round
  std::optional<fabric::Place> base;
  bool group = false;        ///< several stitches
  std::vector<Rising> rising;///< of its items
  double most_rise = 0;      ///< so much longer its stems may be
  double stretch = 1;        ///< of a bow
  bool corner = false;       ///< a group with chains in it
  bool crowd = false;        ///< three and more stitches in one place without any
};

/// How many slip stitches lead from the end of a round to where the next begins, before its other items.
std::uint32_t leading_slips(const fabric::Fabric& fabric, const std::vector<Item>& items);

/// How the items of a ring are gathered.
struct Gathered {
  bool chain_counts = false; ///< the chains that the round starts with are a stitch
  Way way = Way::anticlockwise;
  double round = 0; ///< of crowds in spaces, as a `Spread`
};

/// Gathers the items of a ring behind those, in the order of work.
std::vector<Bunch> bunches_of(const fabric::Fabric& fabric, const Extents& extents,
                              const std::vector<Item>& items, const Gathered& how);

inline constexpr double column_pitch = 0.72; ///< of chains on end

/// Chains that bow outward: from how many on; and how far a bow may be pressed together or pulled.
inline constexpr std::uint32_t least_bow = 4;
inline constexpr double least_stretch = 0.55, greatest_stretch = 0.95;
inline constexpr double greatest_spread = 1.25; ///< of fewer chains

/// The items of a bunch as they stand where its heads are so much further from its feet.
std::vector<Item> raised(const Bunch& bunch, double rise);

/// Bends or, of fewer than `least`, spreads the chains of a bow until it is `stretch` as wide as they are
/// long.
void bend(const Extents& extents, double stretch, Way way, Bunch& bow, std::uint32_t least = least_bow);
bool is_bow(const Bunch& bunch);
bool is_short(const Bunch& bow); ///< of few chains, which lie straight

} // namespace whorl::layout
