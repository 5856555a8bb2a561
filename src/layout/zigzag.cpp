#include "layout/zigzag.hpp"

#include "layout/beneath.hpp"
#include "layout/ground.hpp"
#include "layout/hold.hpp"
#include "layout/items.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;
using Corners = std::vector<Zigzag::Corner>;

constexpr double steepest = 0.8;        ///< rise of a slope to its run
constexpr double least_shift = 0.4;     ///< of a ripple that is bent
constexpr double at_corner = 0.25;      ///< so near to a corner a stitch stands upright on it
constexpr double off_corner = 0.1;      ///< a corner is no further from that beneath
constexpr std::uint32_t least_many = 3; ///< stitches of a peak; legs of a valley

/// The stitches of a row that the next is worked into, in one order for all rows.
struct Tops {
  StitchId first = 0;
  std::vector<std::int64_t> place; ///< of each of the row's stitches; -1: it is none
  std::int64_t many = 0;
  StitchId before =
      fabric::none; ///< the first of them, where it stands before the row: in the starting chain
  std::int64_t before_at = 0;

  std::optional<double> at(StitchId stitch) const {
    if (stitch == before) return static_cast<double>(before_at);
    if (stitch < first || stitch - first >= place.size() || place[stitch - first] < 0) return std::nullopt;
    return static_cast<double>(place[stitch - first]);
  }
  void reverse() {
    before_at = many - 1 - before_at;
    for (std::int64_t& one : place)
      if (one >= 0) one = many - 1 - one;
  }
};

template <class Is> Tops tops_where(const fabric::Round& row, Is is_top) {
  Tops tops;
  tops.first = row.first_stitch;
  if (row.counting_chain < row.first_stitch) tops.before = row.counting_chain, tops.many = 1;
  for (StitchId stitch = row.first_stitch; stitch < row.first_stitch + row.count; ++stitch)
    tops.place.push_back(is_top(stitch) ? tops.many++ : -1);
  return tops;
}

Tops tops_of(const Fabric& fabric, const fabric::Round& row) {
  return tops_where(row, [&](StitchId stitch) {
    return (fabric.stitches[stitch].flags & fabric::counts) != 0 || stitch == row.counting_chain;
  });
}

/// An item over what it goes into, in the order of a row.
struct Over {
  double low = 0, high = 0; ///< of its places
  double own = 0;           ///< the middle of its tops
  std::uint32_t many = 0, legs = 0;
  double aside() const { return own - (low + high) / 2; }
  bool is_peak() const { return many >= least_many; }
  bool is_valley() const { return many == 1 && high - low > least_many - 1.5; }
};

/// Looks at one row after another.
class Looking {
public:
  Looking(const Fabric& fabric, Tops beneath) : fabric_(fabric), beneath_(std::move(beneath)) {}

  bool take(std::uint32_t number) {
    Tops tops = tops_of(fabric_, fabric_.rounds[number]);
    std::vector<Over> all;
    if (tops.many != beneath_.many || !gather(number, tops, all) || all.size() < 2) return false;
    if (all.front().low > all.back().low) {
      tops.reverse();
      for (Over& one : all) one.own = static_cast<double>(tops.many) - 1 - one.own;
      std::reverse(all.begin(), all.end());
    }
    beneath_ = std::move(tops);
    return compare(all);
  }

  const Corners& corners() const { return corners_; }
  double shift() const { return shift_; }

private:
  bool gather(std::uint32_t number, const Tops& tops, std::vector<Over>& all) const {
    for (const Item& item : items_of(fabric_, number)) {
      const fabric::Legs legs = legs_of(fabric_, item);
      const std::optional<double> first = tops.at(item.first), last = tops.at(item.first + item.count - 1);
      if (legs.size() == 0 && !first) continue;
      if (legs.size() == 0 && item.first == fabric_.rounds[number].counting_chain) continue;
      if (!first || !last || item.stem > 0) return false;
      Over over{1e9, -1e9, (*first + *last) / 2, item.count, static_cast<std::uint32_t>(legs.size())};
      for (const fabric::Leg& leg : legs) {
        const std::optional<double> at = is_stitch(leg.into) ? beneath_.at(leg.into.of) : std::nullopt;
        if (!at) return false;
        over.low = std::min(over.low, *at), over.high = std::max(over.high, *at);
      }
      if (legs.size() > 0) all.push_back(over);
    }
    return true;
  }

