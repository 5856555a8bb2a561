#include "layout/lace_ground.hpp"

#include "layout/contour.hpp"
#include "layout/direction.hpp"
#include "layout/heads.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr int places = 144;                     ///< round a ring, at which its ink is looked at
constexpr double along_ink = 0.2;               ///< between points of an outline
constexpr double beyond = 0.15;                 ///< of the first and last ring
constexpr double least = 0.05, furthest = 0.45; ///< from the ink
constexpr double overlap = 0.015;               ///< else hairlines show between two grounds

using Profile = std::vector<double>; ///< an r for each place

/// How far in and out the ink of a ring reaches.
struct Reaches {
  Profile low = Profile(places, 1e9), high = Profile(places, -1e9);
};

int wrapped(int place) { return ((place % places) + places) % places; }

/// Places without ink lie between those beside them.
void bridge(Profile& profile) {
  const auto known = [&](int k) { return std::abs(profile[static_cast<std::size_t>(wrapped(k))]) < 1e8; };
  const Profile found = profile;
  int first = 0;
  while (first < places && !known(first)) ++first;
  if (first == places) return;
  for (int from = first; from < first + places;) {
    int to = from + 1;
    while (std::abs(found[static_cast<std::size_t>(wrapped(to))]) > 1e8) ++to;
    const double a = found[static_cast<std::size_t>(wrapped(from))],
                 b = found[static_cast<std::size_t>(wrapped(to))];
    for (int k = from + 1; k < to; ++k)
      profile[static_cast<std::size_t>(wrapped(k))] = a + (b - a) * (k - from) / (to - from);
    from = to;
  }
}

/// Each place as far as the furthest beside it, then rounded off.
Profile eased(const Profile& profile, bool outward) {
  Profile wide = profile, smooth = profile;
  for (int k = 0; k < places; ++k)
    for (int d = -2; d <= 2; ++d) {
      const double near = profile[static_cast<std::size_t>(wrapped(k + d))];
      double& own = wide[static_cast<std::size_t>(k)];
      own = outward ? std::max(own, near) : std::min(own, near);
    }
  for (int k = 0; k < places; ++k) {
    double sum = 0;
    for (int d = -2; d <= 2; ++d) sum += wide[static_cast<std::size_t>(wrapped(k + d))];
    smooth[static_cast<std::size_t>(k)] = sum / 5;
  }
  return smooth;
}

/// Stitches of one ring in one yarn, side by side.
struct Patch {
  std::uint32_t first = 0, last = 0;
  std::uint8_t yarn = 0;
};

class Laying {
public:
  Laying(const Fabric& fabric, const Extents& extents, std::uint8_t main_yarn, Lace& lace)
      : fabric_(fabric), extents_(extents), main_yarn_(main_yarn), figure_(lace.figure),
        contour_(lace.contour) {
    for (const Ring& ring : figure_.rings) reaches_.push_back(reaches_of(ring));
    for (std::uint32_t i = 0; i < figure_.rings.size(); ++i) grounded_.push_back(has_ground(i) ? 1 : 0);
    Profile& inmost = reaches_.front().low; // round the middle
    inmost.assign(places, *std::min_element(inmost.begin(), inmost.end()));
  }

  void lay() {
    for (std::uint32_t i = 0; i < figure_.rings.size(); ++i)
      for (const Patch& patch : patches_of(figure_.rings[i]))
        if (!figure_.rings[i].echo && !figure_.rings[i].chain && patch.yarn != main_yarn_) lay(i, patch);
  }

private:
  const Item& item(const Ring& ring, std::uint32_t place) const {
    return figure_.items[ring.first_item + place];
  }

  std::uint8_t yarn_of(const Item& one) const { return fabric_.stitches[one.first].yarn; }

  /// A join stands on the ring inside.
  bool joins(const Item& one) const { return (fabric_.stitches[one.first].flags & fabric::joins) != 0; }

  Reaches reaches_of(const Ring& ring) const {
    Reaches reaches;
    for (std::uint32_t k = 0; k < ring.items; ++k)
      if (!joins(item(ring, k)))
        for (const Convex& piece : ink_of(extents_, item(ring, k))) reach(piece, reaches);
    bridge(reaches.low), bridge(reaches.high);
    return {eased(reaches.low, false), eased(reaches.high, true)};
  }

  void reach(const Convex& piece, Reaches& reaches) const {
    for (std::size_t i = 0; i < piece.size(); ++i) {
      const Point from = piece[i], to = piece[(i + 1) % piece.size()];
      const int steps = 1 + static_cast<int>(length(to - from) / along_ink);
      for (int k = 0; k < steps; ++k) {
        const Spotted spot = spot_of(contour_, from + (static_cast<double>(k) / steps) * (to - from));
        const auto place = static_cast<std::size_t>(wrapped(static_cast<int>(spot.at * places)));
        reaches.low[place] = std::min(reaches.low[place], spot.r);
        reaches.high[place] = std::max(reaches.high[place], spot.r);
      }
    }
  }

