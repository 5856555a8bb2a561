#include "layout/oval_label.hpp"

#include "layout/direction.hpp"
#include "layout/sign.hpp"
#include "layout/straight.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double pointer_side = 0.36; ///< from a pointer's middle to the text beside it
constexpr double widest_ray = 1.0;    ///< radians from the first side, 57 degrees: so far labels are one line
constexpr double line_apart = 0.62;   ///< of lines one above the other

double half_high(double size) { return letter_height * size / 2; }

Label in_ink(Point at, std::vector<Run> runs) { return straight_label(at, std::move(runs), 0, Tone::ink); }

/// Lines beside the pointer, `start` at the height of the first one's middle.
StandingLabel in_line(const Lettering& text, Point start) {
  StandingLabel label;
  label.lines.push_back(in_ink(start - Point{0, half_high(number_size)}, text.first));
  if (!text.below.empty())
    label.lines.push_back(in_ink(start + Point{0, text.second - half_high(second_size)}, text.below));
  label.signs = yarn_signs(text, start, false, 0);
  return label;
}

/// Number, count and words one above the other, each in the middle.
StandingLabel stacked(const Lettering& text, Point before, Point on, double further) {
  std::vector<std::vector<Run>> lines{{text.first.front()}, {text.first.back()}};
  if (!text.below.empty()) lines.push_back(text.below);
  double wide = 0;
  for (std::vector<Run>& line : lines) line.front().x = 0, wide = std::max(wide, line_width(line));
  const double high = letter_height * number_size + line_apart * static_cast<double>(lines.size() - 1);
  const double signs = text.width - letters_width(text);
  const double far = pointer_side + further + std::abs(on.x) * (wide + signs) / 2 + std::abs(on.y) * high / 2;
  const Point middle = before - far * on - Point{signs / 2, 0};
  StandingLabel label;
  double base = middle.y + high / 2 - letter_height * number_size;
  for (std::vector<Run>& line : lines) {
    label.lines.push_back(in_ink({middle.x - line_width(line) / 2, base}, line));
    base -= line_apart;
  }
  label.signs = yarn_signs(text, middle + Point{wide / 2 - letters_width(text), 0}, false, 0);
  return label;
}

} // namespace

bool is_aside(const Lap& lap) {
  const double ray = lap.lead / lap.r;
  return ray > widest_ray && ray < pi - widest_ray;
}

StandingLabel stand_label(const OvalRing& ring, const Stadium& stadium, std::uint32_t number) {
  const Lettering& text = ring.band.label;
  const Point start = point_on(stadium, ring.lap, 0), on = along(stadium, ring.lap, 0);
  const double aside = ring.joined ? 0 : pointer_side;
  const bool leftward = on.x > 0;
  StandingLabel label = is_aside(ring.lap)
                            ? stacked(text, start, on, ring.label_further)
                            : in_line(text, start + Point{leftward ? 0 - aside - text.width : aside, 0});
  for (Label& line : label.lines) line.ring = number;
  for (Placed& sign : label.signs) sign.ring = number;
  return label;
}

Pointer pointer_of(const OvalRing& ring, const Stadium& stadium, std::uint32_t number) {
  Pointer pointer;
  pointer.direction = along(stadium, ring.lap, 0);
  pointer.tip = point_on(stadium, ring.lap, 0) + (pointer_length / 2) * pointer.direction;
  pointer.ring = number;
  return pointer;
}

std::vector<Convex> label_ink(const OvalRing& ring, const Stadium& stadium) {
  std::vector<Convex> ink;
  const StandingLabel label = stand_label(ring, stadium, 0);
  for (const Label& line : label.lines) ink.push_back(line.box);
  for (const Placed& sign : label.signs)
    for (Convex& piece : outlines_of(sign)) ink.push_back(std::move(piece));
  if (!ring.joined) ink.push_back(outline_of(pointer_of(ring, stadium, 0)));
  return ink;
}

} // namespace whorl::layout
