#include "layout/ring.hpp"

#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

constexpr double clearance = 0.30;   ///< heads of a ring to feet of the next
constexpr double loop_gap = 0.46;    ///< more where loop marks stand between
constexpr double break_gap = 0.85;   ///< more where a break line stands between
constexpr double break_reach = 0.26; ///< of its zigzags, on either side of it
constexpr double air_along = 0.12;   ///< between neighbours of a ring
constexpr double least_air = 0.06;   ///< between any two inks
constexpr double air_across = 0.08;  ///< between the inks of a ring and the next
constexpr double label_air = 0.10;   ///< between labels
constexpr double least_slot = 0.96;
constexpr double fullness = 0.985; ///< least gaps take no more than this of a ring
constexpr double step = 0.02;      ///< a ring is pushed out by whole steps

constexpr double tall_height = 1.2;    ///< a ring that is taller lets its stitches lean in over the label
constexpr double least_channel = 0.30; ///< half of what stays clear there
constexpr double least_inner = 1.0;    ///< feet of a first ring of tall stitches

double middle_of(double inner, double height) { return inner + (height > tall_height ? 0.6 : 0.5) * height; }

double gap_before(const Band& inside, const Band& ring, const Turn& turn) {
  const bool marks_between = turn.inward ? inside.loop_marks : ring.loop_marks;
  return clearance + (marks_between ? loop_gap : 0) + (inside.break_outside ? break_gap : 0);
}

double foot_radius(const SymbolExtent& shape, double inner, double height, const Turn& turn) {
  const double aside = (height - shape.height) / 2;
  return turn.inward ? inner + height - aside : inner + aside;
}

/// Height of the label's middle: that of the ring where the pointer lies.
double label_height(const Size& size) {
  const double x = size.gutter / 2 - gutter_air - pointer_length / 2;
  return std::sqrt(std::max(0.0, size.middle * size.middle - x * x));
}

double label_bottom(const Band& band, double y) {
  const double first = y - letter_height * number_size / 2;
  return band.label.second < 0 ? std::min(first, y + band.label.second - letter_height * second_size / 2)
                               : first;
}

double label_top(const Band& band, double y) {
  const double first = y + letter_height * number_size / 2;
  return band.label.second > 0 ? std::max(first, y + band.label.second + letter_height * second_size / 2)
                               : first;
}

/// Half the width that label and pointer take, with their air.
double label_half(const Size& size) { return size.gutter / 2 - gutter_air + air_along; }

/// The angle at which the corner of a label stands, seen from the centre.
double corner_angle(double half, double y) { return arc_sine(half / std::sqrt(half * half + y * y)); }

/// Tries one radius after another for a ring until everything in it has room.
class Fitting {
public:
  Fitting(const Band& band, const Turn& turn, const Size& inside)
      : band_(band), turn_(turn), inside_(inside) {
    size_.gutter = std::max(inside.gutter, band.label.width + pointer_room + 2 * gutter_air);
    size_.tall = band.height > tall_height;
  }

  Size fit(double inner) {
    if (!fits(inner)) push(inner);
    size_.pushed = size_.inner - inner;
    return size_;
  }

private:
  void push(double inner) {
    std::int64_t low = 0, high = 1;
    while (!fits(inner + step * static_cast<double>(high)) && high < (std::int64_t{1} << 40))
      low = high, high *= 2;
    while (low + 1 < high) {
      const std::int64_t half = low + (high - low) / 2;
      (fits(inner + step * static_cast<double>(half)) ? high : low) = half;
    }
    fits(inner + step * static_cast<double>(high));
  }

  bool fits(double inner) {
    size_.inner = inner;
    size_.outer = inner + band_.height;
    size_.middle = middle_of(inner, band_.height);
    if (size_.gutter / 2 >= 0.9 * size_.middle || inner <= 0.1) return false;
    size_.half_gutter = size_.middle * arc_sine(size_.gutter / 2 / size_.middle);
    size_.slot = (length() - 2 * size_.half_gutter) / std::max(1.0, band_.slots);
    return size_.slot >= least_slot && label_fits() && wedges_fit();
  }

  double length() const { return 2 * pi * size_.middle; }

  bool label_fits() {
    size_.label_y = label_height(size_);
    size_.label_top = label_top(band_, size_.label_y);
    const double bottom = label_bottom(band_, size_.label_y);
    // a channel wider than that of the ring inside runs above that ring's stitches
    const bool above = size_.gutter > inside_.gutter || inside_.tall;
    return bottom >= inside_.label_top + label_air && (!above || bottom >= inside_.high + least_air);
  }

  bool wedges_fit() {
    const double channel = size_.tall ? least_channel : label_half(size_);
    size_.wedges.clear();
    size_.low = size_.inner, size_.high = size_.outer;
    double angles = 0;
    for (std::size_t i = 0; i < band_.shapes.size(); ++i) {
      const double foot = foot_radius(*band_.shapes[i], size_.inner, band_.height, turn_);
      size_.wedges.push_back(wedge_of(*band_.shapes[i], foot, channel, turn_));
      Wedge& wedge = size_.wedges.back();
      if (!wedge.fits) return false;
      if (size_.tall) clear_labels(wedge);
      size_.low = std::min(size_.low, wedge.low);
      size_.high = std::max(size_.high, wedge.high);
      angles += (wedge.before + wedge.after) * band_.how_many[i];
    }
    size_.air = std::max(air_along, least_air * size_.middle / size_.low);
    return size_.low >= inside_.high + air_across &&
           (angles + gutter_angles()) * size_.middle + air() <= room();
  }