  /// Whether its corners are those of the rows before, and nothing stands far from its place.
  bool compare(const std::vector<Over>& all) {
    Corners corners;
    for (const Over& one : all) {
      const bool corner = one.is_peak() || one.is_valley();
      if (corner && std::abs(one.aside()) > off_corner) return false;
      if (corner) corners.push_back({one.own, one.is_peak()});
      if (!corner && one.many == 1) shift_ = std::max(shift_, std::abs(one.aside()));
    }
    if (corners_.empty()) corners_ = corners;
    for (std::size_t i = 1; i < corners.size(); ++i)
      if (corners[i].peak == corners[i - 1].peak) return false;
    return corners.size() >= 2 && corners == corners_;
  }

  const Fabric& fabric_;
  Tops beneath_;
  Corners corners_;
  double shift_ = 0;
};

} // namespace

std::optional<Zigzag> zigzag_of(const Fabric& fabric, std::uint32_t chain,
                                const std::vector<std::uint32_t>& rows) {
  if (rows.empty()) return std::nullopt;
  const fabric::Round& foundation = fabric.rounds[chain];
  const Worked worked = worked_of(fabric, fabric.rounds[rows.front()], foundation);
  if (worked.first == fabric::none) return std::nullopt;
  Looking looking(fabric, tops_where(foundation, [&](StitchId stitch) {
                    return stitch >= worked.first && stitch <= worked.last;
                  }));
  for (const std::uint32_t row : rows)
    if (!looking.take(row)) return std::nullopt;
  if (looking.shift() < least_shift) return std::nullopt;
  const auto stitches = static_cast<std::uint32_t>(worked.last - worked.first + 1);
  return Zigzag{looking.corners(), stitches, looking.shift(), false};
}

void stand_on_zigzag(const Fabric& fabric, const Zigzag& zigzag, Course& course) {
  const fabric::Round& round = fabric.rounds[fabric.stitches[course.items.back().first].round];
  const bool chain = round.kind == pattern::RoundKind::chain;
  const auto counts = [&](StitchId stitch) {
    return chain || (fabric.stitches[stitch].flags & fabric::counts) != 0 || stitch == round.counting_chain;
  };
  const double way = course.leftward ? -1 : 1, last = zigzag.stitches - 1.0;
  double next = -way * last / 2; // the place of the next stitch
  std::vector<double> at(course.stands.size());
  for (std::size_t i = 0; i < course.stands.size(); ++i) {
    const Stand& stand = course.stands[i];
    std::uint32_t many = 0;
    for (std::uint32_t j = 0; j < stand.items; ++j)
      for (std::uint32_t k = 0; k < course.items[stand.item + j].count; ++k)
        many += counts(course.items[stand.item + j].first + k) ? 1 : 0;
    const std::size_t gap = course.leftward ? at.size() - 1 - i : i + 1;
    at[i] = many > 0 ? next + way * (many - 1) / 2.0 : next - way * course.strung.least[gap];
    next += way * many;
  }
  course.at = std::move(at);
  if (course.leftward) std::reverse(course.at.begin(), course.at.end());
  hold_there(course.strung, course.at);
}

namespace {

/// How lines are bent.
class Bending {
public:
  Bending(const Zigzag& zigzag, const Straight& drawn) {
    const double half = (zigzag.stitches - 1.0) / 2;
    double rows = 0, high = 0;
    for (std::size_t i = 1; i < drawn.courses.size(); ++i)
      rows += 1, high += drawn.courses[i].outer - drawn.courses[i - 1].outer;
    const double tangent = std::min(steepest, rows > 0 ? zigzag.shift * rows / high : steepest);
    cosine_ = 1 / std::sqrt(1 + tangent * tangent), sine_ = tangent * cosine_;
    for (const Zigzag::Corner& corner : zigzag.corners) {
      const double at = corner.at - half;
      corners_.push_back({zigzag.mirrored ? 0 - at : at, corner.peak});
    }
    if (zigzag.mirrored) std::reverse(corners_.begin(), corners_.end());
    double reached = -half;
    bool up = corners_.front().peak;
    for (const Zigzag::Corner& corner : corners_) {
      rises_.push_back((rises_.empty() ? 0 : rises_.back()) + (up ? 1 : -1) * (corner.at - reached) * sine_);
      reached = corner.at, up = !corner.peak;
    }
  }

