#pragma once
/// The inked outlines of a scene, for tests: what each mark is, and where its pens go. White paper, and the
/// grounds of yarns and of what is worked into, are no ink.

#include "drawing/scene.hpp"

#include <string>
#include <vector>

namespace whorl::pictures {

using layout::Point;

/// Pens of one mark: the ink is everything no further than `reach` from the line, or from the inside of the
/// area.
struct Piece {
  std::vector<Point> points; ///< mm; curves are cut into chords that keep within .005 mm
  double reach = 0;          ///< mm: half the width of the pen
  bool area = false;         ///< the outline of something filled
};

/// What the ink belongs to. Pieces of one mark may touch one another.
struct Mark {
  std::string name; ///< "stitch cap-3-1", "text “3 · 18” in label", "fill in round cap-3"
  fabric::StitchId stitch = fabric::none;
  std::uint32_t count = 1; ///< stitches of one place that it stands for
  Point foot;              ///< of a stitch
  std::vector<Piece> pieces;
};

/// The marks of a scene. One mark each: a symbol, its loop arcs apart; something filled; strokes of a group
/// that join; texts of a group on one base line, as boxes of their width, as high as capitals, and deeper
/// where letters descend.
std::vector<Mark> marks_of(const drawing::Scene& scene, const fabric::Fabric* fabric = nullptr);

} // namespace whorl::pictures
