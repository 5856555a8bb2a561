#include "layout/edge_aims.hpp"

#include "layout/items.hpp"
#include "layout/reach.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::On;
using fabric::StitchId;

constexpr double loose = 0.6;       ///< an outline may stand so far from a row's end to have fewer corners
constexpr double furthest = 2.2;    ///< … and what is worked into so far from it
constexpr double corner_near = 1.5; ///< a group so near to a corner stands at it
constexpr double centre_reach = 0.67;
constexpr double plain_pull = 5, corner_pull = 40;

std::vector<Point> ink_points(const Extents& extents, const Figure& figure) {
  std::vector<Point> points;
  const auto reach = figure.centre == Centre::nothing ? 0 : centre_reach;
  for (const Point corner : {Point{-reach, -reach}, {reach, -reach}, {reach, reach}, {-reach, reach}})
    if (reach > 0) points.push_back(corner);
  Reaches reaches;
  for (const Item& item : figure.items) {
    const SymbolExtent& shape = extent(extents, item.key);
    const Reach& ink = reaches.of(shape);
    const double half = std::max(0 - ink.low.x, ink.high.x); // no symbol leans an outline to one side
    for (const Point corner :
         {Point{-half, ink.low.y}, {half, ink.low.y}, {half, ink.high.y}, {-half, ink.high.y}})
      points.push_back(stood(item, corner));
  }
  return points;
}

/// A left hand's is the mirror image.
Surround outline_of(const Extents& extents, const Figure& figure) {
  std::vector<Point> points = ink_points(extents, figure);
  if (!figure.clockwise) return outline_round(points, loose);
  for (Point& p : points) p.x = 0 - p.x;
  Surround outline = outline_round(points, loose);
  for (Point& p : outline.corners) p.x = 0 - p.x;
  std::reverse(outline.corners.begin(), outline.corners.end());
  return outline;
}

/// Places one after the other, however often that leads round.
void unroll(double whole, std::vector<Aim>& aims) {
  const double* last = nullptr;
  for (Aim& aim : aims) {
    if (!aim.at) continue;
    if (last != nullptr) *aim.at -= whole * std::round((*aim.at - *last) / whole);
    last = &*aim.at;
  }
}

} // namespace

EdgeAims::EdgeAims(const Fabric& fabric, const Footing& footing, const Extents& extents, const Straight& rows)
    : fabric_(fabric), footing_(footing), drawn_(rows), rows_(rows.courses.size()),
      outline_(outline_of(extents, rows.figure)) {}

const Course* EdgeAims::course_of(std::uint32_t round, bool chain) const {
  for (std::size_t i = 0; i < rows_; ++i)
    if (drawn_.figure.rings[i].round == round && drawn_.figure.rings[i].chain == chain)
      return &drawn_.courses[i];
  return nullptr;
}

std::optional<Spot> EdgeAims::end_of_row(const fabric::Place& place) const {
  const Course* row = course_of(place.of, false);
  if (row == nullptr || row->stands.empty()) return std::nullopt;
  const bool begun = place.loops == stitch::front;
  const std::size_t i = begun ? 0 : row->stands.size() - 1;
  const Stand& stand = row->stands[i];
  const double x = stand_at(*row, i);
  const bool right = row->leftward == begun;
  return Spot{{right ? x + stand.right : x - stand.left, (row->inner + row->outer) / 2},
              {right ? 1.0 : -1.0, 0}};
}

std::optional<Spot> EdgeAims::of_stitch(StitchId stitch) const {
  if (stitch >= fabric_.stitches.size()) return std::nullopt;
  const std::uint32_t round = fabric_.stitches[stitch].round;
  const bool chain = fabric_.rounds[round].kind == pattern::RoundKind::chain;
  const Point up{0, chain ? -1.0 : 1.0};
  if (chain && drawn_.figure.centre == Centre::second_chain) return Spot{{0, 0}, up};
  const Course* course = course_of(round, chain);
  const std::optional<double> x = footing_.at(stitch);
  if (course == nullptr || !x) return std::nullopt;
  return Spot{{*x, chain ? course->low : course->outer}, up};
}

/// The first and the last chain of a space, or the stitches beside a gap.
std::pair<StitchId, StitchId> EdgeAims::sides_of(const fabric::Place& place) const {
  if (is_gap(place)) return {before_gap(fabric_, place), place.of};
  const fabric::Arch& arch = fabric_.arches[place.of];
  return {arch.first_chain, arch.first_chain + arch.count - 1};
}

std::optional<Spot> EdgeAims::spot_of(const fabric::Place& place) const {
  if (place.what == On::ring) return Spot{{0, 0}, {0, -1}};
  if (place.what == On::row_end) return end_of_row(place);
  if (is_stitch(place)) return of_stitch(place.of);
  const bool chains = place.what == On::space && place.of < fabric_.arches.size();
  if (!chains && !is_gap(place)) return std::nullopt;
  const auto [one, other] = sides_of(place);
  const auto first = of_stitch(one), last = of_stitch(other);
  if (!first || !last) return std::nullopt;
  return Spot{0.5 * (first->at + last->at), first->up};
}

