#include "standing.hpp"

#include "layout/direction.hpp"
#include "layout/items.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace whorl::layout::test {
namespace {

using fabric::Fabric;
using fabric::On;
using fabric::Place;
using fabric::StitchId;

/// Of more feet in one place than these their middle is asked: they fan out.
constexpr std::size_t most_asked_alone = 2;

bool has(const Fabric& fabric, StitchId stitch, std::uint8_t flags) {
  return (fabric.stitches[stitch].flags & flags) != 0;
}

/// The way out from a point of an item: from the middle of a disc, upright on a line, square to the contours
/// of an oval and of an edging, on which stitches stand so.
Point way_out(const Figure& figure, const Ring& ring, const Item& item, Point at) {
  if (figure.form == Form::oval || ring.edging) return item.up;
  return figure.form == Form::strip || figure.form == Form::rows ? Point{0, 1} : unit(at);
}

struct Distance {
  double straight = 1e9, aside = 1e9;
};

/// Where the tops of stitches are, in a figure. Rounds that a folded ring stands for have theirs with it.
class Tops {
public:
  Tops(const Fabric& fabric, const Figure& figure)
      : fabric_(fabric), at_(fabric.stitches.size()), out_(fabric.stitches.size()),
        arch_(fabric.stitches.size(), fabric::none) {
    for (std::uint32_t arch = 0; arch < fabric.arches.size(); ++arch)
      for (std::uint32_t k = 0; k < fabric.arches[arch].count; ++k)
        arch_[fabric.arches[arch].first_chain + k] = arch;
    for (const Ring& ring : figure.rings)
      for (std::uint32_t k = 0; k < ring.items; ++k) put(figure, ring, figure.items[ring.first_item + k]);
  }

  bool is_own(const Place& place, StitchId stitch) const {
    return place.what == On::space ? arch_[stitch] == place.of : stitch == place.of;
  }

  std::optional<std::uint32_t> round_of(const Place& place) const {
    if (place.what == On::space)
      return place.of < fabric_.arches.size()
                 ? std::optional(fabric_.stitches[fabric_.arches[place.of].first_chain].round)
                 : std::nullopt;
    return is_stitch(place) ? std::optional(fabric_.stitches[place.of].round) : std::nullopt;
  }

  bool is_place(StitchId stitch) const {
    return has(fabric_, stitch, fabric::counts) || arch_[stitch] != fabric::none;
  }

  /// How far the nearest of a place's own points is, or of any other place of its round, and how far aside of
  /// the way out, or up, on which the foot stands.
  Distance nearest(const Place& place, Point foot, Point out, bool own) const {
    Distance least;
    const std::optional<std::uint32_t> number = round_of(place);
    if (!number) return least;
    const fabric::Round& round = fabric_.rounds[*number];
    for (StitchId i = round.first_stitch; i < round.first_stitch + round.count; ++i)
      if (at_[i] && is_own(place, i) == own && (own || is_place(i))) {
        least.straight = std::min(least.straight, length(*at_[i] - foot));
        if (dot(out, out_[i]) > 0) // else it is on the other side of the piece
          least.aside = std::min(least.aside, std::abs(cross(out, *at_[i] - foot)));
      }
    return least;
  }

private:
  void put(const Figure& figure, const Ring& ring, const Item& item) {
    for (std::uint32_t round = ring.round; round <= ring.last_round; ++round) {
      const StitchId on = fabric_.rounds[round].first_stitch - fabric_.rounds[ring.round].first_stitch;
      for (std::uint32_t j = 0; j < item.count; ++j) {
        const bool chain = arch_[item.first] != fabric::none;
        at_[item.first + on + j] =
            chain ? item.foot + item.height / 2 * item.up : figure.tips[item.first_tip + j];
        out_[item.first + on + j] = way_out(figure, ring, item, *at_[item.first + on + j]);
      }
    }
  }

