#include "layout/placed.hpp"

#include "fabric/opening.hpp"
#include "layout/column.hpp"
#include "layout/direction.hpp"
#include "layout/hole.hpp"
#include "layout/room.hpp"
#include "layout/sign.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using pattern::What;

constexpr double letter_size = 0.44, letter_reach = 0.215; ///< of the letter in a loop
constexpr double tick_air = 0.22, text_air = 0.10;
constexpr std::uint32_t tenth = 10, fifth = 5;

Point turned(const Item& item, Point p) { return stood(item, p) - item.foot; }

Run run_of(const std::string& text, Face face, double size, const Extents& extents) {
  return {text, face, size, 0, size * text_width(extents, face, text)};
}

// Loops.

/// Letters as large as fits the ring round them.
Run letters_in_loop(const std::string& letters, const Extents& extents) {
  Run run = run_of(letters, Face::bold, letter_size, extents);
  const double high = letter_height * letter_size;
  const double half = std::sqrt(run.width * run.width + high * high) / 2;
  return half <= letter_reach ? run : run_of(letters, Face::bold, letter_size * letter_reach / half, extents);
}

const Kept* kept_at(const std::vector<Kept>& kept, fabric::StitchId stitch) {
  const auto found = std::lower_bound(kept.begin(), kept.end(), stitch,
                                      [](const Kept& one, fabric::StitchId id) { return one.stitch < id; });
  return found != kept.end() && found->stitch == stitch ? &*found : nullptr;
}

void add_loops_of(const Item& item, std::uint32_t ring, const std::vector<LoopPlace>& places,
                  const std::vector<Kept>& kept, const Extents& extents, Figure& figure) {
  for (const LoopPlace& place : places) {
    const Kept* loop = kept_at(kept, item.first + place.which);
    if (loop == nullptr) continue;
    const Point at = stood(item, place.at);
    figure.placed.push_back({place.sign, at, item.up, letters_in_loop(loop->letters, extents), at, ring});
  }
}

// Numbers.

/// A tick with its number: from `at` along `up`.
Placed tick_at(Point at, Point up, std::uint32_t ring, Run text) {
  Placed tick{Sign::tick, at, up, std::move(text), {}, ring};
  tick.text_at = at + (tick_length + text_air + half_room(tick.text, up)) * up;
  return tick;
}

Run numeral(std::uint32_t number, const Extents& extents) {
  return run_of(std::to_string(number), Face::regular, sign_text, extents);
}

/// The number of each stitch of a round that has a top, from 1; 0 for the others.
std::vector<std::uint32_t> numbers_of(const Fabric& fabric, std::uint32_t round) {
  const fabric::Round& worked = fabric.rounds[round];
  std::vector<std::uint32_t> numbers(worked.count, 0);
  std::uint32_t last = 0;
  for (std::uint32_t i = 0; i < worked.count; ++i)
    if (fabric::has_top(fabric, worked.first_stitch + i)) numbers[i] = ++last;
  return numbers;
}

/// The number of the first of an item's stitches that is to be numbered: the first of all, and every fifth.
std::uint32_t told_number(const Item& item, fabric::StitchId first,
                          const std::vector<std::uint32_t>& numbers) {
  for (std::uint32_t j = 0; j < item.count; ++j) {
    const std::size_t place = item.first + j - first;
    const std::uint32_t number = place < numbers.size() ? numbers[place] : 0;
    if (number == 1 || (number > 0 && number % fifth == 0)) return number;
  }
  return 0;
}

// Posts.

Sign sign_of(What what) {
  if (what == What::marker) return Sign::marker;
  if (what == What::embroider) return Sign::thread;
  return what == What::bead ? Sign::bead : Sign::eye;
}

bool is_in(const fabric::Placing& placing, const Figure& figure) {
  return placing.part == figure.part && placing.round != fabric::none &&
         ring_of(figure, placing.round) != fabric::none;
}

