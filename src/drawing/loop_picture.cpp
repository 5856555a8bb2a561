#include "drawing/loop_picture.hpp"

#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr double pitch = 8.1, length = 9.6, apart = 5.2, fall = 2.2, bow = 1.5, pen = 0.5;

/// One strand of a stitch top: a leaf from its left tip to where it dives under the next; `side` -1: the back
/// one.
Path strand(Point middle, double side) {
  const Point left = middle + Point{-length / 2, side * apart / 2};
  const Point right = middle + Point{length / 2, side * (apart / 2 - fall)};
  const double out = side * bow;
  Path path = curve_through({left,
                             {left.x + length * 0.28, left.y + out * 0.5},
                             {left.x + length * 0.62, left.y + out},
                             right,
                             {right.x - length * 0.35, right.y + side * 0.45},
                             {left.x + length * 0.3, left.y - side * 0.9},
                             left});
  path.verbs.push_back(Verb::close);
  return path;
}

void draw_top(Group& group, Point middle, Color color, const LoopsWorked& worked) {
  for (const double side : {-1.0, 1.0}) {
    const bool coloured = (worked.loops & (side > 0 ? stitch::front : stitch::back)) != 0;
    if (coloured) group.items.push_back(Fill{strand(middle, side), worked.color, {}});
    group.items.push_back(Stroke{strand(middle, side), pen, color, 0, {}});
  }
}

/// The name of a loop at the end of a line that begins on its strand.
void draw_name(Group& group, std::string name, Point strand, double side) {
  const Point end = strand + Point{1.7, side * 3.4};
  group.items.push_back(Stroke{line_through({strand, end}), 0.2, ink::grey, 0, {}});
  const double base = side < 0 ? 0.9 : 1.5;
  group.items.push_back(written(std::move(name), lettering::legend_name, end + Point{0.8, base}));
}

} // namespace

bool has_loop_marks(const layout::Figure& figure) {
  return std::any_of(figure.items.begin(), figure.items.end(), [](const layout::Item& item) {
    return item.key.loops == stitch::back || item.key.loops == stitch::front;
  });
}

Drawn draw_loop_picture(const Copy& copy, Point at, double width, const LoopsWorked& worked) {
  Drawn picture{{"", "loops", say(copy.wording, "loops-title"), {}}, 0};
  const Point middle = at + Point{width / 2, 9};
  draw_top(picture.group, middle - Point{pitch, 0}, ink::grey, {0, {}});
  draw_top(picture.group, middle + Point{pitch, 0}, ink::grey, {0, {}});
  draw_top(picture.group, middle, ink::black, worked);
  draw_name(picture.group, say(copy.wording, "loops-back"), middle - Point{0, apart / 2 + 0.6}, -1);
  draw_name(picture.group, say(copy.wording, "loops-front"), middle + Point{0, apart / 2 + 0.6}, 1);
  const Lettering note = at_size(lettering::note, 2.9);
  double y = at.y + 22.6;
  for (const char* id : {"loops-above", "loops-nearer"})
    for (std::string& line : wrap(say(copy.wording, id), note, width)) {
      picture.group.items.push_back(written(std::move(line), note, {middle.x, y}, Anchor::middle));
      y += 4;
    }
  picture.height = y - 2.8 - at.y;
  return picture;
}

} // namespace whorl::drawing
