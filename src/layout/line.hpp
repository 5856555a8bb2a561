#pragma once

#include "layout/band.hpp"
#include "layout/crossing.hpp"
#include "layout/reach.hpp"
#include "layout/relax.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace whorl::layout {

/// Where the stitches of a part stand along its lines so far: what is worked into them wants to stand above.
class Footing {
public:
  /// `owner`: a round of an earlier part that it stands on.
  Footing(const fabric::Fabric& fabric, std::uint32_t part, std::uint32_t owner = fabric::none);

  void put(fabric::StitchId stitch, double x);
  std::optional<double> at(fabric::StitchId stitch) const;

private:
  fabric::StitchId first_ = 0;
  std::vector<double> x_;
  std::vector<char> known_;
};

/// What stands at one place of a line: a symbol, or the chains of a turning chain one above the other.
struct Stand {
  std::uint32_t item = 0, items = 1; ///< of the line's items
  double left = 0, right = 0;        ///< how far its ink reaches to either side
  double slot = 1;                   ///< room that it wants
  bool column = false;               ///< chains on end
  double foot = 0;                   ///< how far aside of its head a stem's foot stands
};

/// Chains of a line that bow up: its stands from one to another, counted from the left.
struct Bow {
  std::size_t first = 0, last = 0;
};

/// Where a chain of a bow stands from its place on the line, and its way up.
struct Bent {
  Point moved, up{0, 1};
};

/// A round or row on a straight line, its items in order of work.
struct Course {
  std::vector<Item> items;
  Band band;
  std::vector<Stand> stands;  ///< of all items, in order of work
  std::vector<Reach> reaches; ///< of the ink of each of the band's shapes
  std::vector<char> upright;  ///< which of those shapes stand upright on it
  bool leftward = true;
  bool backward = false;       ///< its stitches' own order is not that of its items: it runs against the work
  double inner = 0, outer = 0; ///< heights of feet and heads
  double low = 0, high = 0;    ///< between which all its ink lies
  Strung strung;               ///< from left to right
  std::vector<double> at;
  std::vector<Bow> bows;   ///< chains that have no room to lie straight
  std::vector<Bent> bent;  ///< where there are any, of all stands
};

/// Whether its stitches, in their own order, stand from right to left.
inline bool stitches_run_leftward(const Course& course) { return course.leftward != course.backward; }

/// The middle of what an item is worked into.
std::optional<double> base_of(const fabric::Fabric& fabric, const Item& item, const Footing& footing);

/// The same, and the stitch that it is, where it is one.
Seat seat_of(const fabric::Fabric& fabric, const Item& item, const Footing& footing);

/// How a symbol stands.
Stand stand_of(const Reach& ink, double slot, std::uint32_t item);

/// How strongly stitches are drawn to what they are worked into.
struct Pulls {
  double plain = 0.08, shaping = 0.32;
};

/// Room for a line: held fast between 0 and `length`, or as wide as it likes.
struct Room {
  double length = 0;
  bool free_ends = false;
  double slot = 1; ///< of a slot of width 1
  Pulls pulls;
};

/// The least length of a line in which everything has room.
double least_length(const Course& course);

/// Strings what stands on a line from left to right and lets them settle above what they are worked into.
void lay_course(const fabric::Fabric& fabric, const Footing& footing, const Room& room, Slate& slate,
                Course& course);

/// Where something stands; counted in order of work.
double stand_at(const Course& course, std::size_t stand);

/// Notes where the stitches of a laid line stand, those of the last round that it shows.
void keep_places(const fabric::Fabric& fabric, const Ring& ring, const Course& course, const Room& room,
                 Footing& footing);

} // namespace whorl::layout