/// Where on the contour a place of the round before is.
std::optional<double> EdgeAims::place_of(const fabric::Place& place, double middle) const {
  const auto known = [&](StitchId stitch) -> std::optional<double> {
    if (stitch < first_before_ || stitch - first_before_ >= before_.size()) return std::nullopt;
    return before_[stitch - first_before_];
  };
  std::optional<double> at;
  if (is_stitch(place)) at = known(place.of);
  const bool chains = place.what == On::space && place.of < fabric_.arches.size();
  if (chains || is_gap(place)) {
    const auto [one, other] = sides_of(place);
    const auto first = known(one), last = known(other);
    if (first && last) at = (*first + *last) / 2;
  }
  return at ? std::optional(carried(outline_, middle_before_, *at, middle)) : std::nullopt;
}

bool EdgeAims::is_own(const fabric::Place& place, std::uint32_t round) const {
  return is_stitch(place) && place.of < fabric_.stitches.size() && fabric_.stitches[place.of].round == round;
}

/// The mean of what an item's legs go into; false where one of them goes where nothing is.
bool EdgeAims::aim_in_rows(const Item& item, std::uint32_t round, std::optional<Spot>& aim) const {
  Spot sum;
  int many = 0;
  for (const fabric::Leg& leg : legs_of(fabric_, item)) {
    if (is_own(leg.into, round)) continue;
    const std::optional<Spot> spot = spot_of(leg.into);
    if (!spot) return false;
    sum = {sum.at + spot->at, spot->up}, ++many;
  }
  if (many > 0) aim = Spot{(1.0 / many) * sum.at, sum.up};
  return true;
}

/// Which way the first round goes.
void EdgeAims::set_way() {
  Point centre;
  for (const Point corner : outline_.corners)
    centre = centre + (1.0 / static_cast<double>(outline_.corners.size())) * corner;
  double sum = 0;
  const Point* last = nullptr;
  for (const std::optional<Spot>& spot : spots_) {
    if (!spot) continue;
    const Point b = spot->at - centre;
    if (last != nullptr) sum += (last->x - centre.x) * b.y - (last->y - centre.y) * b.x;
    last = &spot->at;
  }
  outline_.way = sum >= 0 ? Way::anticlockwise : Way::clockwise;
}

NearSurround EdgeAims::met(double r, const Spot& spot) const {
  return met_outline(outline_, r, spot.at, spot.up);
}

bool EdgeAims::look_at_first(const Course& course, std::uint32_t round, bool anywhere) {
  spots_.clear();
  for (const Stand& stand : course.stands) {
    spots_.emplace_back();
    if (!stand.column && !aim_in_rows(course.items[stand.item], round, spots_.back())) return false;
    if (!anywhere && spots_.back() && met(0, *spots_.back()).away > furthest) return false;
  }
  EdgeAims::set_way();
  return std::any_of(spots_.begin(), spots_.end(), [](const auto& p) { return p.has_value(); });
}

std::vector<Aim> EdgeAims::aims_of(const Course& course, std::uint32_t round, double middle) const {
  std::vector<Aim> aims;
  for (std::size_t i = 0; i < course.stands.size(); ++i) {
    Aim aim;
    if (first_)
      aim.at = spots_[i] ? std::optional(met(middle, *spots_[i]).at) : std::nullopt;
    else if (!course.stands[i].column)
      aim.at = aim_before(course.items[course.stands[i].item], round, middle);
    aims.push_back(aim);
  }
  unroll(length_of(outline_, middle), aims);
  return aims;
}

std::optional<double> EdgeAims::aim_before(const Item& item, std::uint32_t round, double middle) const {
  double sum = 0;
  int many = 0;
  std::optional<double> first;
  const double whole = length_of(outline_, middle);
  for (const fabric::Leg& leg : legs_of(fabric_, item)) {
    if (is_own(leg.into, round)) continue;
    std::optional<double> at = place_of(leg.into, middle);
    if (!at) continue;
    if (first) at = *at - whole * std::round((*at - *first) / whole);
    if (!first) first = at;
    sum += *at, ++many;
  }
  return many > 0 ? std::optional(sum / many) : std::nullopt;
}

/// Stands that go into one place side by side.
bool EdgeAims::same_place(const Course& course, std::size_t a, std::size_t b) const {
  if (course.stands[a].column || course.stands[b].column) return false;
  const fabric::Legs p = legs_of(fabric_, course.items[course.stands[a].item]),
                     q = legs_of(fabric_, course.items[course.stands[b].item]);
  return p.size() > 0 && q.size() > 0 && p.begin()->into == q.begin()->into;
}

/// The last stand that goes into the place of stand `first`, chains between them being none.
std::size_t EdgeAims::last_in_place(const Course& course, std::size_t first) const {
  std::size_t last = first;
  for (std::size_t i = first + 1; i < course.stands.size(); ++i) {
    if (same_place(course, first, i))
      last = i;
    else if (legs_of(fabric_, course.items[course.stands[i].item]).size() > 0)
      break;
  }
  return last;
}

