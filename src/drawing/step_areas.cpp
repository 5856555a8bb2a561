#include "drawing/step_areas.hpp"

#include <algorithm>

namespace whorl::drawing {

bool is_broad(const Box& close_up) { return close_up.width() > std::max(120.0, 2 * close_up.height()); }

namespace {

constexpr double largest = 7;      ///< mm per W
constexpr double safe = 0.052;     ///< of the shorter side: nothing stands nearer to the edge
constexpr double words_high = 22;  ///< of the line under the picture …
constexpr double narrow_high = 32; ///< … where the author's line stands under the number
constexpr double narrow = 150;     ///< a picture that is less wide
constexpr double share = 0.52;     ///< of the width, of a figure beside its close-up
constexpr double most_high = 0.56; ///< of the height, of a figure over its close-up

/// That at which every figure has room.
double scale_in(const std::vector<Box>& figures, const Box& area) {
  double scale = largest;
  for (const Box& figure : figures)
    scale = std::min({scale, area.width() / figure.width(), area.height() / figure.height()});
  return scale;
}

/// How large a close-up of usual size would be.
double close_up_scale(const Box& area) {
  const bool broad = is_broad(area);
  return std::min(13.0,
                  broad ? area.height() / 4.2 : std::min(area.width() / 6.5, (area.height() - 19) / 4.2));
}

struct Halves {
  Box figure, close_up;
  double worth() const { return close_up_scale(close_up); }
};

Halves side_by_side(const Box& all) {
  Halves halves{all, all};
  halves.figure.right = all.left + share * all.width();
  halves.close_up.left = halves.figure.right + 6;
  return halves;
}

Halves stacked(const Box& all, const std::vector<Box>& figures) {
  Halves halves{all, all};
  halves.figure.bottom = all.top + most_high * all.height();
  const double scale = scale_in(figures, halves.figure);
  double needs = 0;
  for (const Box& figure : figures) needs = std::max(needs, scale * figure.height());
  halves.figure.bottom = all.top + needs;
  halves.close_up.top = halves.figure.bottom + 4;
  return halves;
}

} // namespace

StepAreas areas_of(const StepPage& page, const std::vector<Box>& figures) {
  const double edge = safe * std::min(page.width, page.height);
  Box all{edge, edge, page.width - edge, page.height - edge};
  StepAreas areas;
  areas.narrow = page.width < narrow;
  areas.words = {all.left, all.bottom - (areas.narrow ? narrow_high : words_high) + edge, all.right,
                 all.bottom};
  all.bottom = areas.words.top - 2;
  const Halves beside = side_by_side(all), under = stacked(all, figures);
  const auto worth = [&figures](const Halves& halves) {
    const double scale = scale_in(figures, halves.figure);
    return scale * scale * halves.worth();
  };
  const Halves& better = worth(under) > worth(beside) ? under : beside;
  areas.figure = better.figure;
  areas.close_up = better.close_up;
  areas.scale = scale_in(figures, areas.figure);
  return areas;
}

Frame frame_of(const Box& figure, const StepAreas& areas) {
  const Box& area = areas.figure;
  return {{(area.left + area.right) / 2 - areas.scale * (figure.left + figure.right) / 2,
           (area.top + area.bottom) / 2 - areas.scale * (figure.top + figure.bottom) / 2},
          areas.scale};
}

} // namespace whorl::drawing
