#include "layout/figure.hpp"

#include "layout/furniture.hpp"
#include "layout/items.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr double magic_ring_reach = 0.67, second_chain_reach = 0.62;
constexpr double centre_air = 0.12;
constexpr double gathering_gap = 0.30;
constexpr double arrow_gap = 0.62;
constexpr double centre_line = 1.05; ///< from the base line of the neck's name to that of its note

/// A ring with its items, before it has a place.
struct Rung {
  std::vector<Item> items;
  Band band;
};

std::vector<Rung> rungs_of(const Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page) {
  std::vector<Rung> rungs;
  for (const Ring& ring : plan.rings) {
    Rung rung;
    rung.items = items_of(fabric, ring.round, ring.echo);
    rung.band = band_of(rung.items, extents, ring.echo);
    rung.band.break_outside = ring.round != ring.last_round;
    rung.band.label = letter(fabric, ring, marked_loops(rung.items), plan.inward, extents, page);
    rungs.push_back(std::move(rung));
  }
  return rungs;
}

std::vector<Band> bands_of(const std::vector<Rung>& rungs) {
  std::vector<Band> bands;
  for (const Rung& rung : rungs) bands.push_back(rung.band);
  return bands;
}

/// The name of an open centre and the note under it, the lines' middle at the centre.
double text_reach(const std::vector<Run>& text) {
  double reach = 0;
  const double high = text.size() > 1 ? centre_line : 0.5;
  for (const Run& line : text) reach = std::max(reach, std::sqrt(high * high + line.width * line.width / 4));
  return text.empty() ? 0 : reach + centre_air;
}

/// How much of the middle is taken, so that the first ring keeps clear of it.
double centre_reach(const Figure& figure) {
  switch (figure.centre) {
  case Centre::magic_ring:
    return magic_ring_reach + centre_air;
  case Centre::second_chain:
    return second_chain_reach + centre_air;
  case Centre::gathered:
    return 0.52 + centre_air + gathering_gap;
  case Centre::open:
  case Centre::nothing:
    break;
  }
  return text_reach(figure.centre_text);
}

std::vector<Run> measured(std::vector<Run> lines, const Extents& extents) {
  for (Run& line : lines) line.width = line.size * text_width(extents, line.face, line.text);
  return lines;
}

Figure begin_figure(const Plan& plan, const Extents& extents, const Page& page) {
  Figure figure;
  figure.form = plan.inward ? Form::disc_inward : Form::disc;
  figure.part = plan.part;
  figure.clockwise = plan.inward != (page.hand == Hand::left);
  figure.centre = plan.centre;
  figure.centre_text = measured(plan.centre_text, extents);
  figure.rings = plan.rings;
  return figure;
}

void set_rounds(Figure& figure) {
  figure.first_round = fabric::none;
  for (const Ring& ring : figure.rings) {
    if (ring.echo) continue;
    figure.first_round = std::min(figure.first_round, ring.round);
    figure.last_round = std::max(figure.last_round, ring.last_round);
  }
}

void set_size(const Size& size, const Rung& rung, Ring& ring) {
  ring.inner = size.inner;
  ring.outer = size.outer;
  ring.middle = size.middle;
  ring.last_before_break = rung.band.break_outside;
  ring.items = static_cast<std::uint32_t>(rung.items.size());
}

/// The points of a symbol in the order in which work meets them.
std::vector<Point> in_work_order(std::vector<Point> points, Hand hand) {
  std::stable_sort(points.begin(), points.end(),
                   [hand](Point a, Point b) { return hand == Hand::right ? a.x > b.x : a.x < b.x; });
  return points;
}

/// Places symbols on a ring.
class Standing {
public:
  Standing(const Fabric& fabric, const Turn& turn, Figure& figure)
      : fabric_(fabric), turn_(turn), figure_(figure) {}

