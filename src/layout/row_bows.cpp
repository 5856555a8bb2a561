#include "layout/row_bows.hpp"

#include "layout/bunch.hpp"
#include "layout/stand.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

constexpr double air_along = 0.12;
constexpr double step = 0.05, steepest = 0.45; ///< of what is tried for its stretch

/// The stands of a line are counted from the left.
std::size_t in_order(const Course& course, std::size_t place) {
  return course.leftward ? course.stands.size() - 1 - place : place;
}

/// The chains of a run as high a bow as leaves so much room between the heads.
Bunch bow_within(const Extents& extents, const Course& course, const Bow& run, double room) {
  constexpr std::uint32_t least = 2;
  Bunch bow;
  for (std::size_t place = run.first; place <= run.last; ++place)
    bow.standing.push_back(course.items[course.stands[in_order(course, place)].item]);
  if (course.leftward) std::reverse(bow.standing.begin(), bow.standing.end());
  const Way way = course.leftward ? Way::anticlockwise : Way::clockwise;
  double stretch = greatest_stretch;
  bend(extents, stretch, way, bow, least);
  while (2 * bow.before > room && stretch > steepest) bend(extents, stretch -= step, way, bow, least);
  if (course.leftward) std::reverse(bow.standing.begin(), bow.standing.end());
  return bow;
}

void bow_run(const Extents& extents, const Bow& run, Course& course) {
  const Stand &before = course.stands[in_order(course, run.first - 1)],
              &behind = course.stands[in_order(course, run.last + 1)];
  const double left = course.at[run.first - 1] + before.right, right = course.at[run.last + 1] - behind.left;
  const Bunch bow = bow_within(extents, course, run, right - left - 2 * air_along);
  for (std::size_t place = run.first; place <= run.last; ++place) {
    const Item& item = bow.standing[place - run.first];
    course.bent[in_order(course, place)] = {item.foot + Point{(left + right) / 2 - course.at[place], 0},
                                            item.up};
    for (const Convex& piece : ink_of(extents, item))
      for (const Point p : piece) course.high = std::max(course.high, course.outer - item.height + p.y);
  }
}

} // namespace

void bow_chains(const Extents& extents, Course& course) {
  if (!course.bows.empty()) course.bent.resize(course.stands.size());
  for (const Bow& run : course.bows) bow_run(extents, run, course);
}

} // namespace whorl::layout
