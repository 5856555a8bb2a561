#include "layout/edging.hpp"

#include "layout/edge_aims.hpp"
#include "layout/ground.hpp"
#include "layout/hold.hpp"
#include "layout/items.hpp"
#include "layout/obstacles.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr double first_gap = 0.26;  ///< from the ink of the rows to the feet of the first round
constexpr double air = 0.12;        ///< between neighbours
constexpr double least_air = 0.10;  ///< what is measured between any two, at the least
constexpr double fullness = 0.97;   ///< least gaps take no more than this of a contour
constexpr double most_growth = 2.5; ///< a round may stand so much further out than it needs to
constexpr double seam = 0.66;       ///< between the last stitch and the first: the pointer and its air
constexpr double pointer_air = 0.18;
constexpr double open_end = 3.2; ///< one whose ends are so far apart does not close
constexpr double far = 1;        ///< air that is not looked at further
constexpr int most_times = 36, patience = 400, most_pushes = 6;
constexpr double push = 0.15;          ///< further out, for all to stand by their places
constexpr double ground_beyond = 0.15; ///< of stitches in another yarn, on all sides

double foot_height(const Course& course, std::uint32_t shape) {
  return foot_of(course, *course.band.shapes[shape]);
}

/// Rounds round an edge while they are laid, from the inmost out.
class Laying {
public:
  Laying(const Fabric& fabric, const Extents& extents, const Page& page, const Footing& footing,
         Straight& drawn)
      : fabric_(fabric), extents_(extents), page_(page), drawn_(drawn),
        aims_(fabric, footing, extents, drawn) {}

  Edged lay(const Edging& edging) {
    if (aims_.outline().corners.empty()) return Edged::nowhere;
    const bool laid = lay_all(edging);
    drawn_.outline = aims_.outline();
    return !laid ? Edged::crowded : all_held_ ? Edged::by_places : Edged::aside;
  }

private:
  bool lay_all(const Edging& edging) {
    lead_ = edging.lead;
    anywhere_ = edging.anywhere;
    inked_ = edging.inked;
    last_ = edging.rounds.back();
    for (const std::uint32_t round : edging.rounds)
      if (!lay(round)) return false;
    return true;
  }

  // One round.

  bool lay(std::uint32_t number) {
    const fabric::Round& round = fabric_.rounds[number];
    Course course;
    std::vector<Item> own = items_of(fabric_, number), behind;
    if (number != last_) {
      const std::size_t kept = own.size() - trailing_chains(fabric_, own);
      behind.assign(own.begin() + static_cast<std::ptrdiff_t>(kept), own.end());
      own.resize(kept);
    }
    const auto chains = static_cast<std::uint32_t>(lead_.size()) + leading_chains(fabric_, own);
    course.items = std::move(lead_);
    course.items.insert(course.items.end(), own.begin(), own.end());
    lead_ = std::move(behind);
    Ring ring;
    ring.round = ring.last_round = number;
    ring.edging = true;
    ring.ink = static_cast<std::uint8_t>(inked_++ % 2);
    course.band = band_of(course.items, extents_, false);
    course.band.label = letter(fabric_, ring, marked_loops(own), false, extents_, page_);
    set_stands(extents_, chains, round.counting_chain != fabric::none, course);
    course.leftward = false;
    if (aims_.first() && !aims_.look_at_first(course, number, anywhere_)) return false;
    if (!settle(number, course)) return false;
    stand(course, ring);
    keep(number, course);
    drawn_.courses.push_back(std::move(course));
    drawn_.figure.rings.push_back(ring);
    return true;
  }

  /// Strings the round, looks at its ink, and gives more room where that is too near, until none is.
  bool settle(std::uint32_t number, Course& course) {
    set_height(0, course);
    const double least = aims_.first()
                             ? std::max(first_gap, air - course.low)
                             : drawn_.courses.back().outer + gap_above(drawn_.courses.back(), course);
    double inner = least;
    meets_ = false;
    pushes_ = 0;
    std::vector<double> more(course.stands.size() + 1, 0);
    for (int i = 0; i < (anywhere_ ? patience : most_times); ++i) {
      set_height(inner, course);
      if (!anywhere_ && inner > least + most_growth) return false;
      if (const double wider = string(course, number, more); wider > 0) {
        inner += wider;
        continue;
      }
      if (!held_ && pushes_ < most_pushes) {
        inner += ++pushes_ < most_pushes ? push : -push * (most_pushes - 1);
        continue;
      }
      const Looked looked = look(course, more);
      if (looked.clear) {
        all_held_ = all_held_ && held_;
        return true;
      }
      inner += looked.nearer;
    }
    return false;
  }

