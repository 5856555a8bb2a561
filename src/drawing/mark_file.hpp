#pragma once

#include "drawing/marks.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace whorl::drawing {

/// A mark read from an SVG, or in plain words why it could not be.
struct MarkReading {
  Mark mark;
  std::string problem; ///< "": it was read
};

/// Reads a mark: paths (in groups that may be moved, scaled or turned by a matrix), a hundred units to the W,
/// and the circles of the group `anchors`, named by their ids. Pens take their width and dash from the SVG.
MarkReading read_mark(std::string name, std::string_view svg);

/// The marks, sorted by name, as C++ source that defines `built_in_marks`.
std::string mark_table(std::vector<Mark> marks);

/// Reads the files and writes the table to `out`, both by path; complaints go to standard error. The exit
/// status.
int write_mark_table(const std::string& out, const std::vector<std::string>& files);

} // namespace whorl::drawing
