#pragma once

#include "drawing/box.hpp"
#include "drawing/copy.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace whorl::drawing {

/// One picture of a pattern that is taught round by round, or stitch by stitch: the start of a part, a round,
/// or a stitch of it (an increase, a group into one place, chains in a row).
struct Step {
  std::size_t figure = 0;                 ///< of the placement
  std::uint32_t ring = fabric::none;      ///< in Figure::rings; none: the start
  fabric::StitchId stitch = fabric::none; ///< of the ring, the first of so many; none: the whole round
  std::uint32_t stitches = 0;
};

/// What there is to be a picture of.
enum class Pace : std::uint8_t { rounds, stitches };

/// The steps of all parts in the order in which they are worked: for each part its start and every
/// round or stitch.
std::vector<Step> steps_of(const Copy& copy, Pace pace = Pace::rounds);

/// "cap-start", "cap-5", "cap-5-07": what a step shows, for the name of its file. The number of a stitch is
/// that of its first in the round.
std::string step_id(const Copy& copy, const Step& step);

/// How large a step's picture is, in mm.
struct StepPage {
  double width = 192, height = 108;
  bool paper = true;   ///< white under it
  bool words = true;   ///< with the line of the pattern and its count
  std::vector<std::size_t> figures; ///< that there are pictures of, all of one scale; {}: of all
  bool picture = true; ///< with what is drawn; false: the words alone, to lie over it
};

/// A step: what is done in grey, its round in full ink, what it is worked into lit, the next round faint; one
/// repeat close up with the names of its stitches and the places that they go into; under a line its number,
/// its line of the pattern as the author wrote it, and its count. Of a stitch: it in a bold pen and its place
/// lit, earlier ones of the round in ink, later ones faint, and how many are worked. The figure stands in the
/// same place in all steps of it, and all figures are of one scale. `copy.options.stitch` is not looked at.
Scene step_picture(const Copy& copy, const std::vector<Mark>& marks, const Step& step, const StepPage& page);

} // namespace whorl::drawing