  double middle_of(const Course& course) const { return (course.inner + course.outer) / 2; }

  /// Strings and lays it; how much further out it must stand for that, 0: it is laid.
  double string(Course& course, std::uint32_t number, const std::vector<double>& more) {
    const double middle = middle_of(course), whole = length_of(aims_.outline(), middle);
    std::vector<Aim> aims = aims_.aims_of(course, number, middle);
    closed_ = meets_ || fabric_.rounds[number].joined || closes(whole, aims);
    Strung& strung = course.strung = {};
    const std::size_t stands = course.stands.size();
    double slots = 0, least = 0;
    for (const Stand& stand : course.stands) slots += stand.slot;
    for (std::size_t k = 0; k <= stands; ++k) {
      const double ink = (k > 0 ? course.stands[k - 1].right : 0) + (k < stands ? course.stands[k].left : 0);
      const bool end = k == 0 || k == stands;
      strung.least.push_back(ink + (end ? seam / 2 : air + more[k]));
      least += strung.least.back();
    }
    if (closed_ && least > fullness * whole) return (least / fullness - whole) / (2 * pi) + 0.01;
    const double slot = closed_ ? (whole - seam) / slots : 1;
    for (std::size_t k = 0; k <= stands; ++k) {
      const double wide = (k > 0 ? course.stands[k - 1].slot : 0) + (k < stands ? course.stands[k].slot : 0);
      const bool end = k == 0 || k == stands;
      strung.wanted.push_back(std::max(strung.least[k], slot * wide / 2 + (end ? seam / 2 : 0)));
    }
    aims_.fan_out(course, closed_ ? std::min(slot, 1.0) : slot, middle, aims);
    start_ = start_of(aims, strung);
    strung.length = whole;
    strung.free_ends = !closed_;
    for (const Aim& aim : aims) {
      strung.target.push_back(aim.at ? *aim.at - start_ : 0);
      strung.pull.push_back(aim.at ? aim.pull : 0);
    }
    course.at = relax(strung);
    meets_ = !closed_ && course.at.back() + course.stands.back().right + seam >
                             course.at.front() - course.stands[0].left + whole;
    if (meets_) return string(course, number, more); // it leads all round
    hold(course, middle);
    return 0;
  }

  /// Holds all by their own places; where those at the end have no room there the contour is cut elsewhere,
  /// as far as the first need not move for that, or further where the round would find no room further out.
  void hold(Course& course, double middle) {
    constexpr int most_cuts = 16;
    constexpr double cut_step = 0.12, least_cut = 0.02;
    const std::vector<Foot> feet = feet_of(course);
    Strung free = course.strung;
    for (int i = 0;; ++i) {
      const std::vector<Tops> under = aims_.tops_under(course, middle, start_);
      held_ = hold_feet(feet, under, course.strung, course.at);
      const double slack = pushes_ < most_pushes ? course.at.front() - course.strung.least.front() : cut_step;
      if (held_ || !closed_ || slack < least_cut || i == most_cuts) return;
      const double on = std::clamp(strain_on(feet, under, course.at), -cut_step, std::min(cut_step, slack));
      start_ += on;
      for (double& target : free.target) target -= on;
      course.strung = free;
      course.at = relax(course.strung);
    }
  }

  std::vector<Foot> feet_of(const Course& course) const {
    std::vector<std::vector<double>> feet;
    for (const SymbolExtent* shape : course.band.shapes)
      feet.push_back(on_the_way(shape->feet, aims_.outline().way));
    std::vector<Item> standing;
    std::vector<const std::vector<double>*> from_ray;
    for (const Stand& stand : course.stands) {
      standing.push_back(course.items[stand.item]);
      from_ray.push_back(&feet[course.band.shape_of[stand.item]]);
    }
    return layout::feet_of(fabric_, standing, from_ray);
  }

