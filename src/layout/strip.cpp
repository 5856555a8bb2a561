#include "layout/strip.hpp"

#include "layout/contour.hpp"
#include "layout/course_places.hpp"
#include "layout/cut.hpp"
#include "layout/flag.hpp"
#include "layout/footprint.hpp"
#include "layout/ground.hpp"
#include "layout/items.hpp"
#include "layout/joined_edges.hpp"
#include "layout/long_legs.hpp"
#include "layout/placed.hpp"
#include "layout/sign.hpp"
#include "layout/spike.hpp"

#include <algorithm>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double above_footprint = 0.08;
constexpr double name_gap = 0.22; ///< from all that stands above to the tick of a name

using fabric::Fabric;

constexpr double fullness = 0.985; ///< least gaps take no more than this of a line
constexpr double pointer_at = 0.42, number_at = 0.84, count_at = 0.66; ///< beyond the edges
constexpr double second_space = 0.20;
constexpr double numbers_above = 0.32; ///< their base line above all ink
constexpr std::uint32_t fifth = 5;
constexpr double corner = 0.22; ///< of the join line
constexpr double join_left = 0.24, join_in = 0.02, join_right = 0.07;
constexpr double stem_air = 0.2;  ///< on either side of a stem that crosses it
constexpr double join_low = 0.20; ///< above the heads, where something is placed in the gap

/// A strip while it is put together. All is laid as a right hand works; for the left hand x turns over.
struct Laying {
  const Fabric& fabric;
  const Plan& plan;
  const Extents& extents;
  const Page& page;
  std::vector<Course> courses;
  double length = 0;
  bool held = true; ///< all stitches have room by their own places

  double side() const { return page.hand == Hand::right ? 1 : -1; }
  double edge() const { return length / 2; }
};

Course course_of(const Laying& laying, std::size_t number) {
  Course course;
  const Ring& ring = laying.plan.rings[number];
  const std::vector<std::uint32_t>& arrows = laying.plan.arrows;
  course.leftward = laying.page.hand == Hand::right;
  course.items = items_of(laying.fabric, ring.round, ring.echo);
  if (!ring.echo && std::find(arrows.begin(), arrows.end(), number) == arrows.end())
    give_stems(laying.fabric, laying.plan.rings, number, course.items);
  course.band = band_of(course.items, laying.extents, ring.echo);
  if (!ring.echo && !laying.plan.kept.empty())
    draw_loops(course.items, {laying.plan.kept, laying.page.hand, false}, course.band);
  course.band.break_outside = ring.round != ring.last_round;
  course.band.label =
      letter(laying.fabric, ring, marked_loops(course.items), false, laying.extents, laying.page);
  const bool counting = laying.fabric.rounds[ring.round].counting_chain != fabric::none;
  set_stands(laying.extents, leading_chains(laying.fabric, course.items), counting, course);
  return course;
}

double slots_of(const Course& course) {
  double slots = 0;
  for (const Stand& stand : course.stands) slots += stand.slot;
  return std::max(1.0, slots);
}

void set_length(Laying& laying) {
  laying.length = 0;
  for (const Course& course : laying.courses)
    laying.length = std::max({laying.length, slots_of(course), least_length(course) / fullness});
}

void stack(Laying& laying) {
  double inner = 0;
  for (std::size_t i = 0; i < laying.courses.size(); ++i) {
    Course& course = laying.courses[i];
    set_height(inner, course);
    if (i > 0) set_height(laying.courses[i - 1].outer + gap_above(laying.courses[i - 1], course), course);
    inner = course.outer;
  }
}

/// Strings all lines; how many stitches have no room by their own places.
std::size_t string_courses(Laying& laying, const std::vector<Ring>& rings, Footing& footing) {
  std::size_t not_held = 0;
  Slate slate;
  for (std::size_t i = 0; i < laying.courses.size(); ++i) {
    Course& course = laying.courses[i];
    if (i > 0 && !laying.plan.keep_problems) hand_on(laying.courses[i - 1].strung, course.strung);
    const Room room{laying.length, false, laying.length / slots_of(course), {}};
    lay_course(laying.fabric, footing, room, slate, course);
    if (i > 0) not_held += hold_by_places(laying.fabric, laying.courses[i - 1], rings[i - 1], course);
    keep_places(laying.fabric, rings[i], course, room, footing);
  }
  return not_held;
}

