#include "layout/figure.hpp"

#include "layout/break_line.hpp"
#include "layout/clear_labels.hpp"
#include "layout/column.hpp"
#include "layout/cut.hpp"
#include "layout/flag.hpp"
#include "layout/footprint.hpp"
#include "layout/furniture.hpp"
#include "layout/ground.hpp"
#include "layout/group.hpp"
#include "layout/items.hpp"
#include "layout/join.hpp"
#include "layout/joined_edges.hpp"
#include "layout/long_legs.hpp"
#include "layout/placed.hpp"
#include "layout/rings.hpp"
#include "layout/section.hpp"
#include "layout/sign.hpp"
#include "layout/spike.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;

constexpr double magic_ring_reach = 0.67, second_chain_reach = 0.62;
constexpr double centre_air = 0.12;
constexpr double least_turned = 0.1; ///< radians: a gutter that leans less stands upright
constexpr double gathering_gap = 0.30;
constexpr double past_cut = 0.50; ///< the mark of the end of the yarn stands beneath the arrow
constexpr double name_gap = 0.22;
constexpr double centre_line = 1.05; ///< from the base line of the neck's name to that of its note

/// A faint round shows no loops but those in which the part itself is begun.
void draw_loops(const Ring& ring, const Plan& plan, Hand hand, const std::vector<Item>& items, Band& band) {
  band.against = ring.against;
  if (ring.owner && plan.owner) {
    layout::draw_loops(items, {plan.owner->kept, hand, true}, band);
    band.room_at_feet = owner_numbers_reach;
  } else if (!ring.echo && !plan.kept.empty()) {
    layout::draw_loops(items, {plan.kept, hand, false}, band);
  }
}

/// From the gutter round, which of a turned round is not the order of work.
std::vector<Item> strung_items(const Fabric& fabric, const Ring& ring) {
  std::vector<Item> items = items_of(fabric, ring.round, ring.echo);
  if (ring.against) std::reverse(items.begin(), items.end());
  return items;
}

/// Chains that stitches are worked into one by one have the room of a stitch each.
void widen_chains(Band& band) {
  std::fill(band.slot.begin(), band.slot.end(), 1.0);
  band.slots = static_cast<double>(band.shape_of.size());
}

Rungs rungs_of(const Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page) {
  Rungs rungs;
  rungs.keep_problems = plan.keep_problems;
  rungs.items.reserve(plan.rings.size()), rungs.bands.reserve(plan.rings.size());
  for (std::size_t i = 0; i < plan.rings.size(); ++i) {
    const Ring& ring = plan.rings[i];
    rungs.items.push_back(ring.owner && plan.owner ? plan.owner->items : strung_items(fabric, ring));
    if (!ring.echo && std::find(plan.arrows.begin(), plan.arrows.end(), i) == plan.arrows.end())
      give_stems(fabric, plan.rings, i, rungs.items.back());
    std::vector<Item> column;
    std::optional<Item> join;
    if (!ring.owner && !ring.against && !ring.chain) {
      if (!plan.inward) join = take_join(fabric, rungs.items.back()); // inward room beside heads is dear
      column = take_column(fabric, rungs.items.back());
    }
    std::vector<Group> groups;
    if (!ring.owner && !ring.against && plan.kept.empty() && plan.groups)
      groups = gather_groups(fabric, extents, column.empty() ? 0 : 1, rungs.items.back());
    Band band = band_of(rungs.items.back(), extents, ring.echo);
    if (ring.chain) widen_chains(band);
    const bool counting = fabric.rounds[ring.round].counting_chain != fabric::none;
    if (!column.empty()) stand_on_end(std::move(column), counting, extents, band);
    fan_out(fabric, extents, groups, page.hand, band);
    if (join) join_first(*join, extents, page.hand, band);
    draw_loops(ring, plan, page.hand, rungs.items.back(), band);
    band.break_outside = ring.round != ring.last_round;
    band.label = letter(fabric, ring, marked_loops(rungs.items.back()), plan.inward, extents, page);
    rungs.bands.push_back(std::move(band));
  }
  widen_gutters(rungs.bands);
  return rungs;
}

/// The name of an open centre and the note under it, the lines' middle at the centre.
double text_reach(const std::vector<Run>& text) {
  double reach = 0;
  const double high = text.size() > 1 ? centre_line : 0.5;
  for (const Run& line : text) reach = std::max(reach, std::sqrt(high * high + line.width * line.width / 4));
  return text.empty() ? 0 : reach + centre_air;
}

std::vector<Run> measured(std::vector<Run> lines, const Extents& extents) {
  for (Run& line : lines) line.width = line.size * text_width(extents, line.face, line.text);
  return lines;
}