  static bool closes(double whole, const std::vector<Aim>& aims) {
    double first = 1e300, last = -1e300;
    for (const Aim& aim : aims)
      if (aim.at) first = std::min(first, *aim.at), last = std::max(last, *aim.at);
    return whole - (last - first) < open_end;
  }

  /// Where the contour is cut open: the first stitch stands there as its own place wants it.
  double start_of(const std::vector<Aim>& aims, const Strung& strung) const {
    double before = 0;
    for (std::size_t i = 0; i < aims.size(); ++i) {
      before += strung.wanted[i];
      if (aims[i].at) return *aims[i].at - before;
    }
    return 0;
  }

  // Looking at it.

  struct Looked {
    bool clear = true;
    double nearer = 0; ///< so much further out it must stand
  };

  Looked look(const Course& course, std::vector<double>& more) {
    Figure& figure = drawn_.figure;
    const std::size_t items = figure.items.size(), feet = figure.feet.size(), tips = figure.tips.size();
    Ring ring;
    stand(course, ring);
    std::vector<std::vector<Convex>> inks(course.stands.size());
    std::size_t at = items;
    for (std::size_t i = 0; i < course.stands.size(); ++i)
      for (std::uint32_t j = 0; j < course.stands[i].items; ++j)
        for (Convex& piece : ink_of(extents_, figure.items[at++])) inks[i].push_back(std::move(piece));
    Looked looked;
    for (std::size_t i = 0; i < inks.size(); ++i)
      for (std::size_t j = i + 1; j < inks.size() && j <= i + 2; ++j) {
        const double there = air_between(inks[i], inks[j], far);
        if (there >= least_air) continue;
        for (std::size_t k = i + 1; k <= j; ++k) more[k] += (air - there) / static_cast<double>(j - i);
        looked.clear = false;
      }
    looked.nearer = aims_.first() ? 0 : too_near(items);
    if (looked.nearer > 0) looked.clear = false;
    figure.items.resize(items), figure.feet.resize(feet), figure.tips.resize(tips);
    return looked;
  }

  /// How much the stitches from `first` on are too near to those of the round inside.
  double too_near(std::size_t first) const {
    constexpr double tallest = 4.5;
    const Figure& figure = drawn_.figure;
    const Ring& inside = figure.rings.back();
    double wanted = 0;
    for (std::size_t i = first; i < figure.items.size(); ++i) {
      const std::vector<Convex> own = ink_of(extents_, figure.items[i]);
      for (std::uint32_t j = inside.first_item; j < inside.first_item + inside.items; ++j) {
        const Point d = figure.items[i].foot - figure.items[j].foot;
        if (d.x * d.x + d.y * d.y > tallest * tallest) continue;
        wanted = std::max(wanted, least_air - air_between(own, ink_of(extents_, figure.items[j]), far));
      }
    }
    return wanted > 0 ? wanted + 0.02 : 0;
  }

  // Standing.

  void stand(const Course& course, Ring& ring) const {
    Figure& figure = drawn_.figure;
    ring.first_item = static_cast<std::uint32_t>(figure.items.size());
    ring.items = static_cast<std::uint32_t>(course.items.size());
    ring.inner = course.inner, ring.outer = course.outer, ring.middle = middle_of(course);
    const Hand hand = aims_.outline().way == Way::anticlockwise ? Hand::right : Hand::left;
    for (std::size_t i = 0; i < course.stands.size(); ++i) {
      const Stand& stand = course.stands[i];
      const OnSurround there = on_outline(aims_.outline(), ring.middle, course.at[i] + start_);
      for (std::uint32_t j = 0; j < stand.items; ++j) {
        Item item = course.items[stand.item + j];
        item.at = course.at[i];
        if (stand.column) {
          stand_chain(course, stand, j, there, item);
          continue;
        }
        const std::uint32_t shape = course.band.shape_of[stand.item + j];
        item.foot = there.at + (foot_height(course, shape) - ring.middle) * there.out;
        item.up = there.out;
        item.height = course.band.shapes[shape]->height;
        stand_item(fabric_, *course.band.shapes[shape], item, hand, figure);
      }
    }
  }