  void stand(const Rung& rung, const Size& size, const Laid& laid, Way way) {
    for (std::size_t i = 0; i < rung.items.size(); ++i) {
      const std::uint32_t shape = rung.band.shape_of[i];
      Item item = rung.items[i];
      item.at = laid.at[i];
      const Point out = outward(item.at / size.middle, way);
      item.foot = size.wedges[shape].foot * out;
      item.up = turn_.inward ? Point{0 - out.x, 0 - out.y} : out;
      add(item, *rung.band.shapes[shape]);
    }
  }

private:
  void add(Item item, const SymbolExtent& shape) {
    item.height = shape.height;
    item.first_foot = static_cast<std::uint32_t>(figure_.feet.size());
    item.feet = static_cast<std::uint32_t>(legs_of(fabric_, item).size());
    item.first_tip = static_cast<std::uint32_t>(figure_.tips.size());
    put(item, in_work_order(shape.feet, turn_.hand), item.feet, {0, 0}, figure_.feet);
    put(item, in_work_order(shape.tips, turn_.hand), item.count, {0, shape.height}, figure_.tips);
    figure_.items.push_back(item);
  }

  /// `wanted` points of a symbol; where it has fewer, the last stands for the rest.
  static void put(const Item& item, const std::vector<Point>& own, std::uint32_t wanted, Point otherwise,
                  std::vector<Point>& points) {
    for (std::uint32_t i = 0; i < wanted; ++i) {
      const Point p = own.empty() ? otherwise : own[std::min<std::size_t>(i, own.size() - 1)];
      points.push_back(
          {item.foot.x + p.x * item.up.y + p.y * item.up.x, item.foot.y - p.x * item.up.x + p.y * item.up.y});
    }
  }

  const Fabric& fabric_;
  Turn turn_;
  Figure& figure_;
};

void lay_rings(const Fabric& fabric, const std::vector<Rung>& rungs, const Turn& turn, Drawn& drawn) {
  Figure& figure = drawn.figure;
  const Way way = figure.clockwise ? Way::clockwise : Way::anticlockwise;
  Standing standing(fabric, turn, figure);
  Seats seats;
  for (std::size_t i = 0; i < rungs.size(); ++i) {
    Ring& ring = figure.rings[i];
    const Size& size = drawn.sizes[i];
    const Rung& rung = rungs[i];
    drawn.laid.push_back(lay_ring(fabric, ring, rung.items, rung.band, size, seats, turn));
    ring.first_item = static_cast<std::uint32_t>(figure.items.size());
    set_size(size, rung, ring);
    standing.stand(rung, size, drawn.laid.back(), way);
    const bool more = i + 1 < rungs.size();
    const fabric::Round* outside = more ? &fabric.rounds[figure.rings[i + 1].last_round] : nullptr;
    seats = seats_of(fabric, ring, rung.items, size, drawn.laid.back().at, turn, outside);
  }
}

void set_centre(const std::vector<Size>& sizes, const std::vector<Rung>& rungs, Figure& figure) {
  if (sizes.empty()) return;
  const Size& first = sizes.front();
  const double label = first.label_y - letter_height * number_size;
  figure.centre_radius = std::min(first.low, label);
  if (figure.centre != Centre::gathered) return;
  figure.centre_radius = std::min(first.inner - gathering_gap, label);
  if (rungs.front().items.size() > 0) add_gathering(figure.centre_radius, figure);
}

void furnish(const std::vector<Rung>& rungs, Drawn& drawn) {
  Figure& figure = drawn.figure;
  const Way way = figure.clockwise ? Way::clockwise : Way::anticlockwise;
  for (std::uint32_t i = 0; i < rungs.size(); ++i) {
    add_label(rungs[i].band, drawn.sizes[i], i, way, figure);
    if (rungs[i].band.break_outside) add_break_line(drawn.sizes[i], way, figure);
  }
  set_centre(drawn.sizes, rungs, figure);
  const Size& last = drawn.sizes.back();
  add_arrow(last.high + arrow_gap, last, way, figure);
  bound(last.high, figure);
}

} // namespace

Drawn draw_disc(const Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page) {
  Drawn drawn;
  drawn.figure = begin_figure(plan, extents, page);
  set_rounds(drawn.figure);
  if (plan.rings.empty()) return drawn;
  const std::vector<Rung> rungs = rungs_of(fabric, plan, extents, page);
  const Turn turn{plan.inward, page.hand};
  Core core;
  core.clear = centre_reach(drawn.figure);
  drawn.sizes = size_rings(bands_of(rungs), core, plan.centre == Centre::open, turn);
  lay_rings(fabric, rungs, turn, drawn);
  furnish(rungs, drawn);
  return drawn;
}

} // namespace whorl::layout
