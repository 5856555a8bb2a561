#pragma once

#include "layout/break_line.hpp"
#include "layout/figure.hpp"
#include "layout/line.hpp"
#include "layout/outline.hpp"

#include <vector>

namespace whorl::layout {

/// Chains that stand on end one above the other.
Stand column_of(const SymbolExtent& chain, std::uint32_t chains);

/// A straight figure and what the tests look at: its lines with the problems they were laid by.
struct Straight {
  Figure figure;
  std::vector<Course> courses; ///< one a ring
  Surround outline;            ///< round the rows of a piece that has an edging
  bool held = true;            ///< all stitches have room by their own places
};

/// How many chains of a starting or turning chain stand before the other items of a line, or behind them.
std::uint32_t leading_chains(const fabric::Fabric& fabric, const std::vector<Item>& items);
std::uint32_t trailing_chains(const fabric::Fabric& fabric, const std::vector<Item>& items);

/// Gathers what stands on a line of these items, the first `chains` of them on end in one place; `counting`:
/// they count as a stitch.
void set_stands(const Extents& extents, std::uint32_t chains, bool counting, Course& course);

/// Sets the height of a line whose feet stand at `inner`, and between which heights its ink lies.
void set_height(double inner, Course& course);

/// Where the foot of a symbol stands between the feet and the heads of a line, and how far the chains of a
/// column are apart.
double foot_of(const Course& course, const SymbolExtent& shape);
double pitch_of(const Course& course, const Stand& column);

/// How much more than `inner` above the heads of `below` the feet of a line stand.
double gap_above(const Course& below, const Course& above);

/// The height of the break line above a folded line.
double break_height(const Course& course);

/// Adds that line, from `left` to `right`.
void add_break(const Course& course, double left, double right, Figure& figure);

/// Keeps the figure's lists from growing bit by bit.
void make_room(const std::vector<Course>& courses, Figure& figure);

/// Adds the items of a laid line, moved aside by `aside`, with their feet and tips.
void stand_course(const fabric::Fabric& fabric, const Extents& extents, const Course& course, double aside,
                  Ring& ring, Figure& figure);

/// A label whose base line begins at `at`, its runs of one size or smaller.
Label straight_label(Point at, std::vector<Run> runs, std::uint32_t ring, Tone tone);

/// Sets low and high to hold everything in the figure, and widens them for what was added to its stitches
/// since.
void bound_straight(const Extents& extents, Figure& figure);
void bound_furniture(Figure& figure);

} // namespace whorl::layout
