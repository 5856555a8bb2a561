#include "layout/ring.hpp"

#include "layout/break_line.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

constexpr double clearance = 0.30;   ///< heads of a ring to feet of the next
constexpr double loop_gap = 0.46;    ///< more where loop marks stand between
constexpr double free_gap = 0.72;    ///< more where loops for another part stand between
constexpr double break_gap = 0.85;   ///< more where a break line stands between
constexpr double air_along = 0.12;   ///< between neighbours of a ring
constexpr double least_air = 0.06;   ///< between any two inks
constexpr double air_across = 0.08;  ///< between the inks of a ring and the next
constexpr double label_air = 0.10;   ///< between labels
constexpr double label_aside = 0.30; ///< between a label and the stitches beside it
constexpr double gutter_step = 0.34; ///< the gutter widens no more from a ring to the next
constexpr double least_slot = 0.96;
constexpr double fullness = 0.985; ///< least gaps take no more than this of a ring
constexpr double least_low = 0.1;  ///< no ink comes nearer to the centre
constexpr double step = 0.02;      ///< a ring is pushed out by whole steps

constexpr double tall_height = 1.2;    ///< a ring that is taller lets its stitches lean in over the label
constexpr double least_channel = 0.30; ///< half of what stays clear there
constexpr double least_inner = 1.0;    ///< feet of a first ring of tall stitches

} // namespace

double middle_of(double inner, double height) { return inner + (height > tall_height ? 0.6 : 0.5) * height; }

double gap_before(const Band& inside, const Band& ring, const Turn& turn) {
  const bool marks_between = turn.inward ? inside.loop_marks : ring.loop_marks;
  const bool free_between = turn.inward ? ring.free_loops : inside.free_loops;
  const double on_heads = turn.inward ? ring.on_heads : inside.on_heads;
  return clearance + on_heads + (marks_between ? loop_gap : 0) + (free_between ? free_gap : 0) +
         (inside.break_outside ? break_gap : 0) + inside.room_outside;
}

double foot_radius(const SymbolExtent& shape, double inner, double height, const Turn& turn) {
  if (shape.on_heads) return turn.inward ? inner : inner + height;
  const double aside = (height - shape.height) / 2;
  return turn.inward ? inner + height - aside : inner + aside;
}

namespace {

/// From the gutter's middle to that of the pointer.
double pointer_aside(const Size& size) { return size.gutter / 2 - gutter_air - pointer_length / 2; }

/// Height of the label's middle: that of the ring where the pointer lies.
double label_height(const Size& size) {
  const double x = pointer_aside(size);
  return std::sqrt(std::max(0.0, size.middle * size.middle - x * x));
}

double half_label(const Band& band) {
  return band.label.flag > 0 ? flag_reach : letter_height * number_size / 2;
}

double label_bottom(const Band& band, double y) {
  const double first = y - half_label(band);
  return band.label.second < 0 ? std::min(first, y + band.label.second - letter_height * second_size / 2)
                               : first;
}

double label_top(const Band& band, double y) {
  const double first = y + half_label(band);
  return band.label.second > 0 ? std::max(first, y + band.label.second + letter_height * second_size / 2)
                               : first;
}

/// Half the width that label and pointer take, with their air.
double label_half(const Size& size) { return size.gutter / 2 - gutter_air + label_aside; }

/// The angle at which the corner of a label stands, seen from the centre.
double corner_angle(double half, double y) { return arc_sine(half / std::sqrt(half * half + y * y)); }

double gutter_for(const Band& band) { return band.label.width + pointer_room + 2 * gutter_air; }

/// Tries one radius after another for a ring until everything in it has room.
class Fitting {
public:
  Fitting(const Band& band, const Turn& turn, const Size& inside)
      : band_(band), turn_(turn), inside_(inside) {
    size_.gutter = std::max({inside.gutter, gutter_for(band), band.gutter});
    size_.tall = band.height > tall_height;
  }