/// The lines become longer until all stitches have room by their own places, or most have.
bool string_with_room(Laying& laying, const std::vector<Ring>& rings) {
  constexpr double longer = 1.06;
  constexpr int most_times = 24;
  double best = laying.length;
  std::size_t fewest = static_cast<std::size_t>(-1);
  for (int i = 0; i < most_times; ++i, laying.length *= longer) {
    Footing footing(laying.fabric, laying.plan.part);
    const std::size_t not_held = string_courses(laying, rings, footing);
    if (not_held == 0) return true;
    if (not_held < fewest) fewest = not_held, best = laying.length;
  }
  laying.length = best;
  Footing footing(laying.fabric, laying.plan.part);
  return string_courses(laying, rings, footing) == 0;
}

void lay(Laying& laying, Figure& figure) {
  make_room(laying.courses, figure);
  laying.held = string_with_room(laying, figure.rings);
  for (std::size_t i = 0; i < laying.courses.size(); ++i) {
    Course& course = laying.courses[i];
    stand_course(laying.fabric, laying.extents, course, -laying.edge(), figure.rings[i], figure);
    figure.rings[i].last_before_break = course.band.break_outside;
  }
}

// Labels.

Point label_start(const Laying& laying, double beyond, double width, double base) {
  return {laying.side() > 0 ? laying.edge() + beyond : -laying.edge() - beyond - width, base};
}

std::vector<Run> number_runs(const Laying& laying, const Course& course) {
  std::vector<Run> runs{course.band.label.first.front()};
  for (const Run& run : course.band.label.below) runs.push_back(run);
  if (laying.side() < 0) std::reverse(runs.begin(), runs.end());
  return set_line(runs, second_space, laying.extents);
}

std::vector<Run> count_runs(const Laying& laying, const Course& course) {
  return set_line({course.band.label.first.back()}, 0, laying.extents);
}

/// Flag and mark for joined yarn behind the number of a line, on the side where it begins.
void add_yarn_signs(const Laying& laying, Lettering text, double middle, std::uint32_t ring, Figure& figure) {
  const double beyond = laying.edge() + text.width;
  text.width = 0;
  put_signs_behind(text);
  const bool mirrored = laying.side() < 0;
  const Point start{mirrored ? -beyond - text.width : beyond, middle};
  for (Placed& sign : yarn_signs(text, start, mirrored, ring)) figure.placed.push_back(std::move(sign));
}

/// Number, pointer and flag where a line begins, its count where it ends.
void add_labels(const Laying& laying, Figure& figure) {
  for (std::uint32_t i = 0; i < laying.courses.size(); ++i) {
    const Course& course = laying.courses[i];
    const Ring& ring = figure.rings[i];
    const Tone tone = ring.echo ? Tone::grey : Tone::ink;
    const double base = ring.middle - letter_height * number_size / 2;
    const std::vector<Run> number = number_runs(laying, course), count = count_runs(laying, course);
    figure.labels.push_back(
        straight_label(label_start(laying, number_at, line_width(number), base), number, i, tone));
    const double width = line_width(count), ends = -laying.side() * (laying.edge() + count_at);
    const double count_base = ring.middle - letter_height * count_size / 2;
    figure.labels.push_back(
        straight_label({laying.side() > 0 ? ends - width : ends, count_base}, count, i, tone));
    const Point direction{-laying.side(), 0};
    const double tip = laying.side() * (laying.edge() + pointer_at - pointer_length / 2);
    figure.pointers.push_back({{tip, ring.middle}, direction, pointer_length, i, tone});
    Lettering signs;
    signs.width = number_at + line_width(number);
    signs.flag = course.band.label.flag;
    signs.attached = course.band.label.attached;
    add_yarn_signs(laying, signs, ring.middle, i, figure);
  }
}

/// 1, 5, 10 … above the stitches of the uppermost line.
void add_numbers(const Laying& laying, Figure& figure) {
  const auto top = static_cast<std::uint32_t>(figure.rings.size() - 1);
  const Ring& ring = figure.rings[top];
  const Course& course = laying.courses.back();
  double clear = course.band.break_outside ? break_height(course) + zigzag_high : course.high;
  for (const Stroke& stroke : figure.strokes)
    for (const Point p : stroke.points)
      if (stroke.line == Line::footprint) clear = std::max(clear, p.y + above_footprint);
  std::uint32_t number = 0;
  for (std::uint32_t i = ring.first_item; i < ring.first_item + ring.items; ++i)
    for (std::uint32_t j = 0; j < figure.items[i].count; ++j) {
      const Item& item = figure.items[i];
      if ((laying.fabric.stitches[item.first + j].flags & fabric::counts) == 0) continue;
      if (++number != 1 && number % fifth != 0) continue;
      Run run{std::to_string(number), Face::regular, sign_text, 0, 0};
      run.width = run.size * text_width(laying.extents, run.face, run.text);
      const Point at{figure.tips[item.first_tip + j].x - run.width / 2, clear + numbers_above};
      figure.labels.push_back(straight_label(at, {run}, top, Tone::grey));
    }
}