/// What shares a place stands about it; at a corner, about that.
void EdgeAims::fan_out(const Course& course, double slot, double middle, std::vector<Aim>& aims) const {
  for (std::size_t first = 0; first < aims.size();) {
    if (!aims[first].at) {
      ++first;
      continue;
    }
    const std::size_t last = last_in_place(course, first);
    double wide = 0;
    for (std::size_t i = first; i <= last; ++i) wide += course.stands[i].slot * slot;
    const bool corner = first_ && EdgeAims::is_corner_group(course, first, last) &&
                        stands_at_corner(first, middle, aims[first]);
    const double base = *aims[first].at;
    double reached = -wide / 2;
    for (std::size_t i = first; i <= last; ++i) {
      const double own = course.stands[i].slot * slot;
      if (aims[i].at) aims[i] = {base + reached + own / 2, corner ? corner_pull : plain_pull};
      reached += own;
    }
    first = last + 1;
  }
}

std::uint32_t EdgeAims::stitches_at(const Course& course, std::size_t stand) const {
  return stand < course.stands.size() && !course.stands[stand].column
             ? course.items[course.stands[stand].item].count
             : 0;
}

/// Two in one place are one where those beside them are not as many.
bool EdgeAims::is_corner_group(const Course& course, std::size_t first, std::size_t last) const {
  if (last > first || stitches_at(course, first) > 2) return true;
  const bool alone = first == 0 || stitches_at(course, first - 1) < 2;
  return EdgeAims::stitches_at(course, first) == 2 && alone && stitches_at(course, last + 1) < 2;
}

bool EdgeAims::stands_at_corner(std::size_t stand, double middle, Aim& aim) const {
  const NearSurround corner = near_corner(outline_, middle, spots_[stand]->at);
  if (corner.away > corner_near) return false;
  const double whole = length_of(outline_, middle);
  aim.at = corner.at - whole * std::round((corner.at - *aim.at) / whole);
  return true;
}

/// The heads of a row, or the chains of a starting chain, square below or above the outline.
std::vector<Head> EdgeAims::heads_in_rows(std::uint32_t round, double middle) const {
  std::vector<Head> heads;
  for (const Ring& ring : drawn_.figure.rings) {
    if (ring.edging || round < ring.round || round > ring.last_round) continue;
    const StitchId on = fabric_.rounds[round].first_stitch - fabric_.rounds[ring.round].first_stitch;
    for (std::uint32_t k = 0; k < ring.items; ++k) {
      const Item& item = drawn_.figure.items[ring.first_item + k];
      for (std::uint32_t j = 0; j < item.count; ++j)
        heads.push_back(
            {met(middle, {drawn_.figure.tips[item.first_tip + j], {0, ring.chain ? -1.0 : 1.0}}).at, 1,
             item.first + on + j, k});
    }
  }
  return heads;
}

std::vector<Tops> EdgeAims::tops_under(const Course& course, double middle, double start) const {
  const double whole = length_of(outline_, middle);
  std::vector<Tops> tops;
  const auto add = [&](std::vector<Head> heads) {
    for (Head& head : heads) head.at -= start;
    tops.emplace_back(fabric_, std::move(heads), whole);
  };
  if (!first_) {
    std::vector<Head> heads = heads_before_;
    for (Head& head : heads) head.at = carried(outline_, middle_before_, head.at, middle);
    add(std::move(heads));
    return tops;
  }
  std::vector<std::uint32_t> rounds;
  for (const Item& item : course.items)
    for (const fabric::Leg& leg : legs_of(fabric_, item))
      if (is_stitch(leg.into) && leg.into.of < fabric_.stitches.size())
        rounds.push_back(fabric_.stitches[leg.into.of].round);
  std::sort(rounds.begin(), rounds.end());
  rounds.erase(std::unique(rounds.begin(), rounds.end()), rounds.end());
  for (const std::uint32_t round : rounds) add(heads_in_rows(round, middle));
  return tops;
}

void EdgeAims::keep(const Course& course, std::uint32_t number, double middle, double start) {
  const fabric::Round& round = fabric_.rounds[number];
  first_ = false;
  first_before_ = round.first_stitch;
  before_.assign(round.count, std::nullopt);
  heads_before_.clear();
  middle_before_ = middle;
  const auto put = [&](StitchId stitch, double at) {
    if (stitch >= first_before_ && stitch - first_before_ < before_.size())
      before_[stitch - first_before_] = at;
  };
  for (std::size_t i = 0; i < course.stands.size(); ++i)
    for (std::uint32_t k = 0; k < course.stands[i].items; ++k) {
      const Item& item = course.items[course.stands[i].item + k];
      const SymbolExtent& shape = *course.band.shapes[course.band.shape_of[course.stands[i].item + k]];
      const std::vector<double> tips = on_the_way(shape.tips, outline_.way);
      for (std::uint32_t j = 0; j < item.count; ++j) {
        put(item.first + j, start + course.at[i] + j - (item.count - 1) / 2.0);
        const double aside = course.stands[i].column ? 0 : tips[std::min<std::size_t>(j, tips.size() - 1)];
        heads_before_.push_back({start + course.at[i] + aside, 1, item.first + j, i});
      }
    }
}

} // namespace whorl::layout
