#include "layout/course_lean.hpp"

#include "layout/items.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::Legs;

constexpr double step_in_stitch = 0.25; ///< between feet
constexpr double step_in_space = 0.42, of_space = 0.98, chain_pitch = 0.68;
constexpr double steepest = 0.5;                                               ///< of its height
constexpr double air_at_foot = 0.18, air_at_slash = 0.36, slash_height = 0.44; ///< from its head
constexpr std::size_t most_between = 3;                                        ///< chains within a group

/// Stems that go into one place together, stands in order of work.
struct Group {
  fabric::Place into;
  std::vector<std::size_t> stands;
};

const Item& item_of(const Course& course, std::size_t stand) {
  return course.items[course.stands[stand].item];
}

bool is_stem(const Fabric& fabric, const Extents& extents, const Course& course, std::size_t stand) {
  const Item& item = item_of(course, stand);
  return !course.stands[stand].column && item.stem == 0 && legs_of(fabric, item).size() == 1 &&
         extent(extents, item.key).stretches;
}

std::vector<Group> groups_of(const Fabric& fabric, const Extents& extents, const Course& course) {
  std::vector<Group> groups;
  std::size_t between = most_between + 1;
  for (std::size_t i = 0; i < course.stands.size(); ++i) {
    const Legs legs = legs_of(fabric, item_of(course, i));
    if (legs.size() == 0 && !course.stands[i].column) {
      ++between;
      continue;
    }
    const bool stem = is_stem(fabric, extents, course, i);
    if (stem && between <= most_between && groups.back().into == legs.begin()->into)
      groups.back().stands.push_back(i);
    else if (stem)
      groups.push_back({legs.begin()->into, {i}});
    between = stem ? 0 : most_between + 1;
  }
  return groups;
}

double step_of(const Fabric& fabric, const Group& group) {
  if (group.into.what != fabric::On::space) return step_in_stitch;
  const double length = chain_pitch * fabric.arches[group.into.of].count;
  return std::min(step_in_space, of_space * length / static_cast<double>(group.stands.size()));
}

/// Whether a stem of a group carries loop marks, which would lie on one another at a common foot.
bool has_marks(const Course& course, const Group& group) {
  return std::any_of(group.stands.begin(), group.stands.end(),
                     [&](std::size_t stand) { return item_of(course, stand).key.loops != stitch::both; });
}

/// Room between the stems of a group and the ink that stands before it and behind it.
bool is_clear(const Course& course, const Group& group) {
  const std::size_t first = group.stands.front(), last = group.stands.back();
  const auto clear = [&](std::size_t own, std::size_t other) {
    const Stand &stem = course.stands[own], &beside = course.stands[other];
    const double at = stand_at(course, own), away = stand_at(course, other);
    const double ink = away < at ? away + std::max(beside.right, beside.foot)
                                 : away - std::max(beside.left, 0 - beside.foot);
    const double side = away < at ? 1 : -1;
    return side * (at + stem.foot - ink) >= air_at_foot &&
           side * (at + slash_height * stem.foot - ink) >= air_at_slash;
  };
  return (first == 0 || clear(first, first - 1)) &&
         (last + 1 == course.stands.size() || clear(last, last + 1));
}

/// Stems that cross lean from their heads, which stand in order, to their places, which do not.
void lean_across(const Fabric& fabric, const Extents& extents, const Footing& footing, Course& course) {
  std::vector<Seat> seats(course.stands.size()); // with the work
  const double way = course.leftward ? -1 : 1;
  for (std::size_t i = 0; i < seats.size(); ++i)
    if (is_stem(fabric, extents, course, i)) {
      seats[i] = seat_of(fabric, item_of(course, i), footing);
      if (seats[i].at) *seats[i].at *= way;
    }
  for (const Crossing& crossing : crossings_of(seats))
    for (std::size_t i = crossing.first; i < crossing.end; ++i) {
      if (!seats[i].at) continue;
      const double most = steepest * extent(extents, item_of(course, i).key).height;
      course.stands[i].foot = std::clamp(way * *seats[i].at - stand_at(course, i), -most, most);
    }
}

} // namespace

void lean_to_places(const Fabric& fabric, const Extents& extents, const Footing& footing, Course& course) {
  const double way = course.leftward ? -1 : 1;
  for (const Group& group : groups_of(fabric, extents, course)) {
    const std::optional<double> base = base_of(fabric, item_of(course, group.stands.front()), footing);
    if (group.stands.size() < 2 || !base || has_marks(course, group)) continue;
    const double step = step_of(fabric, group), middle = (static_cast<double>(group.stands.size()) - 1) / 2;
    for (std::size_t k = 0; k < group.stands.size(); ++k) {
      const std::size_t stand = group.stands[k];
      const double most = steepest * extent(extents, item_of(course, stand).key).height;
      const double foot = *base + way * (static_cast<double>(k) - middle) * step;
      course.stands[stand].foot = std::clamp(foot - stand_at(course, stand), -most, most);
    }
    for (int tries = 4; tries > 0 && !is_clear(course, group); --tries)
      for (const std::size_t stand : group.stands) course.stands[stand].foot *= tries > 1 ? 0.6 : 0;
  }
  lean_across(fabric, extents, footing, course);
}

} // namespace whorl::layout