// Lines.

double join_height(const Course& below, const Course& above) {
  if (below.band.break_outside) return (break_height(below) + zigzag_high + above.low) / 2;
  const double middle = (below.high + above.low) / 2;
  return below.band.room_outside > 0 ? std::min(below.high + join_low, middle) : middle;
}

/// A quarter circle that leaves towards `by` way of its corner.
void corner_to(Point by, Point to, std::vector<Point>& points) {
  constexpr double quarter = 0.5522847498;
  const Point from = points.back();
  points.push_back(from + quarter * (by - from));
  points.push_back(to + quarter * (by - to));
  points.push_back(to);
}

/// A gap of a line, from left to right as a right hand works.
struct Gap {
  double from = 0, to = 0;
};

/// Where stems come near to a height, no two of them overlapping.
std::vector<Gap> gaps_for_stems(const Laying& laying, const Figure& figure, double y) {
  std::vector<Gap> all;
  for (const Stroke& stroke : figure.strokes)
    for (std::size_t i = 1; stroke.line == Line::stem && i < stroke.points.size(); ++i) {
      Point a = stroke.points[i - 1], b = stroke.points[i];
      if (a.y > b.y) std::swap(a, b);
      if (b.y < y - stem_air || a.y > y + stem_air) continue;
      const double rise = b.y - a.y;
      const double low = rise > 0 ? std::clamp((y - stem_air - a.y) / rise, 0.0, 1.0) : 0;
      const double high = rise > 0 ? std::clamp((y + stem_air - a.y) / rise, 0.0, 1.0) : 1;
      const double one = laying.side() * (a.x + low * (b.x - a.x)),
                   other = laying.side() * (a.x + high * (b.x - a.x));
      all.push_back({std::min(one, other) - stem_air, std::max(one, other) + stem_air});
    }
  std::sort(all.begin(), all.end(), [](Gap p, Gap q) { return p.from < q.from; });
  std::vector<Gap> merged;
  for (const Gap& gap : all)
    if (!merged.empty() && gap.from < merged.back().to + stem_air)
      merged.back().to = std::max(merged.back().to, gap.to);
    else
      merged.push_back(gap);
  return merged;
}

void add_line(const Laying& laying, std::vector<Point> points, Figure& figure) {
  for (Point& point : points) point.x *= laying.side();
  figure.strokes.push_back({Line::join, std::move(points), true, 0});
}

/// From the end of a line up round a corner, between the two lines and up to the start of the next.
void add_join(const Laying& laying, std::size_t below, Figure& figure) {
  const Course &one = laying.courses[below], &next = laying.courses[below + 1];
  const double y = join_height(one, next), from = (one.inner + one.outer) / 2;
  const double edge = laying.edge(), left = -edge - join_left, right = edge + join_right;
  std::vector<Point> points;
  points.reserve(16);
  points.push_back({left + corner, from});
  corner_to({left, from}, {left, from + corner}, points);
  line_to({left, y - corner}, points);
  corner_to({left, y}, {left + corner, y}, points);
  for (const Gap& gap : gaps_for_stems(laying, figure, y)) {
    line_to({std::max(gap.from, left + corner), y}, points);
    add_line(laying, std::move(points), figure);
    points = {{std::min(gap.to, right - corner), y}};
  }
  line_to({right - corner, y}, points);
  corner_to({right, y}, {right, y + corner}, points);
  add_line(laying, std::move(points), figure);
}

Figure begin_figure(const Laying& laying) {
  Figure figure;
  figure.form = Form::strip;
  figure.part = laying.plan.part;
  figure.clockwise = laying.page.hand == Hand::left;
  figure.rings = laying.plan.rings;
  figure.first_round = fabric::none;
  for (const Ring& ring : figure.rings) {
    if (ring.echo) continue;
    figure.first_round = std::min(figure.first_round, ring.round);
    figure.last_round = std::max(figure.last_round, ring.last_round);
  }
  return figure;
}