  Size fit(double inner) {
    if (!fits(inner)) push(inner);
    size_.pushed = size_.inner - inner;
    (turn_.inward ? size_.high : size_.low) += (turn_.inward ? 1 : -1) * band_.room_at_feet;
    size_.room_outside = band_.room_outside;
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
    if (size_.gutter / 2 >= 0.9 * size_.middle || inner <= least_low) return false;
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
    size_.wedges.clear();
    size_.wedges.reserve(band_.shapes.size());
    size_.low = size_.inner, size_.high = size_.outer;
    double angles = 0;
    for (std::size_t i = 0; i < band_.shapes.size(); ++i) {
      const Wedge wedge = wedge_of(*band_.shapes[i], foot_of(i), turn_);
      size_.low = std::min(size_.low, wedge.low);
      size_.high = std::max(size_.high, wedge.high);
      angles += (wedge.before + wedge.after) * band_.how_many[i];
      size_.wedges.push_back(wedge);
    }
    const double innermost = size_.low - (turn_.inward ? 0 : band_.room_at_feet);
    if (innermost < inside_.high + air_across + inside_.room_outside || size_.low < least_low) return false;
    size_.air = std::max(air_along, least_air * size_.middle / size_.low);
    return (angles + gutter_angles()) * size_.middle + air() <= room();
  }

  double foot_of(std::size_t shape) const {
    return foot_radius(*band_.shapes[shape], size_.inner, band_.height, turn_);
  }

  /// Of the gutter and its two neighbours' sides toward it, less what was counted of these.
  double gutter_angles() {
    if (band_.shape_of.empty()) return 0;
    const std::size_t first = band_.shape_of.front(), last = band_.shape_of.back();
    size_.from_gutter = beside_gutter(first, size_.wedges[first].before, Beside::before);
    size_.to_gutter = beside_gutter(last, size_.wedges[last].after, Beside::behind);
    return size_.from_gutter - size_.wedges[first].before + size_.to_gutter - size_.wedges[last].after;
  }

  /// A tall stitch leans in over the label: it passes the lower corners of its own, and the upper ones of the
  /// label inside.
  double beside_gutter(std::size_t shape, double side, Beside gutter) const {
    const double half = size_.tall ? least_channel : label_half(size_);
    const double angle = gutter_angle(*band_.shapes[shape], foot_of(shape), half, gutter, turn_);
    return size_.tall ? std::max(angle, side + label_angle(size_.wedges[shape].low)) : angle;
  }

  double label_angle(double low) const {
    const double own = corner_angle(label_half(size_), label_bottom(band_, size_.label_y) - air_along);
    const double half = label_half(inside_), top = inside_.label_top + air_along;
    const bool reached = inside_.gutter > 0 && half * half + top * top > low * low;
    return reached ? std::max(own, corner_angle(half, top)) : own;
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
  size.high = size.label_top = core.clear + core.room;
  return size;
}

void add_break(const Band& band, Size& size) {
  if (band.break_outside)
    size.high = std::max(size.high, size.outer + (clearance + break_gap) / 2 + ring_break_reach);
}

double first_inner(const Core& core, double height) {
  return std::max(core.radius - height / 2, std::min(least_inner, core.radius - 0.4));
}

} // namespace

double pointer_angle(const Size& size) {
  return size.turned + arc_sine(std::min(1.0, pointer_aside(size) / size.middle));
}

void widen_gutters(std::vector<Band>& bands) {
  for (std::size_t i = bands.size(); i-- > 1;)
    bands[i - 1].gutter = std::max(gutter_for(bands[i]), bands[i].gutter) - gutter_step;
}

Size size_ring(const Band& inside, const Size& size_inside, const Band& ring, const Turn& turn) {
  const double inner = size_inside.outer + gap_before(inside, ring, turn) + ring.further;
  Size size = Fitting(ring, turn, size_inside).fit(inner);
  add_break(ring, size);
  return size;
}

namespace {

std::vector<Size> size_from(const std::vector<Band>& bands, const Core& core, const Turn& turn) {
  std::vector<Size> sizes;
  sizes.reserve(bands.size());
  for (std::size_t i = 0; i < bands.size(); ++i) {
    if (i > 0) {
      sizes.push_back(size_ring(bands[i - 1], sizes.back(), bands[i], turn));
      continue;
    }
    const Size centre = centre_size(core);
    sizes.push_back(Fitting(bands[i], turn, centre).fit(first_inner(core, bands[i].height)));
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
