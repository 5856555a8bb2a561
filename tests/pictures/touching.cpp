#include "pictures/touching.hpp"

#include "fabric/fabric.hpp"
#include "paint/owned.hpp"

#include <geos_c.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <sstream>
#include <utility>

namespace whorl::pictures {
namespace {

using Context = paint::Owned<GEOSContextHandle_HS, GEOS_finish_r>;

/// A geometry knows the context that it belongs to.
struct Destroy {
  GEOSContextHandle_t geos;
  void operator()(GEOSGeometry* shape) const { GEOSGeom_destroy_r(geos, shape); }
};
using Shape = std::unique_ptr<GEOSGeometry, Destroy>;

struct DestroyTree {
  GEOSContextHandle_t geos;
  void operator()(GEOSSTRtree* tree) const { GEOSSTRtree_destroy_r(geos, tree); }
};
using Tree = std::unique_ptr<GEOSSTRtree, DestroyTree>;

/// A stretch of a mark's ink, short enough that its box tells where it is.
struct Stretch {
  Shape shape;
  Shape box; ///< grown by its reach
  double reach;
  std::size_t mark;
};

/// The ink of a scene, ready to be searched.
struct Sheet {
  Context geos{GEOS_init_r()};
  std::vector<Mark> marks;
  std::vector<Stretch> stretches;
};

Shape geometry(const Sheet& sheet, GEOSGeometry* shape) { return Shape{shape, Destroy{sheet.geos.get()}}; }

GEOSCoordSequence* sequence(GEOSContextHandle_t geos, const Point* first, std::size_t count) {
  GEOSCoordSequence* points = GEOSCoordSeq_create_r(geos, static_cast<unsigned int>(count), 2);
  for (std::size_t i = 0; i < count; ++i)
    GEOSCoordSeq_setXY_r(geos, points, static_cast<unsigned int>(i), first[i].x, first[i].y);
  return points;
}

Shape line(const Sheet& sheet, const Point* first, std::size_t count) {
  GEOSContextHandle_t geos = sheet.geos.get();
  GEOSCoordSequence* points = sequence(geos, first, count);
  return geometry(sheet, count == 1 ? GEOSGeom_createPoint_r(geos, points)
                                    : GEOSGeom_createLineString_r(geos, points));
}

Shape area(const Sheet& sheet, std::vector<Point> outline) {
  GEOSContextHandle_t geos = sheet.geos.get();
  if (!(outline.front() == outline.back())) outline.push_back(outline.front());
  if (outline.size() < 4) return line(sheet, outline.data(), outline.size());
  GEOSGeometry* ring = GEOSGeom_createLinearRing_r(geos, sequence(geos, outline.data(), outline.size()));
  return geometry(sheet, GEOSGeom_createPolygon_r(geos, ring, nullptr, 0));
}

Shape box(const Sheet& sheet, const Shape& shape, double grown) {
  GEOSContextHandle_t geos = sheet.geos.get();
  double left = 0, top = 0, right = 0, bottom = 0;
  GEOSGeom_getXMin_r(geos, shape.get(), &left);
  GEOSGeom_getYMin_r(geos, shape.get(), &top);
  GEOSGeom_getXMax_r(geos, shape.get(), &right);
  GEOSGeom_getYMax_r(geos, shape.get(), &bottom);
  return geometry(sheet,
                  GEOSGeom_createRectangle_r(geos, left - grown, top - grown, right + grown, bottom + grown));
}

/// Chords of one stretch: a line round a whole figure has a box that holds every stitch of it.
constexpr std::size_t chords_a_stretch = 8;

void add(Sheet& sheet, Shape shape, double reach, std::size_t mark) {
  Shape around = box(sheet, shape, reach);
  sheet.stretches.push_back({std::move(shape), std::move(around), reach, mark});
}

void add(Sheet& sheet, const Piece& piece, std::size_t mark) {
  if (piece.area) return add(sheet, area(sheet, piece.points), piece.reach, mark);
  const std::size_t chords = std::max<std::size_t>(1, piece.points.size() - 1);
  for (std::size_t i = 0; i < chords; i += chords_a_stretch) {
    const std::size_t points = std::min(chords_a_stretch + 1, piece.points.size() - i);
    add(sheet, line(sheet, &piece.points[i], points), piece.reach, mark);
  }
}

Sheet inked(const drawing::Scene& scene, const fabric::Fabric* fabric) {
  Sheet sheet;
  sheet.marks = marks_of(scene, fabric);
  for (std::size_t i = 0; i < sheet.marks.size(); ++i)
    for (const Piece& piece : sheet.marks[i].pieces) add(sheet, piece, i);
  return sheet;
}

bool share_a_place(const fabric::Fabric& fabric, fabric::StitchId one, fabric::StitchId other) {
  for (const fabric::Leg& leg : fabric::legs_of(fabric, one))
    for (const fabric::Leg& its : fabric::legs_of(fabric, other))
      if (leg.into == its.into) return true;
  return false;
}

/// Whether two different symbols of stitches have a leg in one place.
bool may_meet(const fabric::Fabric* fabric, const Mark& one, const Mark& other) {
  if (!fabric || one.stitch == fabric::none || other.stitch == fabric::none || one.stitch == other.stitch)
    return false;
  for (std::uint32_t i = 0; i < one.count; ++i)
    for (std::uint32_t j = 0; j < other.count; ++j)
      if (share_a_place(*fabric, one.stitch + i, other.stitch + j)) return true;
  return false;
}

/// A shape without what lies near the feet of both stitches.
Shape without(const Sheet& sheet, const Shape& shape, const Shape& near) {
  return geometry(sheet, GEOSDifference_r(sheet.geos.get(), shape.get(), near.get()));
}

Shape near_the_feet(const Sheet& sheet, const Mark& one, const Mark& other, double meeting) {
  const Point middle = 0.5 * (one.foot + other.foot);
  const double between = std::hypot(one.foot.x - other.foot.x, one.foot.y - other.foot.y);
  const Shape centre = line(sheet, &middle, 1);
  return geometry(sheet, GEOSBuffer_r(sheet.geos.get(), centre.get(), between / 2 + meeting, 16));
}

Point meeting_point(const Sheet& sheet, const Shape& one, const Shape& other) {
  GEOSContextHandle_t geos = sheet.geos.get();
  Point at;
  GEOSCoordSequence* points = GEOSNearestPoints_r(geos, one.get(), other.get());
  if (!points) return at;
  GEOSCoordSeq_getXY_r(geos, points, 0, &at.x, &at.y);
  GEOSCoordSeq_destroy_r(geos, points);
  return at;
}

/// Between the ink of two shapes; huge where one of them is nothing.
double air_between(const Sheet& sheet, const Shape& one, const Shape& other, double reach) {
  GEOSContextHandle_t geos = sheet.geos.get();
  if (GEOSisEmpty_r(geos, one.get()) || GEOSisEmpty_r(geos, other.get())) return HUGE_VAL;
  double apart = 0;
  GEOSDistance_r(geos, one.get(), other.get(), &apart);
  return apart - reach;
}

/// Measures pairs of stretches and keeps the worst of each two marks.
struct Measuring {
  const Sheet& sheet;
  const fabric::Fabric* fabric;
  Asked asked;
  std::map<std::pair<std::size_t, std::size_t>, Contact> found;