/// The loops that later parts use.
void draw_kept(Laying& laying, Figure& figure) {
  std::vector<Band> bands;
  for (Course& course : laying.courses) bands.push_back(std::move(course.band));
  add_loops(keeping_of(laying.plan), bands, laying.extents, laying.page.hand, figure);
  for (std::size_t i = 0; i < bands.size(); ++i) laying.courses[i].band = std::move(bands[i]);
}

/// Puts everything together, for the first time or again; returns the lines above which something found no
/// room.
std::vector<int> put_together(Laying& laying, int again, Figure& figure,
                              std::vector<std::uint32_t>& stemless) {
  figure = begin_figure(laying);
  stack(laying);
  lay(laying, figure);
  draw_kept(laying, figure);
  stemless = add_stems(laying.fabric, laying.extents, figure);
  if (laying.plan.outlines) add_footprints(laying.fabric, laying.extents, figure);
  add_labels(laying, figure);
  add_numbers(laying, figure);
  for (std::size_t i = 0; i < laying.courses.size(); ++i) {
    if (laying.courses[i].band.break_outside)
      add_break(laying.courses[i], -laying.edge(), laying.edge(), figure);
    if (i + 1 < laying.courses.size()) add_join(laying, i, figure);
  }
  add_cut(laying.fabric, laying.extents, figure);
  add_joined_edges(laying.fabric, laying.extents, figure);
  std::vector<int> crowded = add_posts(laying.fabric, laying.extents, figure, again);
  for (const int ring : add_flags(laying.fabric, laying.extents, figure, again)) crowded.push_back(ring);
  bound_straight(laying.extents, figure);
  add_front(laying.fabric, laying.extents, laying.page, 0, figure);
  add_footprint_names(laying.fabric, laying.extents, figure.high.y + name_gap, figure);
  add_grounds(laying.fabric, std::vector<double>(figure.rings.size(), 0), laying.page.main_yarn, figure);
  bound_furniture(figure);
  return crowded;
}

/// A flag within a line stands above it.
void make_room_for_flags(Laying& laying) {
  std::vector<std::uint8_t> met;
  for (std::size_t i = 0; i + 1 < laying.courses.size(); ++i)
    if (brings_in_yarn(laying.fabric, laying.courses[i].items, laying.plan.rings[i].echo, met))
      laying.courses[i].band.room_outside += flag_room;
}

} // namespace

Straight draw_strip(const Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page) {
  constexpr double more = 0.2;
  Straight drawn;
  Laying laying{fabric, plan, extents, page, {}, 0};
  laying.courses.reserve(plan.rings.size());
  for (std::size_t i = 0; i < plan.rings.size(); ++i) laying.courses.push_back(course_of(laying, i));
  if (laying.courses.empty()) return drawn;
  set_length(laying);
  make_room_for_flags(laying);
  std::vector<std::uint32_t> stemless;
  bool settled = false;
  int bent = 0; ///< times that stems were given room
  for (int i = 0; i < (plan.grows ? most_layings_for_feet : most_layings) + bent; ++i) {
    std::vector<int> crowded = put_together(laying, i, drawn.figure, stemless);
    const std::vector<std::uint32_t> bends = rings_at_bends(drawn.figure);
    if (bent < most_bends && !bends.empty() && (bent == 0 || !stemless.empty())) {
      ++bent;
      for (const std::uint32_t ring : bends) laying.courses[ring].band.room_outside += bend_room;
      continue;
    }
    if (!stemless.empty()) {
      Plan other = plan;
      other.arrows.insert(other.arrows.end(), stemless.begin(), stemless.end());
      return draw_strip(fabric, other, extents, page);
    }
    const Lines which = laying.held ? Lines::of_many_legs : Lines::of_every_foot;
    const std::vector<int> footless = lengthen_legs(fabric, extents, which, drawn.figure);
    crowded = rings_to_widen(plan, i + 1 - bent, std::move(crowded), footless);
    settled = crowded.empty();
    if (settled) break;
    for (const int ring : crowded)
      if (ring >= 0) laying.courses[static_cast<std::size_t>(ring)].band.room_outside += more;
  }
  if (!settled && plan.grows) return draw_strip(fabric, given_up(plan, drawn.figure), extents, page);
  drawn.courses = std::move(laying.courses);
  drawn.held = laying.held;
  return drawn;
}

} // namespace whorl::layout