  /// A chain of a column stands on end.
  void stand_chain(const Course& course, const Stand& column, std::uint32_t nth, const OnSurround& there,
                   Item item) const {
    Figure& figure = drawn_.figure;
    const double pitch = pitch_of(course, column), up = (nth - (column.items - 1) / 2.0) * pitch;
    const Point along{there.out.y, -there.out.x}, middle = there.at + up * there.out;
    item.height = extent(extents_, item.key).height;
    item.foot = middle - item.height / 2 * along;
    item.up = along;
    item.first_foot = static_cast<std::uint32_t>(figure.feet.size());
    item.first_tip = static_cast<std::uint32_t>(figure.tips.size());
    figure.tips.push_back(middle + pitch / 2 * there.out);
    figure.items.push_back(item);
  }

  /// Notes where its stitches are, for the round outside it, and points to the first.
  void keep(std::uint32_t number, const Course& course) {
    const double middle = middle_of(course);
    aims_.keep(course, number, middle, start_);
    const double tip = start_ + course.at.front() - course.stands.front().left - pointer_air;
    const OnSurround there = on_outline(aims_.outline(), middle, tip);
    drawn_.figure.pointers.push_back({there.at, there.on, pointer_length,
                                      static_cast<std::uint32_t>(drawn_.figure.rings.size()), Tone::ink});
    add_grounds(course);
  }

  std::uint8_t yarn_of(const Course& course, std::size_t stand) const {
    return fabric_.stitches[course.items[course.stands[stand].item].first].yarn;
  }

  /// The ground under stitches side by side in a yarn that is not the main one.
  void add_grounds(const Course& course) {
    const std::size_t stands = course.stands.size();
    for (std::size_t first = 0, end = 0; first < stands; first = end) {
      const std::uint8_t yarn = yarn_of(course, first);
      for (end = first + 1; end < stands && yarn_of(course, end) == yarn;) ++end;
      if (yarn != page_.main_yarn) add_ground(course, first, end, yarn);
    }
  }

  void add_ground(const Course& course, std::size_t first, std::size_t end, std::uint8_t yarn) {
    const double middle = middle_of(course);
    const auto before = [&](std::size_t stand) {
      if (stand == 0) return course.at[0] - course.stands[0].left - ground_beyond;
      const double last = course.at[stand - 1];
      if (stand == course.stands.size()) return last + course.stands[stand - 1].right + ground_beyond;
      return (last + course.at[stand]) / 2;
    };
    const double from = start_ + before(first), to = start_ + before(end);
    const double low = std::max(course.inner - ground_beyond, ground_), high = course.outer + ground_beyond;
    const auto side = [&](double r) {
      return along_outline(aims_.outline(), r, carried(aims_.outline(), middle, from, r),
                           carried(aims_.outline(), middle, to, r));
    };
    std::vector<Point> outline = side(high), back = side(low);
    outline.insert(outline.end(), back.rbegin(), back.rend());
    drawn_.figure.grounds.push_back(
        {straight_curves(outline), yarn, static_cast<std::uint32_t>(drawn_.figure.rings.size())});
    if (end == course.stands.size()) ground_ = high - 0.015;
  }

  const Fabric& fabric_;
  const Extents& extents_;
  const Page& page_;
  Straight& drawn_;
  EdgeAims aims_;
  std::vector<Item> lead_;
  std::uint32_t inked_ = 0;
  std::uint32_t last_ = 0; ///< the round that is worked last
  bool closed_ = true;
  bool meets_ = false; ///< the ends of the round being laid would overlap if they were free
  int pushes_ = 0;
  bool anywhere_ = false; ///< however far out there is room
  bool held_ = true;      ///< all stitches of the round being laid are by their own places
  bool all_held_ = true;
  double start_ = 0;  ///< where the round being laid is cut open
  double ground_ = 0; ///< how far out there is one
};

} // namespace

Edged add_edging(const Fabric& fabric, const Extents& extents, const Page& page, const Edging& edging,
                 const Footing& footing, Straight& drawn) {
  return Laying(fabric, extents, page, footing, drawn).lay(edging);
}

} // namespace whorl::layout