/// The ring outside which there must be more room for what stands at the heads of this one; -1: the middle.
int ring_to_widen(const Figure& figure, std::uint32_t ring) {
  return static_cast<int>(ring) - (side_of_heads(figure) < 0 ? 1 : 0);
}

bool has_next(const Figure& figure, std::uint32_t ring) {
  const std::uint32_t next = ring + static_cast<std::uint32_t>(side_of_heads(figure));
  return next < figure.rings.size();
}

/// Stands a sign at a spot; where it finds no room, the ring to widen is noted.
void stand_sign(const Extents& extents, const Spot& spot, int again, Placed sign, Figure& figure,
                std::vector<int>& crowded) {
  const bool free_outside = !has_next(figure, sign.ring) && side_of_heads(figure) > 0;
  if (free_outside)
    push_out(figure, extents, spot.up, sign);
  else if (!settle_sign(figure, extents, spot.up, again, sign))
    crowded.push_back(ring_to_widen(figure, sign.ring));
  figure.placed.push_back(std::move(sign));
}

// Ticks.

/// The rings, each once, in which posts have been put into counted holes.
std::vector<std::uint32_t> counted_rings(const Fabric& fabric, const Figure& figure) {
  std::vector<std::uint32_t> rings;
  for (const fabric::Placing& placing : fabric.placings) {
    if (!is_post(placing.what) || placing.after.empty() || !is_in(placing, figure)) continue;
    const std::uint32_t ring = ring_of(figure, placing.round);
    if (std::find(rings.begin(), rings.end(), ring) == rings.end()) rings.push_back(ring);
  }
  return rings;
}

/// Whether all rings from this one outward have as many stitches.
bool same_outward(const Fabric& fabric, const Figure& figure, std::uint32_t ring) {
  const std::uint32_t count = fabric.rounds[figure.rings[ring].round].makes;
  for (std::size_t i = ring; i < figure.rings.size(); ++i)
    if (fabric.rounds[figure.rings[i].round].makes != count) return false;
  return true;
}

/// A point and the way out there, `edge` away from the middle of a disc or the foot of a strip.
Spot beyond(const Figure& figure, Point head, double edge) {
  if (!goes_round(figure)) return {{head.x, edge}, {0, 1}};
  const Point core = core_under(stadium_of(figure), head), ray = head - core;
  const Point out = (1 / std::max(1e-9, length(ray))) * ray;
  return {core + edge * out, out};
}

void tick_outside(const Fabric& fabric, const Extents& extents, double edge, Figure& figure) {
  const auto last = static_cast<std::uint32_t>(figure.rings.size() - 1);
  const std::vector<Spot> heads = heads_of(fabric, figure, last);
  for (std::uint32_t n = tenth; n < heads.size(); n += tenth) {
    const Spot spot = beyond(figure, heads[n - 1].at, edge + tick_air);
    Placed tick = tick_at(spot.at, spot.up, last, numeral(n, extents));
    push_out(figure, extents, spot.up, tick);
    figure.placed.push_back(std::move(tick));
  }
}

/// Where other stitches follow outside, the numbers stand between the rings, without ticks.
void number_beside(const Fabric& fabric, const Extents& extents, std::uint32_t ring, int again,
                   Figure& figure, std::vector<int>& crowded) {
  const std::vector<Spot> heads = heads_of(fabric, figure, ring);
  for (std::uint32_t n = tenth; n < heads.size(); n += tenth) {
    const Spot beside = beyond_head(figure, ring, heads[n - 1]);
    Placed number{Sign::tick, beside.at, {0, 0}, numeral(n, extents), beside.at, ring};
    stand_sign(extents, beside, again, std::move(number), figure, crowded);
  }
}

// The front.

bool shows_front(const Fabric& fabric, const Figure& figure) {
  bool placed = false;
  for (const fabric::Placing& placing : fabric.placings) {
    const bool stands = is_post(placing.what) || placing.what == What::sew;
    if (!stands || !is_in(placing, figure)) continue;
    if (placing.what == What::eye && placing.after.size() > 1) return false;
    placed = true;
  }
  return placed;
}

} // namespace