  std::vector<Patch> patches_of(const Ring& ring) const {
    std::vector<Patch> patches;
    for (std::uint32_t k = 0; k < ring.items; ++k) {
      if (joins(item(ring, k))) continue;
      const std::uint8_t yarn = yarn_of(item(ring, k));
      if (!patches.empty() && patches.back().yarn == yarn)
        patches.back().last = k;
      else
        patches.push_back({k, k, yarn});
    }
    return patches;
  }

  /// Grounds of both meet half-way.
  bool meet(std::uint32_t inside) const { return grounded_[inside] != 0 && grounded_[inside + 1] != 0; }

  bool has_ground(std::uint32_t ring) const {
    const std::vector<Patch> patches = patches_of(figure_.rings[ring]);
    return !figure_.rings[ring].echo && std::all_of(patches.begin(), patches.end(),
                                                    [this](const Patch& p) { return p.yarn != main_yarn_; });
  }

  double outer(std::uint32_t ring, std::size_t place) const {
    const double own = reaches_[ring].high[place];
    if (ring + 1 == reaches_.size()) return own + beyond;
    const double half = (reaches_[ring + 1].low[place] - own) / 2;
    return own + (meet(ring) ? std::max(half, least) + overlap : std::clamp(half, least, furthest));
  }

  double inner(std::uint32_t ring, std::size_t place) const {
    const double own = reaches_[ring].low[place];
    if (ring == 0) return std::max(least, own - beyond);
    const double half = (own - reaches_[ring - 1].high[place]) / 2;
    return own - (meet(ring - 1) ? std::max(half, least) : std::clamp(half, least, furthest));
  }

  double place_of(const Item& one) const { return spot_of(contour_, one.foot + one.height / 2 * one.up).at; }

  /// Half-way between an item and that before it, round the ring.
  double before(const Ring& ring, const std::vector<Patch>& patches, std::size_t patch) const {
    if (is_open() && patch % patches.size() == 0) return end(ring, patch > 0);
    const Patch &own = patches[patch % patches.size()],
                &other = patches[(patch + patches.size() - 1) % patches.size()];
    const double at = place_of(item(ring, own.first));
    return (at + turned_near(place_of(item(ring, other.last)), at)) / 2;
  }

  bool is_open() const { return figure_.form == Form::sector; }

  /// Half a stitch before the first item of a row, or behind the last.
  double end(const Ring& ring, bool last) const {
    constexpr double half_stitch = 0.5;
    const Item& one = item(ring, last ? ring.items - 1 : 0);
    const double far = half_stitch / length_of(contour_, ring.middle);
    return turned_near(place_of(one), 0) + (last == ring.against ? -far : far);
  }

  void lay(std::uint32_t number, const Patch& patch) {
    const Ring& ring = figure_.rings[number];
    const std::vector<Patch> patches = patches_of(ring);
    double from = 0, to = 1;
    if (patches.size() > 1 || is_open()) {
      const auto own =
          static_cast<std::size_t>(std::find_if(patches.begin(), patches.end(),
                                                [&](const Patch& p) { return p.first == patch.first; }) -
                                   patches.begin());
      from = before(ring, patches, own), to = before(ring, patches, own + 1);
      if (ring.against) std::swap(from, to);
      while (to <= from) to += 1;
      while (to > from + 1) to -= 1;
    }
    Ground ground;
    ground.yarn = patch.yarn;
    ground.ring = number;
    ground.outline = outline(number, from, to);
    figure_.grounds.push_back(std::move(ground));
  }

  std::vector<Point> outline(std::uint32_t ring, double from, double to) const {
    std::vector<Point> side, back;
    const int first = static_cast<int>(std::floor(from * places)) + 1,
              last = static_cast<int>(std::ceil(to * places)) - 1;
    const auto add = [&](double at) {
      const auto place = static_cast<std::size_t>(wrapped(static_cast<int>(std::floor(at * places))));
      side.push_back(point_on(contour_, outer(ring, place), at));
      back.push_back(point_on(contour_, inner(ring, place), at));
    };
    add(from);
    for (int k = first; k <= last; ++k) add((k + 0.5) / places);
    add(to - 1e-9);
    std::vector<Point> points{side.front()};
    for (std::size_t i = 1; i < side.size(); ++i) line_to(side[i], points);
    for (std::size_t i = back.size(); i-- > 0;) line_to(back[i], points);
    line_to(side.front(), points);
    return points;
  }

  const Fabric& fabric_;
  const Extents& extents_;
  std::uint8_t main_yarn_;
  Figure& figure_;
  const Rounded& contour_;
  std::vector<Reaches> reaches_;
  std::vector<char> grounded_; ///< rings all of whose stitches have a ground
};

} // namespace

void add_lace_grounds(const Fabric& fabric, const Extents& extents, std::uint8_t main_yarn, Lace& lace) {
  Laying(fabric, extents, main_yarn, lace).lay();
}

} // namespace whorl::layout