void set_rounds(Figure& figure) {
  figure.first_round = fabric::none;
  for (const Ring& ring : figure.rings) {
    if (ring.echo || ring.chain) continue;
    figure.first_round = std::min(figure.first_round, ring.round);
    figure.last_round = std::max(figure.last_round, ring.last_round);
  }
}

} // namespace

double centre_reach(const Figure& figure) {
  switch (figure.centre) {
  case Centre::magic_ring:
  case Centre::chain_ring:
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

Figure begin_figure(const Plan& plan, const Extents& extents, const Page& page) {
  Figure figure;
  figure.form = plan.inward ? Form::disc_inward : Form::disc;
  figure.part = plan.part;
  figure.clockwise = plan.inward != (page.hand == Hand::left);
  figure.centre = plan.centre;
  figure.centre_text = measured(plan.centre_text, extents);
  figure.rings = plan.rings;
  set_rounds(figure);
  return figure;
}

namespace {

/// How near the innermost label comes to the centre.
double label_from_centre(const Figure& figure) {
  double least = 1e9;
  for (const Label& label : figure.labels)
    if (label.ring == 0) least = std::min(least, distance(label.box, Convex{{0, 0}}));
  return least;
}

void set_centre(const Size& first, const Band& band, const Core& core, Figure& figure) {
  const double label = label_from_centre(figure) - letter_height * number_size / 2;
  figure.centre_radius = std::min(first.low, label);
  if (figure.centre != Centre::gathered) return;
  const double heads = band.free_loops || band.on_heads > 0 ? first.low : first.inner;
  figure.centre_radius = std::min(heads - gathering_gap - core.room, label);
  add_gathering(figure.centre_radius, figure);
}

void add_grounds(const Fabric& fabric, std::uint8_t main_yarn, Drawn& drawn) {
  std::vector<double> edges;
  for (const Size& size : drawn.sizes) edges.push_back(size.half_gutter / size.middle);
  layout::add_grounds(fabric, edges, main_yarn, drawn.figure);
}

/// What is placed on the figure; returns the rings outside which it found no room.
std::vector<int> place_signs(const Fabric& fabric, const Extents& extents, const Page& page, int again,
                             Drawn& drawn) {
  Figure& figure = drawn.figure;
  const double edge = drawn.sizes.back().high;
  add_owner_numbers(fabric, extents, figure);
  add_joined_edges(fabric, extents, figure);
  const bool cut_found_room = add_cut(fabric, extents, figure);
  std::vector<int> crowded = add_posts(fabric, extents, figure, again);
  if (!cut_found_room && figure.form == Form::disc_inward) crowded.push_back(-1);
  for (const int ring : add_ticks(fabric, extents, edge, figure, again)) crowded.push_back(ring);
  for (const int ring : add_flags(fabric, extents, figure, again)) crowded.push_back(ring);
  if (label_from_centre(figure) < centre_reach(figure)) crowded.push_back(-1);
  add_front(fabric, extents, page, edge, figure);
  add_footprint_names(fabric, extents, edge + name_gap, figure);
  return crowded;
}

Way other(Way way) { return way == Way::clockwise ? Way::anticlockwise : Way::clockwise; }

/// The way a ring is worked in a figure that runs this way.
Way way_of(const Ring& ring, Way way) { return ring.against && !ring.owner ? other(way) : way; }

void furnish(const Fabric& fabric, const std::vector<Band>& bands, const Core& core, Drawn& drawn) {
  Figure& figure = drawn.figure;
  const Way way = figure.clockwise ? Way::clockwise : Way::anticlockwise;
  for (std::uint32_t i = 0; i < bands.size(); ++i) {
    add_label(bands[i], drawn.sizes[i], i, way_of(figure.rings[i], way), figure);
    if (bands[i].break_outside) add_break_line(drawn.sizes[i], way, figure);
  }
  set_centre(drawn.sizes.front(), bands.front(), core, figure);
  const Size& last = drawn.sizes.back();
  const bool cut_inside = figure.form == Form::disc && bands.back().join && is_cut_off(fabric, figure);
  const double gap = arrow_gap + (cut_inside ? past_cut : 0);
  if (!is_turned(figure)) add_arrow(last.high + gap, last, way, figure);
}

/// Makes more room where something found none.
void widen(std::vector<int> crowded, Rungs& rungs, Core& core) {
  constexpr double more = 0.2;
  std::sort(crowded.begin(), crowded.end());
  crowded.erase(std::unique(crowded.begin(), crowded.end()), crowded.end());
  for (const int ring : crowded)
    (ring < 0 ? core.room : rungs.bands[static_cast<std::size_t>(ring)].room_outside) += more;
}

} // namespace

namespace {

/// Lays the rings and puts everything on them.
Drawn draw_once(const Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page,
                Rungs& rungs, Core& core, int again, std::vector<int>& crowded,
                std::vector<std::uint32_t>& stemless) {
  Drawn drawn;
  drawn.figure = begin_figure(plan, extents, page);
  const Turn turn{plan.inward, page.hand};
  lay_rings(fabric, plan.centre == Centre::open, turn, rungs, core, drawn);
  add_loops(keeping_of(plan), rungs.bands, extents, page.hand, drawn.figure);
  stemless = add_stems(fabric, extents, drawn.figure);
  if (plan.outlines) add_footprints(fabric, extents, drawn.figure);
  furnish(fabric, rungs.bands, core, drawn);
  if (!labels_are_clear(drawn.figure, extents)) {
    rungs.most_turned = rungs.most_turned > least_turned ? 0.75 * rungs.most_turned : 0;
    return draw_once(fabric, plan, extents, page, rungs, core, again, crowded, stemless);
  }
  crowded = place_signs(fabric, extents, page, again, drawn);
  add_grounds(fabric, page.main_yarn, drawn);
  bound(drawn.sizes.back().high, drawn.figure);
  return drawn;
}

} // namespace

namespace {

/// Makes room where stems bend; false: there are none.
bool bend(const std::vector<std::uint32_t>& rings, Rungs& rungs) {
  for (const std::uint32_t ring : rings) rungs.bands[ring].room_outside += bend_room;
  return !rings.empty();
}

/// Lets lines lead from feet to their places; the rings outside which one found no room.
std::vector<int> lead_feet(const Fabric& fabric, const Extents& extents, Drawn& drawn) {
  const Lines which = drawn.held ? Lines::of_many_legs : Lines::of_every_foot;
  return lengthen_legs(fabric, extents, which, drawn.figure, drawn.plain);
}

Plan with_arrows(const Plan& plan, const std::vector<std::uint32_t>& rings) {
  Plan other = plan;
  other.arrows.insert(other.arrows.end(), rings.begin(), rings.end());
  return other;
}

} // namespace

std::vector<int> rings_to_widen(const Plan& plan, int times, std::vector<int> crowded,
                                const std::vector<int>& footless) {
  if (!plan.grows) return crowded;
  if (times >= most_layings) crowded.clear();
  crowded.insert(crowded.end(), footless.begin(), footless.end());
  return crowded;
}

Plan given_up(const Plan& plan, const Figure& figure) {
  const auto is_outline = [](const Stroke& stroke) { return stroke.line == Line::footprint; };
  Plan other = plan;
  other.grows = std::any_of(figure.strokes.begin(), figure.strokes.end(), is_outline);
  other.outlines = false;
  return other;
}

namespace {

bool has_groups(const Rungs& rungs) {
  return std::any_of(rungs.bands.begin(), rungs.bands.end(),
                     [](const Band& band) { return !band.groups.empty(); });
}

/// Groups stand as one unless the figure would be much larger for it.
Drawn without_groups_if_smaller(const Fabric& fabric, const Plan& plan, const Extents& extents,
                                const Page& page, Drawn drawn) {
  constexpr double much = 1.15;
  Plan plain = plan;
  plain.groups = false;
  Drawn other = draw_disc(fabric, plain, extents, page);
  return drawn.figure.high.x > much * other.figure.high.x ? std::move(other) : std::move(drawn);
}

} // namespace

Drawn draw_disc(const Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page) {
  Drawn drawn;
  drawn.figure = begin_figure(plan, extents, page);
  if (plan.rings.empty()) return drawn;
  Rungs rungs = rungs_of(fabric, plan, extents, page);
  Core core;
  core.clear = centre_reach(drawn.figure);
  std::vector<int> crowded;
  std::vector<std::uint32_t> stemless;
  for (int i = 0; i < (plan.grows ? most_layings_for_feet : most_layings); ++i) {
    drawn = draw_once(fabric, plan, extents, page, rungs, core, i, crowded, stemless);
    for (int k = 0; i == 0 && k < most_bends && (k == 0 || !stemless.empty()); ++k)
      if (bend(rings_at_bends(drawn.figure), rungs))
        drawn = draw_once(fabric, plan, extents, page, rungs, core, i, crowded, stemless);
    if (!stemless.empty()) return draw_disc(fabric, with_arrows(plan, stemless), extents, page);
    crowded = rings_to_widen(plan, i + 1, std::move(crowded), lead_feet(fabric, extents, drawn));
    if (crowded.empty() && !has_groups(rungs)) return drawn;
    if (crowded.empty()) return without_groups_if_smaller(fabric, plan, extents, page, std::move(drawn));
    widen(crowded, rungs, core);
  }
  return plan.grows ? draw_disc(fabric, given_up(plan, drawn.figure), extents, page) : drawn;
}

} // namespace whorl::layout