void add_loops(const Keeping& keeping, const std::vector<Band>& bands, const Extents& extents, Hand hand,
               Figure& figure) {
  for (std::uint32_t i = 0; i < bands.size(); ++i) {
    if (!bands[i].free_loops) continue;
    const Ring& ring = figure.rings[i];
    const std::vector<Kept>& kept = ring.owner && keeping.owners != nullptr ? *keeping.owners : keeping.own;
    const auto places_of_ring = static_cast<std::uint32_t>(bands[i].shape_of.size());
    const std::uint32_t first = ring.first_item + ring.items - places_of_ring;
    for (std::uint32_t j = 0; j < places_of_ring; ++j) {
      Item item = figure.items[first + j];
      if (j == 0 && !bands[i].column.empty()) item = column_standing(bands[i], item, figure);
      const std::vector<LoopPlace>& places = bands[i].loops[bands[i].shape_of[j]];
      add_loops_of(item, i, places, kept, extents, figure);
      if (!ring.owner || j > 0 || places.empty()) continue;
      const Hand way = figure.form == Form::rows ? hand_of(ring.leftward) : hand;
      const Point at = stood(item, attach_place(first_met(places, way), way));
      figure.placed.push_back({Sign::attach, at, turned(item, attach_up(way)), {}, at, i});
    }
  }
}

void add_owner_numbers(const Fabric& fabric, const Extents& extents, Figure& figure) {
  for (std::uint32_t i = 0; i < figure.rings.size(); ++i) {
    const Ring& ring = figure.rings[i];
    if (!ring.owner) continue;
    const std::vector<std::uint32_t> numbers = numbers_of(fabric, ring.round);
    for (std::uint32_t j = ring.first_item; j < ring.first_item + ring.items; ++j) {
      const Item& item = figure.items[j];
      const std::uint32_t number = told_number(item, fabric.rounds[ring.round].first_stitch, numbers);
      if (number == 0) continue;
      const Point down = -1.0 * item.up;
      figure.placed.push_back(tick_at(item.foot + tick_air * down, down, i, numeral(number, extents)));
    }
  }
}

std::vector<int> add_posts(const Fabric& fabric, const Extents& extents, Figure& figure, int again) {
  std::vector<int> crowded;
  for (const fabric::Placing& placing : fabric.placings) {
    if (!is_post(placing.what) || !is_in(placing, figure)) continue;
    const std::uint32_t ring = ring_of(figure, placing.round);
    for (const std::uint32_t after : placing.after) {
      const Spot hole = hole_after(fabric, figure, ring, after);
      stand_sign(extents, hole, again, {sign_of(placing.what), hole.at, {0, 1}, {}, hole.at, ring}, figure,
                 crowded);
    }
  }
  return crowded;
}

std::vector<int> add_ticks(const Fabric& fabric, const Extents& extents, double edge, Figure& figure,
                           int again) {
  std::vector<int> crowded;
  bool outside = false;
  for (const std::uint32_t ring : counted_rings(fabric, figure))
    if (!same_outward(fabric, figure, ring))
      number_beside(fabric, extents, ring, again, figure, crowded);
    else if (!std::exchange(outside, true))
      tick_outside(fabric, extents, edge, figure);
  return crowded;
}

void add_front(const Fabric& fabric, const Extents& extents, const Page& page, double edge, Figure& figure) {
  if (!shows_front(fabric, figure)) return;
  Spot spot{{0, -edge - tick_air}, {0, -1}};
  if (!goes_round(figure)) {
    const Ring& first = figure.rings.front();
    const Item &one = figure.items[first.first_item],
               &other = figure.items[first.first_item + first.items - 1];
    spot.at = {(one.foot.x + other.foot.x) / 2, figure.low.y - tick_air};
  }
  Placed front = tick_at(spot.at, spot.up, 0, run_of(page.front, Face::italic, sign_text, extents));
  front.sign = Sign::front;
  push_out(figure, extents, spot.up, front);
  figure.placed.push_back(std::move(front));
}

} // namespace whorl::layout
