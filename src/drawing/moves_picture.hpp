#pragma once

#include "drawing/hook_picture.hpp"

#include <string>
#include <vector>

namespace whorl::drawing {

/// A move: the hook after it, and what stands beneath.
struct MovePicture {
  std::string number; ///< "3"
  std::string words;  ///< "Yarn over and draw up a loop"
  std::string loops;  ///< "3 loops"
  HookState hook;
};

/// A stitch: a heading and its moves in a row.
struct MoveStrip {
  std::string heading;
  std::string note;
  std::vector<MovePicture> moves;
};

/// The texts of a sheet of moves.
struct MovesText {
  std::string title;
  std::string subtitle;
  std::string terms;
  std::string note; ///< how the pictures are to be seen, at the foot
  std::string description;
  std::string language = "en";
};

/// The stitches below one another, each as a strip of small pictures.
Scene moves_sheet(const MovesText& text, const std::vector<MoveStrip>& strips);

} // namespace whorl::drawing
