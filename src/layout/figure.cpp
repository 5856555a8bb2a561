#include "layout/figure.hpp"

#include "layout/furniture.hpp"
#include "layout/items.hpp"
#include "layout/stand.hpp"

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

/// The rings of a disc with their items, before they have a place.
struct Rungs {
  std::vector<std::vector<Item>> items;
  std::vector<Band> bands;
};

Rungs rungs_of(const Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page) {
  Rungs rungs;
  for (const Ring& ring : plan.rings) {
    rungs.items.push_back(items_of(fabric, ring.round, ring.echo));
    Band band = band_of(rungs.items.back(), extents, ring.echo);
    band.break_outside = ring.round != ring.last_round;
    band.label = letter(fabric, ring, marked_loops(rungs.items.back()), plan.inward, extents, page);
    rungs.bands.push_back(std::move(band));
  }
  return rungs;
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

void set_size(const Size& size, const Band& band, Ring& ring) {
  ring.inner = size.inner;
  ring.outer = size.outer;
  ring.middle = size.middle;
  ring.last_before_break = band.break_outside;
  ring.items = static_cast<std::uint32_t>(band.shape_of.size());
}

/// Keeps the figure's lists from growing bit by bit.
void make_room(const Rungs& rungs, Figure& figure) {
  std::size_t items = 0;
  for (const std::vector<Item>& ring : rungs.items) items += ring.size();
  figure.items.reserve(items);
  figure.feet.reserve(items + items / 4);
  figure.tips.reserve(items + items / 4);
}

void lay_rings(const Fabric& fabric, const Rungs& rungs, const Turn& turn, Drawn& drawn) {
  Figure& figure = drawn.figure;
  Seats seats;
  make_room(rungs, figure);
  for (std::size_t i = 0; i < rungs.bands.size(); ++i) {
    Ring& ring = figure.rings[i];
    const Size& size = drawn.sizes[i];
    const Band& band = rungs.bands[i];
    const std::vector<Item>& items = rungs.items[i];
    drawn.laid.push_back(lay_ring(fabric, ring, items, band, size, seats, turn));
    ring.first_item = static_cast<std::uint32_t>(figure.items.size());
    set_size(size, band, ring);
    stand_ring(fabric, items, band, size, drawn.laid.back().at, turn, figure);
    const bool more = i + 1 < rungs.bands.size();
    const fabric::Round* outside = more ? &fabric.rounds[figure.rings[i + 1].last_round] : nullptr;
    seats = seats_of(fabric, ring, items, size, drawn.laid.back().at, turn, outside);
  }
}

void set_centre(const Size& first, Figure& figure) {
  const double label = first.label_y - letter_height * number_size;
  figure.centre_radius = std::min(first.low, label);
  if (figure.centre != Centre::gathered) return;
  figure.centre_radius = std::min(first.inner - gathering_gap, label);
  add_gathering(figure.centre_radius, figure);
}

void furnish(const std::vector<Band>& bands, Drawn& drawn) {
  Figure& figure = drawn.figure;
  const Way way = figure.clockwise ? Way::clockwise : Way::anticlockwise;
  for (std::uint32_t i = 0; i < bands.size(); ++i) {
    add_label(bands[i], drawn.sizes[i], i, way, figure);
    if (bands[i].break_outside) add_break_line(drawn.sizes[i], way, figure);
  }
  set_centre(drawn.sizes.front(), figure);
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
  const Rungs rungs = rungs_of(fabric, plan, extents, page);
  const Turn turn{plan.inward, page.hand};
  Core core;
  core.clear = centre_reach(drawn.figure);
  drawn.sizes = size_rings(rungs.bands, core, plan.centre == Centre::open, turn);
  lay_rings(fabric, rungs, turn, drawn);
  furnish(rungs.bands, drawn);
  return drawn;
}

} // namespace whorl::layout
