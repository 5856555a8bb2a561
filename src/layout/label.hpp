#pragma once

#include "fabric/fabric.hpp"
#include "layout/place.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace whorl::layout {

inline constexpr double number_size = 0.74, count_size = 0.62, second_size = 0.54;
inline constexpr double letter_height = 0.72; ///< of a letter's box, in ems
inline constexpr double pointer_length = 0.30;
inline constexpr double pointer_room = 0.54; ///< pointer and the air between it and the text
inline constexpr double gutter_air = 0.26;   ///< on either side of pointer and text
inline constexpr double flag_reach = 0.50;   ///< of a flag above and below the label's middle
inline constexpr double attach_half = 0.34;  ///< half the mark for joined yarn

/// What a ring's label says; its second line stands `second` above the first (below where negative).
struct Lettering {
  std::vector<Run> first;
  std::vector<Run> below;
  double width = 0; ///< of the longer line, and the flag and mark behind it
  double second = 0;
  std::uint8_t flag = 0; ///< the yarn to which this round changes; 0: to none
  double flag_x = 0;     ///< the foot of the flag's pole, from the text's start
  bool attached = false; ///< the mark for joined yarn stands behind both
  double attach_x = 0;   ///< its middle
};

/// "8", "7–9", "41b".
std::string number_of(const fabric::Fabric& fabric, const Ring& ring);

/// "24", or "25 (!)" where the text states another.
std::string count_of(const fabric::Round& round);

/// The label `8 · 24` of a ring, `60` of a starting chain; `loops` are those that all its items are marked with, `inward` turns the
/// side to which loop marks reach.
Lettering letter(const fabric::Fabric& fabric, const Ring& ring, std::uint8_t loops, bool inward,
                 const Extents& extents, const Page& page);

/// Makes room behind a label of this width for its flag and its mark for joined yarn.
void put_signs_behind(Lettering& label);

/// The flag and the mark for joined yarn of a label whose text begins at `start`, at the height of its
/// middle; `mirrored`: they stand before the text.
std::vector<Placed> yarn_signs(const Lettering& text, Point start, bool mirrored, std::uint32_t ring);

/// Runs one beside the other with the given space between.
std::vector<Run> set_line(std::vector<Run> runs, double space, const Extents& extents);

/// `text` with `{}` replaced by the number, or by its name.
std::string fill_in(const std::string& text, std::uint64_t number);
std::string fill_in(const std::string& text, const std::string& name);

/// The box of one line of letters whose base line begins at `at`.
Convex line_box(Point at, double width, double size);

double line_width(const std::vector<Run>& runs);

/// Of the longer line of a label, without its flag and mark.
double letters_width(const Lettering& label);

} // namespace whorl::layout