  const Fabric& fabric_;
  std::vector<std::optional<Point>> at_;
  std::vector<Point> out_; ///< the way out there
  std::vector<std::uint32_t> arch_;
};

/// Feet that go into one place one after another.
struct Group {
  Place into;
  std::vector<Point> feet;
  std::vector<Point> out; ///< the way out, or up, at each
};

/// What takes several places together has one foot for each of them. Joins are no stitches of the round, and
/// what is worked into rounds further down has a stem, or an arrow, that leads there.
std::vector<Group> groups_of(const Fabric& fabric, const Figure& figure, const Ring& ring) {
  std::vector<Group> groups;
  for (std::uint32_t k = 0; k < ring.items; ++k) {
    const Item& item = figure.items[ring.first_item + k];
    if (has(fabric, item.first, fabric::joins) || item.stem > 0 || item.key.base == Base::below) continue;
    const fabric::Leg* legs = fabric.legs.data() + fabric.stitches[item.first].first_leg;
    for (std::uint32_t foot = 0; foot < item.feet; ++foot) {
      if (groups.empty() || !(groups.back().into == legs[foot].into))
        groups.push_back({legs[foot].into, {}, {}});
      const Point at = figure.feet[item.first_foot + foot];
      groups.back().feet.push_back(at);
      groups.back().out.push_back(way_out(figure, ring, item, at));
    }
  }
  return groups;
}

Point middle_of(const std::vector<Point>& points) {
  Point middle;
  for (const Point p : points) middle = middle + (1.0 / static_cast<double>(points.size())) * p;
  return middle;
}

/// A stem, or a piece of the line that leads on from its foot, and the stitch and leg it is of.
struct Stem {
  Point foot, top;
  StitchId stitch;
  std::uint32_t leg;
};

/// The line that leads on from a foot to here, where there is one.
const Stroke* line_to(const Figure& figure, Point foot) {
  for (const Stroke& stroke : figure.strokes)
    if (stroke.line == Line::stem && !stroke.curved && stroke.points.back() == foot) return &stroke;
  return nullptr;
}

void add_stem(const Figure& figure, Stem stem, std::vector<Stem>& stems) {
  if (const Stroke* line = line_to(figure, stem.foot)) {
    for (std::size_t i = 1; i < line->points.size(); ++i)
      stems.push_back({line->points[i - 1], line->points[i], stem.stitch, stem.leg});
    stem.foot = line->points.front();
  }
  stems.push_back(stem);
}

std::vector<Stem> stems_of(const Fabric& fabric, const Figure& figure) {
  std::vector<Stem> stems;
  for (const Item& item : figure.items) {
    if (has(fabric, item.first, fabric::joins)) continue;
    const std::uint32_t many = std::max(item.feet, item.feet > 0 ? item.count : 0U);
    for (std::uint32_t k = 0; k < many; ++k)
      add_stem(figure,
               {figure.feet[item.first_foot + std::min(k, item.feet - 1)],
                figure.tips[item.first_tip + std::min(k, item.count - 1)], item.first, k},
               stems);
  }
  return stems;
}

bool divides(Point from, Point to, Point a, Point b) {
  const double one = cross(to - from, a - from), other = cross(to - from, b - from);
  return one * other < -1e-9;
}

bool are_of_one_leg(const Stem& a, const Stem& b) { return a.stitch == b.stitch && a.leg == b.leg; }

bool cross_each_other(const Stem& a, const Stem& b) {
  const double reach = length(a.top - a.foot) + length(b.top - b.foot);
  return length(a.foot - b.foot) <= reach && divides(a.foot, a.top, b.foot, b.top) &&
         divides(b.foot, b.top, a.foot, a.top);
}

/// Of the chains that a disc or a tube begins on: they are its centre.
bool begins_round_centre(const Fabric& fabric, StitchId stitch) {
  const fabric::Round& round = fabric.rounds[fabric.stitches[stitch].round];
  const fabric::Part& part = fabric.parts[round.part];
  return round.kind == pattern::RoundKind::chain && part.rounds > 0 &&
         (fabric.rounds[part.first_round].kind == pattern::RoundKind::round ||
          part.start != fabric::Start::chain);
}

} // namespace