  /// A tall stitch passes the lower corners of its own label, and the upper ones of the label inside.
  void clear_labels(Wedge& wedge) const {
    double edge = corner_angle(label_half(size_), label_bottom(band_, size_.label_y) - air_along);
    const double half = label_half(inside_), top = inside_.label_top + air_along;
    const bool reached = inside_.gutter > 0 && half * half + top * top > wedge.low * wedge.low;
    if (reached) edge = std::max(edge, corner_angle(half, top));
    wedge.from_gutter = std::max(wedge.from_gutter, wedge.before + edge);
    wedge.to_gutter = std::max(wedge.to_gutter, wedge.after + edge);
  }

  /// Of the gutter and its two neighbours' sides toward it, less what was counted of these.
  double gutter_angles() const {
    if (band_.shape_of.empty()) return 0;
    const Wedge &first = size_.wedges[band_.shape_of.front()], &last = size_.wedges[band_.shape_of.back()];
    return first.from_gutter - first.before + last.to_gutter - last.after;
  }

  double air() const { return size_.air * static_cast<double>(band_.shape_of.size()); }
  double room() const { return fullness * length(); }

  const Band& band_;
  Turn turn_;
  const Size& inside_;
  Size size_;
};

Size centre_size(const Core& core) {
  Size size;
  size.high = size.label_top = core.clear;
  return size;
}

void add_break(const Band& band, Size& size) {
  if (band.break_outside)
    size.high = std::max(size.high, size.outer + (clearance + break_gap) / 2 + break_reach);
}

double first_inner(const Core& core, double height) {
  return std::max(core.radius - height / 2, std::min(least_inner, core.radius - 0.4));
}

std::vector<Size> size_from(const std::vector<Band>& bands, const Core& core, const Turn& turn) {
  std::vector<Size> sizes;
  sizes.reserve(bands.size());
  for (std::size_t i = 0; i < bands.size(); ++i) {
    const Size centre = centre_size(core);
    const double inner = i == 0 ? first_inner(core, bands[i].height)
                                : sizes.back().outer + gap_before(bands[i - 1], bands[i], turn);
    sizes.push_back(Fitting(bands[i], turn, i == 0 ? centre : sizes.back()).fit(inner));
    add_break(bands[i], sizes.back());
  }
  return sizes;
}

double pushed(const std::vector<Size>& sizes) {
  double sum = 0;
  for (std::size_t i = 1; i < sizes.size(); ++i) sum += sizes[i].pushed;
  return sum;
}

} // namespace

namespace {

constexpr double echo_air = 0.20;

double slot_of(const SymbolExtent& shape, const Item& item, bool echo) {
  return echo ? std::min(shape.slot, std::max<double>(item.count, shape.width + echo_air)) : shape.slot;
}

std::size_t shape_in(Band& band, const SymbolExtent& shape) {
  std::size_t at = 0;
  while (at < band.shapes.size() && band.shapes[at] != &shape) ++at;
  if (at == band.shapes.size())
    band.shapes.push_back(&shape), band.how_many.push_back(0), band.slot.push_back(0);
  return at;
}

} // namespace

Band band_of(const std::vector<Item>& items, const Extents& extents, bool echo) {
  Band band;
  for (const Item& item : items) {
    const SymbolExtent& shape = extent(extents, item.key);
    const std::size_t at = shape_in(band, shape);
    band.shape_of.push_back(static_cast<std::uint32_t>(at));
    ++band.how_many[at];
    band.slot[at] = slot_of(shape, item, echo);
    band.height = std::max(band.height, shape.height);
    band.slots += band.slot[at];
    band.loop_marks = band.loop_marks || shape.below > 0;
  }
  return band;
}

Wedge wedge_of(const SymbolExtent& shape, double foot, double channel, const Turn& turn) {
  Wedge wedge;
  wedge.foot = wedge.low = wedge.high = foot;
  const double ahead = turn.hand == Hand::right ? -1 : 1;
  for (const Convex& piece : shape.ink)
    for (const Point& point : piece) {
      const double across = turn.inward ? foot - point.y : foot + point.y;
      const double radius = std::sqrt(across * across + point.x * point.x);
      if (across < 0.1 || channel >= radius) return wedge.fits = false, wedge;
      const double angle = arc_sine(ahead * point.x / radius), edge = arc_sine(channel / radius);
      wedge.before = std::max(wedge.before, -angle);
      wedge.after = std::max(wedge.after, angle);
      wedge.from_gutter = std::max(wedge.from_gutter, edge - angle);
      wedge.to_gutter = std::max(wedge.to_gutter, edge + angle);
      wedge.low = std::min(wedge.low, across);
      wedge.high = std::max(wedge.high, radius);
    }
  return wedge;
}

std::vector<Size> size_rings(const std::vector<Band>& bands, const Core& core, bool open, const Turn& turn) {
  Core grown = core;
  std::vector<Size> sizes = size_from(bands, grown, turn);
  for (int i = 0; open && i < 20 && pushed(sizes) > step / 2; ++i) {
    grown.radius = sizes.front().inner + bands.front().height / 2 + pushed(sizes);
    sizes = size_from(bands, grown, turn);
  }
  return sizes;
}

} // namespace whorl::layout