  void measure(const Stretch& one, const Stretch& other) {
    const Mark &mine = sheet.marks[one.mark], &its = sheet.marks[other.mark];
    if (!may_meet(fabric, mine, its)) return keep(one, other, one.shape, other.shape);
    const Shape near = near_the_feet(sheet, mine, its, asked.meeting);
    keep(one, other, without(sheet, one.shape, near), without(sheet, other.shape, near));
  }

  void keep(const Stretch& one, const Stretch& other, const Shape& mine, const Shape& its) {
    const double air = air_between(sheet, mine, its, one.reach + other.reach);
    if (air >= asked.air) return;
    const auto pair = std::minmax(one.mark, other.mark);
    Contact& contact = found[pair];
    if (!contact.one.empty() && contact.air <= air) return;
    contact = {sheet.marks[pair.first].name, sheet.marks[pair.second].name, air,
               meeting_point(sheet, mine, its)};
  }
};

/// One stretch that asks the tree what is near it.
struct Asking {
  Measuring& measuring;
  const Stretch& one;
};

void answer(void* item, void* asking) {
  const Asking& it = *static_cast<Asking*>(asking);
  const Stretch& other = *static_cast<Stretch*>(item);
  if (other.mark > it.one.mark) it.measuring.measure(it.one, other);
}

Tree tree_of(Sheet& sheet) {
  GEOSContextHandle_t geos = sheet.geos.get();
  Tree tree{GEOSSTRtree_create_r(geos, 10), DestroyTree{geos}};
  for (Stretch& stretch : sheet.stretches)
    GEOSSTRtree_insert_r(geos, tree.get(), stretch.box.get(), &stretch);
  return tree;
}

} // namespace

std::vector<Contact> touching(const drawing::Scene& scene, const fabric::Fabric* fabric, const Asked& asked) {
  Sheet sheet = inked(scene, fabric);
  Measuring measuring{sheet, fabric, asked, {}};
  const Tree tree = tree_of(sheet);
  for (const Stretch& stretch : sheet.stretches) {
    Asking asking{measuring, stretch};
    const Shape wider = box(sheet, stretch.box, asked.air);
    GEOSSTRtree_query_r(sheet.geos.get(), tree.get(), wider.get(), answer, &asking);
  }
  std::vector<Contact> contacts;
  for (const auto& [pair, contact] : measuring.found) contacts.push_back(contact);
  return contacts;
}

Contact nearest(const drawing::Scene& scene, const fabric::Fabric* fabric, double within) {
  Contact least;
  least.air = within;
  for (const Contact& contact : touching(scene, fabric, {within, Asked{}.meeting}))
    if (contact.air < least.air) least = contact;
  return least;
}

std::vector<Contact> touching_besides_loops(const drawing::Scene& scene) {
  std::vector<Contact> found = touching(scene, nullptr);
  const auto is_of_loops = [](const std::string& name) {
    return name.find(" in loops") != std::string::npos;
  };
  found.erase(
      std::remove_if(found.begin(), found.end(),
                     [&](const Contact& c) { return is_of_loops(c.one) && is_of_loops(c.other); }),
      found.end());
  return found;
}

std::string show(const std::vector<Contact>& contacts) {
  std::ostringstream lines;
  for (const Contact& contact : contacts)
    lines << contact.one << " and " << contact.other << ": " << contact.air << " mm at " << contact.at.x
          << ", " << contact.at.y << "\n";
  return lines.str();
}

} // namespace whorl::pictures