Nearness nearness_of(const Fabric& fabric, const Figure& figure) {
  Nearness found;
  const Tops tops(fabric, figure);
  for (const Ring& ring : figure.rings) {
    if (ring.echo) continue;
    for (Group& group : groups_of(fabric, figure, ring)) {
      if (tops.nearest(group.into, {}, {0, 1}, true).straight > 1e8 ||
          tops.round_of(group.into) == ring.round)
        continue;
      if (group.feet.size() > most_asked_alone)
        group.feet = {middle_of(group.feet)}, group.out = {unit(middle_of(group.out))};
      for (std::size_t k = 0; k < group.feet.size(); ++k) {
        const Distance own = tops.nearest(group.into, group.feet[k], group.out[k], true),
                       other = tops.nearest(group.into, group.feet[k], group.out[k], false);
        const bool near = own.straight < other.straight || own.aside < other.aside;
        ++(near ? found.near : found.not_near);
        if (near) continue;
        found.which += " " + fabric::id_of(fabric, group.into);
      }
    }
  }
  return found;
}

std::string out_of_order(const Fabric& fabric, const Figure& figure) {
  std::string found;
  for (const Ring& ring : figure.rings) {
    std::vector<const Item*> items;
    for (std::uint32_t k = 0; k < ring.items; ++k) {
      const Item& item = figure.items[ring.first_item + k];
      if (item.feet > 0 && !has(fabric, item.first, fabric::joins | fabric::starts_chain))
        items.push_back(&item);
    }
    const bool straight = (figure.form == Form::strip || figure.form == Form::rows) && !ring.edging;
    int ahead = 0, back = 0;
    std::string one, other;
    for (std::size_t k = 0; k + 1 < items.size(); ++k) {
      const Point a = items[k]->foot + items[k]->height / 2 * items[k]->up,
                  b = items[k + 1]->foot + items[k + 1]->height / 2 * items[k + 1]->up;
      const double turn = straight ? a.x - b.x : cross(a, b);
      ++(turn > 0 ? ahead : back);
      (turn > 0 ? one : other) += " " + fabric::id_of(fabric, items[k + 1]->first);
    }
    found += ahead > back ? other : back > 0 && ahead > 0 ? one : "";
  }
  return found;
}

std::string crossing_stems(const Fabric& fabric, const Figure& figure) {
  std::string found;
  const std::vector<Stem> stems = stems_of(fabric, figure);
  for (std::size_t i = 0; i < stems.size(); ++i)
    for (std::size_t j = i + 1; j < stems.size(); ++j)
      if (!are_of_one_leg(stems[i], stems[j]) && cross_each_other(stems[i], stems[j]))
        found +=
            " " + fabric::id_of(fabric, stems[i].stitch) + " x " + fabric::id_of(fabric, stems[j].stitch);
  return found;
}

std::string not_shown_once(const Fabric& fabric, const std::vector<Figure>& figures) {
  std::vector<int> shown(fabric.stitches.size(), 0);
  for (const Figure& figure : figures)
    for (const Ring& ring : figure.rings) {
      if (ring.echo) continue;
      for (std::uint32_t round = ring.round; round <= ring.last_round; ++round) {
        const StitchId on = fabric.rounds[round].first_stitch - fabric.rounds[ring.round].first_stitch;
        for (std::uint32_t k = 0; k < ring.items; ++k) {
          const Item& item = figure.items[ring.first_item + k];
          for (std::uint32_t j = 0; j < item.count; ++j) ++shown[item.first + on + j];
        }
      }
    }
  std::string found;
  for (StitchId i = 0; i < shown.size(); ++i)
    if (shown[i] != 1 && !(shown[i] == 0 && begins_round_centre(fabric, i)))
      found += " " + fabric::id_of(fabric, i) + "=" + std::to_string(shown[i]);
  return found;
}

} // namespace whorl::layout::test
