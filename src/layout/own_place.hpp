#pragma once

#include "fabric/fabric.hpp"
#include "layout/cells.hpp"
#include "layout/contour.hpp"
#include "layout/place.hpp"

#include <optional>
#include <vector>

namespace whorl::layout {

/// A head, or the chain of a space: its place along a line, or round a ring; how far out it is; and which of
/// the items of its line it belongs to.
struct Head {
  double at = 0, far = 1;
  fabric::StitchId stitch = 0;
  std::size_t item = 0;
};

/// The heads of a round that can be worked into, in order.
class Tops {
public:
  /// `around`: the length after which a ring begins again; 0: a line.
  Tops(const fabric::Fabric& fabric, std::vector<Head> heads, double around);

  /// Between which a foot is nearer to a place than to any other, and the heads on either side of both ends.
  struct Cell {
    double low = -1e300, high = 1e300;
    const Head *before = nullptr, *first = nullptr, *last = nullptr, *behind = nullptr;
  };
  std::optional<Cell> cell_of(const fabric::Place& place) const;
  double around() const { return around_; }

private:
  struct Span {
    std::uint32_t first = fabric::none, last = 0;
  };
  Span span_of(const fabric::Place& place) const;
  void widen(fabric::StitchId stitch, Span& span) const;
  bool is_own(const fabric::Place& place, const Head& head) const;
  bool can_be_met(const Head& head) const;
  std::uint32_t arch_of(fabric::StitchId stitch) const;

  const fabric::Fabric* fabric_;
  std::vector<Head> heads_;
  double around_;
  fabric::StitchId first_ = 0;
  std::vector<std::uint32_t> where_; ///< in order; counted from the first stitch
};

/// How far points of a symbol are from its ray on the way round, in order of work.
std::vector<double> on_the_way(const std::vector<Point>& points, Way way);

/// Feet that one place is asked of: one or two stand for themselves; more fan out, and their middle counts.
struct Foot {
  fabric::Place into;
  std::vector<std::size_t> items; ///< that it is the middle of
  double from_item = 0;           ///< how far it is from the middle of these
};

/// Those of a line's items; `from_ray`: of each item its feet as work meets them, from the ray it stands on.
std::vector<Foot> feet_of(const fabric::Fabric& fabric, const std::vector<Item>& items,
                          const std::vector<const std::vector<double>*>& from_ray);

/// Where the middle of the items stands that a foot belongs to.
double middle_of(const Foot& foot, const std::vector<double>& at);

/// The whole turns, as a length, by which what stands at a place is counted further on than its cell.
double turns_to(const Tops::Cell& cell, const Tops& heads, double stands);

/// How far into a cell something is brought.
double into_cell(const Tops::Cell& cell);

/// How far each of some items must move at the least, and may at the most.
class Leeways {
public:
  explicit Leeways(std::size_t items) : ways_(items) {}
  void rise(std::size_t item, double by);
  void sink(std::size_t item, double by);
  std::vector<Move> moves() const;

private:
  struct Way {
    double low = -1e300, high = 1e300;
  };
  std::vector<Way> ways_;
};

/// The furthest that one of the items is from where its feet should be.
double strain_on(const std::vector<Foot>& feet, const std::vector<Tops>& rounds,
                 const std::vector<double>& at);

/// The moves that would bring feet into the cells of their own places.
std::vector<Move> moves_of_feet(const std::vector<Foot>& feet, const Tops& heads,
                                const std::vector<double>& at);

} // namespace whorl::layout