  /// The place on a line that is so high at its left end.
  Point on_line(double x, double high) const { return {x * cosine_, high / cosine_ + rise(x)}; }
  double high(double straight) const { return straight / cosine_; }
  double unbent(double x) const { return x / cosine_; }

  /// The way on along a slope.
  Point along(double x) const {
    for (const Zigzag::Corner& corner : corners_)
      if (std::abs(corner.at - x) < at_corner) return {1, 0};
    return {cosine_, way(x) * sine_};
  }

  double rise(double x) const {
    std::size_t next = behind(x);
    const std::size_t near = next == corners_.size() ? next - 1 : next;
    return rises_[near] + way(x) * (x - corners_[near].at) * sine_;
  }

  const Corners& corners() const { return corners_; }

private:
  std::size_t behind(double x) const {
    std::size_t next = 0;
    while (next < corners_.size() && corners_[next].at < x) ++next;
    return next;
  }
  double way(double x) const {
    const std::size_t next = behind(x);
    return next < corners_.size() ? (corners_[next].peak ? 1 : -1) : (corners_.back().peak ? -1 : 1);
  }

  double cosine_ = 1, sine_ = 0;
  Corners corners_;
  std::vector<double> rises_; ///< of the corners
};

void bend_item(const Bending& bending, double outer, Item& item, Figure& figure) {
  const double x = (item.foot + item.height / 2 * item.up).x;
  const Point head{x, outer}, there = bending.on_line(x, outer), on = bending.along(x);
  const auto turned = [&](Point p) { return Point{p.x * on.x - p.y * on.y, p.x * on.y + p.y * on.x}; };
  const auto bent = [&](Point p) { return there + turned(p - head); };
  for (std::uint32_t i = 0; i < item.feet; ++i)
    figure.feet[item.first_foot + i] = bent(figure.feet[item.first_foot + i]);
  for (std::uint32_t i = 0; i < item.count; ++i)
    figure.tips[item.first_tip + i] = bent(figure.tips[item.first_tip + i]);
  item.foot = bent(item.foot);
  item.up = turned(item.up);
}

} // namespace

void bend_lines(const Zigzag& zigzag, Straight& drawn) {
  const Bending bending(zigzag, drawn);
  drawn.figure.bent = true;
  for (std::size_t i = 0; i < drawn.courses.size(); ++i) {
    Course& course = drawn.courses[i];
    Ring& ring = drawn.figure.rings[i];
    for (std::uint32_t k = ring.first_item; k < ring.first_item + ring.items; ++k)
      bend_item(bending, course.outer, drawn.figure.items[k], drawn.figure);
    const double up = bending.high(course.outer) - course.outer;
    ring.inner += up, ring.outer += up, ring.middle += up;
  }
}

double rise_at(const Zigzag& zigzag, const Straight& drawn, double x) {
  const Bending bending(zigzag, drawn);
  const double half = (zigzag.stitches - 1.0) / 2;
  return bending.rise(std::clamp(bending.unbent(x), -half, half));
}

void bend_grounds(const Zigzag& zigzag, Straight& drawn) {
  const Bending bending(zigzag, drawn);
  for (Ground& ground : drawn.figure.grounds) {
    const Point low = ground.outline[0], high = ground.outline[6];
    std::vector<double> places{bending.unbent(low.x), bending.unbent(high.x)};
    std::sort(places.begin(), places.end());
    std::vector<double> between;
    for (const Zigzag::Corner& corner : bending.corners())
      if (corner.at > places[0] && corner.at < places[1]) between.push_back(corner.at);
    places.insert(places.begin() + 1, between.begin(), between.end());
    std::vector<Point> corners;
    const auto add = [&](double x, double y) { corners.push_back(bending.on_line(x, 0) + Point{0, y}); };
    for (const double x : places) add(x, low.y);
    for (std::size_t i = places.size(); i-- > 0;) add(places[i], high.y);
    ground.outline = straight_curves(corners);
  }
}

} // namespace whorl::layout
