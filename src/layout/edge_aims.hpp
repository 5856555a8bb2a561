#pragma once

#include "layout/hole.hpp"
#include "layout/outline.hpp"
#include "layout/own_place.hpp"
#include "layout/straight.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace whorl::layout {

/// Where a stand of a round along an edge wants to stand: the place of what it is worked into, and how much.
struct Aim {
  std::optional<double> at;
  double pull = 0;
};

/// What the rounds along the edge of a flat piece are worked into: the rows, then the round before.
class EdgeAims {
public:
  EdgeAims(const fabric::Fabric& fabric, const Footing& footing, const Extents& extents,
           const Straight& rows);

  const Surround& outline() const { return outline_; }
  bool first() const { return first_; }

  /// Looks at what the first round is worked into, and so which way it goes; false: something is not in the
  /// rows, or too far in from the outline, unless that may be anywhere.
  bool look_at_first(const Course& course, std::uint32_t round, bool anywhere);

  /// What the stands of a round whose middle is so far out aim at, each behind the one before.
  std::vector<Aim> aims_of(const Course& course, std::uint32_t round, double middle) const;

  /// What shares a place stands about it; at a corner, about that.
  void fan_out(const Course& course, double slot, double middle, std::vector<Aim>& aims) const;

  /// The rounds that a round's feet go into, their heads as they stand, on the contour of its middle.
  std::vector<Tops> tops_under(const Course& course, double middle, double start) const;

  /// Notes where the stitches of a laid round are, which begins at `start`: the next is worked into them.
  void keep(const Course& course, std::uint32_t round, double middle, double start);

private:
  const Course* course_of(std::uint32_t round, bool chain) const;
  std::optional<Spot> end_of_row(const fabric::Place& place) const;
  std::optional<Spot> of_stitch(fabric::StitchId stitch) const;
  std::pair<fabric::StitchId, fabric::StitchId> sides_of(const fabric::Place& place) const;
  std::optional<Spot> spot_of(const fabric::Place& place) const;
  std::optional<double> place_of(const fabric::Place& place, double middle) const;
  bool is_own(const fabric::Place& place, std::uint32_t round) const;
  bool aim_in_rows(const Item& item, std::uint32_t round, std::optional<Spot>& aim) const;
  void set_way();
  NearSurround met(double r, const Spot& spot) const;
  std::optional<double> aim_before(const Item& item, std::uint32_t round, double middle) const;
  bool same_place(const Course& course, std::size_t a, std::size_t b) const;
  std::size_t last_in_place(const Course& course, std::size_t first) const;
  std::uint32_t stitches_at(const Course& course, std::size_t stand) const;
  bool is_corner_group(const Course& course, std::size_t first, std::size_t last) const;
  bool stands_at_corner(std::size_t stand, double middle, Aim& aim) const;

  std::vector<Head> heads_in_rows(std::uint32_t round, double middle) const;

  const fabric::Fabric& fabric_;
  const Footing& footing_;
  const Straight& drawn_;
  std::size_t rows_; ///< lines of the piece itself
  Surround outline_;
  bool first_ = true;
  std::vector<std::optional<Spot>> spots_; ///< what the first round is worked into, a stand each
  fabric::StitchId first_before_ = 0;
  std::vector<std::optional<double>> before_; ///< where the stitches of the round inside are
  double middle_before_ = 0;
  std::vector<Head> heads_before_; ///< those of the round inside
};

} // namespace whorl::layout
