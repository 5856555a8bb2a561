#include "layout/course_places.hpp"

#include "layout/few.hpp"
#include "layout/hold.hpp"
#include "layout/items.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

using fabric::Fabric;

/// How far points of a symbol are aside of it.
Few<double> in_work_order(const std::vector<Point>& points, bool leftward) {
  if (points.size() < 2) return Few<double>(points.empty() ? 0 : points.front().x);
  std::vector<double> aside;
  for (const Point p : points) aside.push_back(p.x);
  std::sort(aside.begin(), aside.end());
  if (leftward) std::reverse(aside.begin(), aside.end());
  return {aside, 0};
}

std::vector<Few<double>> tips_of(const Course& course) {
  std::vector<Few<double>> tips;
  tips.reserve(course.band.shapes.size());
  for (const SymbolExtent* shape : course.band.shapes)
    tips.push_back(in_work_order(shape->tips, stitches_run_leftward(course)));
  return tips;
}

std::vector<Few<double>> feet_of_shapes(const Course& course) {
  std::vector<Few<double>> feet;
  feet.reserve(course.band.shapes.size());
  for (const SymbolExtent* shape : course.band.shapes)
    feet.push_back(in_work_order(shape->feet, stitches_run_leftward(course)));
  return feet;
}

/// Counted from the left.
std::size_t from_left(const Course& course, std::size_t stand) {
  return course.leftward ? course.stands.size() - 1 - stand : stand;
}

std::vector<Head> heads_of(const Fabric& fabric, const Course& course, const Ring& ring) {
  std::vector<Head> heads;
  const fabric::StitchId onto_last =
      fabric.rounds[ring.last_round].first_stitch - fabric.rounds[ring.round].first_stitch;
  const std::vector<Few<double>> tips = tips_of(course);
  for (std::size_t i = 0; i < course.stands.size(); ++i) {
    const Stand& stand = course.stands[i];
    for (std::uint32_t k = 0; k < stand.items; ++k) {
      const Item& item = course.items[stand.item + k];
      const Few<double>& own = tips[course.band.shape_of[stand.item + k]];
      for (std::uint32_t j = 0; j < item.count; ++j)
        heads.push_back({stand_at(course, i) + (stand.column ? 0 : own.or_last(j)), 1,
                         item.first + j + onto_last, from_left(course, i)});
    }
  }
  return heads;
}

/// Two stems in one place lean to it: their middle is asked.
std::vector<Foot> leaning_together(const Course& course, std::vector<Foot> feet) {
  const auto leans = [&](const Foot& foot) {
    const Stand& stand = course.stands[from_left(course, foot.items.front())];
    const Item& item = course.items[stand.item];
    return item.count == 1 && item.key.loops == stitch::both &&
           course.band.shapes[course.band.shape_of[stand.item]]->stretches;
  };
  std::vector<Foot> all;
  for (Foot& foot : feet) {
    const bool second = !all.empty() && all.back().into == foot.into && all.back().items.size() == 1 &&
                        foot.items.size() == 1 && all.back().items != foot.items && leans(all.back()) &&
                        leans(foot);
    if (second)
      all.back().items.push_back(foot.items.front()), all.back().from_item = 0;
    else
      all.push_back(std::move(foot));
  }
  return all;
}

/// Chains on end have no feet.
std::vector<Foot> feet_of(const Fabric& fabric, const Course& course) {
  std::vector<std::vector<double>> feet;
  for (const Few<double>& own : feet_of_shapes(course)) feet.emplace_back(own.begin(), own.end());
  std::vector<Item> items;
  std::vector<const std::vector<double>*> from_ray;
  std::vector<std::size_t> places;
  for (std::size_t i = 0; i < course.stands.size(); ++i) {
    if (course.stands[i].column) continue;
    items.push_back(course.items[course.stands[i].item]);
    from_ray.push_back(&feet[course.band.shape_of[course.stands[i].item]]);
    places.push_back(from_left(course, i));
  }
  std::vector<Foot> all = layout::feet_of(fabric, items, from_ray);
  for (Foot& foot : all)
    for (std::size_t& item : foot.items) item = places[item];
  return leaning_together(course, std::move(all));
}

constexpr double nowhere = 1e300;

/// Where the heads of a line stand, in the order of its round's stitches; empty where some are no plain
/// places.
std::vector<double> plain_heads(const Fabric& fabric, const Course& course, const Ring& ring) {
  const fabric::Round& round = fabric.rounds[ring.round];
  std::vector<double> heads(round.count, nowhere);
  const std::vector<Few<double>> tips = tips_of(course);
  for (std::size_t i = 0; i < course.stands.size(); ++i) {
    const Stand& stand = course.stands[i];
    const Item& item = course.items[stand.item];
    const bool plain =
        !stand.column && stand.items == 1 && (fabric.stitches[item.first].flags & fabric::counts) != 0;
    if (!plain || item.first + item.count - 1 - round.first_stitch >= heads.size()) return {};
    for (std::uint32_t j = 0; j < item.count; ++j)
      heads[item.first + j - round.first_stitch] =
          stand_at(course, i) + tips[course.band.shape_of[stand.item]].or_last(j);
  }
  return heads;
}

/// Whether every foot of a line, each for itself, is by its place on a line of plain heads: mostly that is
/// all.
bool is_by_places(const Fabric& fabric, const Course& before, const Ring& ring_before, const Course& course) {
  const std::vector<double> heads = plain_heads(fabric, before, ring_before);
  const std::vector<Few<double>> feet = feet_of_shapes(course);
  const fabric::StitchId first = fabric.rounds[ring_before.last_round].first_stitch;
  const auto distance = [&](std::size_t place, double at) {
    return place < heads.size() && heads[place] < nowhere ? std::abs(heads[place] - at) : nowhere;
  };
  for (std::size_t i = 0; i < course.stands.size(); ++i) {
    const Stand& stand = course.stands[i];
    if (stand.column || stand.items != 1) return false;
    std::size_t foot = 0;
    const fabric::Legs legs = legs_of(fabric, course.items[stand.item]);
    const LegsHeld held = legs_held(course.items[stand.item], legs.size());
    for (const fabric::Leg& leg : legs) {
      if (!is_stitch(leg.into) || leg.into.of < first) return false;
      const std::size_t place = leg.into.of - first;
      const double at = stand_at(course, i) + feet[course.band.shape_of[stand.item]].or_last(foot);
      if (!held.holds(foot++)) continue;
      const double own = distance(place, at);
      if (own == nowhere || own >= std::min(distance(place - 1, at), distance(place + 1, at))) return false;
    }
  }
  return true;
}

} // namespace

std::size_t hold_by_places(const Fabric& fabric, const Course& before, const Ring& ring_before,
                           Course& course) {
  if (is_by_places(fabric, before, ring_before, course)) return 0;
  return hold_most_feet(feet_of(fabric, course), {Tops(fabric, heads_of(fabric, before, ring_before), 0)},
                        course.strung, course.at);
}

} // namespace whorl::layout
