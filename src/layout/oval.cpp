#include "layout/oval.hpp"

#include "layout/break_line.hpp"
#include "layout/cut.hpp"
#include "layout/furniture.hpp"
#include "layout/ground.hpp"
#include "layout/group.hpp"
#include "layout/hole.hpp"
#include "layout/items.hpp"
#include "layout/long_legs.hpp"
#include "layout/oval_furniture.hpp"
#include "layout/oval_label.hpp"
#include "layout/placed.hpp"
#include "layout/stand.hpp"
#include "layout/straight.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::StitchId;

constexpr double least_pitch = 1.12;   ///< of the starting chain
constexpr double chain_half = 0.16;    ///< of one of its ovals, across
constexpr double first_feet = 0.64;    ///< feet of the first round, from the chain's middle line
constexpr double turning_aside = 0.72; ///< from the last chain to one on end beside it: room for the start
constexpr double plain_pull = 0.06, shaping_pull = 0.18;
constexpr double first_ray = 0.785; ///< radians from the first side to about where the first round begins

constexpr auto all = static_cast<std::size_t>(-1); ///< stitches

bool is_joining(const Fabric& fabric, const Item& item) {
  return (fabric.stitches[item.first].flags & fabric::joins) != 0;
}

/// How well a pitch of the chain suits.
struct Fit {
  std::size_t not_held = 0; ///< stitches that have no room by their own places
  double uneven = 0;        ///< of the gaps between stitches, squares of how much they are off
};

/// An oval while it is put together.
class Laying {
public:
  Laying(const Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page, double pitch)
      : fabric_(fabric), plan_(plan), extents_(extents), page_(page), core_(oval_core(fabric, plan.part)),
        footing_(fabric, plan.part), pitch_(pitch) {
    around_.fabric = &fabric;
    Figure& figure = oval_.figure;
    figure.form = Form::oval;
    figure.part = plan.part;
    figure.clockwise = page.hand == Hand::left;
    figure.half_core = (pitch_ * (core_.chains() - 1) + turning_aside) / 2;
    oval_.stadium = stadium_of(figure);
    around_.begins = {seats_lap.r, first_ray * seats_lap.r};
    figure.first_round = plan.rings.front().round;
    figure.last_round = plan.rings.back().last_round;
  }

  /// Puts everything together with more room outside some rings; returns those outside which something
  /// found none. It is given up where more stitches than `most` have no room by their own places.
  std::vector<int> put_together(const std::vector<double>& room, int again, std::size_t most = all) {
    room_ = room;
    lay_chain();
    for (const Ring& ring : plan_.rings) {
      lay_ring(ring);
      if (oval_.rings.back().not_held > 0 && fit().not_held > most) return {};
    }
    add_kept_loops();
    add_arrow();
    const double edge = around_.high;
    Figure& figure = oval_.figure;
    add_cut(fabric_, extents_, figure);
    std::vector<int> crowded = add_posts(fabric_, extents_, figure, again);
    for (const int ring : add_ticks(fabric_, extents_, edge, figure, again)) crowded.push_back(ring);
    add_front(fabric_, extents_, page_, edge, figure);
    add_grounds(fabric_, std::vector<double>(figure.rings.size(), 0), page_.main_yarn, figure);
    bound(edge, figure);
    return crowded;
  }

  /// Lets lines lead from feet to their places; the rings outside which one found no room.
  std::vector<int> lengthen() { return lengthen_legs(fabric_, extents_, Lines::of_every_foot, oval_.figure); }

  std::size_t lines() const { return oval_.figure.rings.size(); }
  Fit fit() const {
    Fit fit;
    for (const OvalRing& ring : oval_.rings) fit.not_held += ring.not_held, fit.uneven += uneven(ring);
    return fit;
  }
  Oval drawn() { return std::move(oval_); }

private:
  static double uneven(const OvalRing& ring) {
    double sum = 0;
    for (std::size_t i = 1; i < ring.at.size(); ++i) {
      const double off = (ring.at[i] - ring.at[i - 1]) / ring.strung.wanted[i] - 1;
      sum += off * off;
    }
    return sum;
  }

  // The chain.

  /// One chain that is skipped at the hook and counts for nothing stands on end beside the others.
  bool turns_on_axis() const {
    const fabric::Part& part = fabric_.parts[plan_.part];
    const fabric::Round &chain = fabric_.rounds[part.foundation], &first = fabric_.rounds[part.first_round];
    const bool joined = (fabric_.stitches[first.first_stitch + first.count - 1].flags & fabric::joins) != 0;
    return chain.first_stitch + chain.count == core_.near + 2 && first.counting_chain == fabric::none &&
           !joined;
  }

  void lay_chain() {
    const std::uint32_t foundation = fabric_.parts[plan_.part].foundation;
    std::vector<Item> items = items_of(fabric_, foundation);
    const StitchId first = fabric_.rounds[foundation].first_stitch;
    const std::uint32_t kept = core_.near - first + 1;
    const std::vector<Item> skipped(items.begin() + kept, items.end());
    items.resize(kept);
    if (turns_on_axis())
      items.push_back(skipped.front());
    else
      lead_.assign(skipped.rbegin(), skipped.rend());
    Ring ring;
    ring.round = ring.last_round = foundation;
    ring.chain = true;
    ring.outer = chain_half;
    ring.inner = -chain_half;
    ring.items = static_cast<std::uint32_t>(items.size());
    oval_.figure.rings.push_back(ring);
    chain_band_ = band_of(items, extents_, false);
    const double side = page_.hand == Hand::right ? 1 : -1;
    for (std::uint32_t i = 0; i < items.size(); ++i) {
      const SymbolExtent& shape = extent(extents_, items[i].key);
      const Point middle{side * (i < kept ? pitch_ * i - oval_.stadium.half : oval_.stadium.half), 0};
      items[i].up = i < kept ? Point{0, 1} : Point{side, 0};
      items[i].height = shape.height;
      items[i].foot = middle - shape.height / 2 * items[i].up;
      stand_item(fabric_, shape, items[i], page_.hand, oval_.figure);
    }
    around_.high = chain_half;
  }

  // The rings.

  void lay_ring(const Ring& planned) {
    OvalRing ring = gather(planned);
    seat(ring);
    set_feet(ring);
    lay_oval_ring(extents_, oval_.stadium, around_, ring);
    keep_places(planned, ring);
    keep_heads(planned, ring);
    around_.begins = ring.lap;
    stand(planned, ring);
    oval_.rings.push_back(std::move(ring));
  }

  bool is_first() const { return oval_.rings.empty(); }

  OvalRing gather(const Ring& planned) {
    OvalRing ring;
    const std::vector<Item> own = items_of(fabric_, planned.round);
    const auto chains = static_cast<std::uint32_t>(lead_.size()) + leading_chains(fabric_, own);
    ring.items = std::move(lead_);
    lead_.clear();
    ring.items.insert(ring.items.end(), own.begin(), own.end());
    ring.joined = ring.items.size() > chains + 1 && is_joining(fabric_, ring.items.back());
    std::vector<Group> groups;
    if (!is_first() && plan_.kept.empty() && plan_.groups)
      groups = gather_groups(fabric_, extents_, chains, ring.items);
    Band& band = ring.band = band_of(ring.items, extents_, false);
    fan_out(fabric_, extents_, groups, page_.hand, band);
    layout::draw_loops(ring.items, {plan_.kept, page_.hand, false}, band);
    band.break_outside = planned.round != planned.last_round;
    band.label = letter(fabric_, planned, marked_loops(own), false, extents_, page_);
    const std::size_t number = oval_.figure.rings.size();
    band.room_outside = number < room_.size() ? room_[number] : 0;
    ring.cut = planned.last_round == plan_.rings.back().last_round && ends_here(planned.last_round);
    set_oval_stands(extents_, chains, fabric_.rounds[planned.round].counting_chain != fabric::none,
                    page_.hand, ring);
    ring.inner = inner_of(ring);
    return ring;
  }

  bool ends_here(std::uint32_t round) const {
    const fabric::Part& part = fabric_.parts[plan_.part];
    return part.end == fabric::End::cut && round + 1 == part.first_round + part.rounds;
  }

  double inner_of(const OvalRing& ring) const {
    const Turn turn{false, page_.hand};
    if (is_first()) return first_feet + gap_before({}, ring.band, turn) - gap_before({}, {}, turn);
    const OvalRing& inside = oval_.rings.back();
    return inside.size.outer + gap_before(inside.band, ring.band, turn);
  }

  void seat(OvalRing& ring) {
    std::vector<Item> standing;
    for (const Stand& stand : ring.stands) standing.push_back(ring.items[stand.item]);
    if (is_first())
      ring.wanted = first_seats(fabric_, core_, oval_.stadium, standing, pitch_);
    else
      for (const Item& item : standing) ring.wanted.push_back(base_of(fabric_, item, footing_));
    for (std::size_t i = 0; i < standing.size(); ++i) {
      if (ring.stands[i].column) ring.wanted[i].reset();
      ring.pull.push_back(is_shaping(fabric_, standing[i]) ? shaping_pull : plain_pull);
    }
  }

  void set_feet(OvalRing& ring) const {
    std::vector<std::vector<double>> feet;
    for (const SymbolExtent* shape : ring.band.shapes)
      feet.push_back(on_the_way(shape->feet, oval_.stadium.way));
    std::vector<Item> standing;
    std::vector<const std::vector<double>*> from_ray;
    for (const Stand& stand : ring.stands) {
      standing.push_back(ring.items[stand.item]);
      from_ray.push_back(&feet[ring.band.shape_of[stand.item]]);
    }
    ring.feet = feet_of(fabric_, standing, from_ray);
  }

  void keep_heads(const Ring& planned, const OvalRing& ring) {
    const StitchId onto_last =
        fabric_.rounds[planned.last_round].first_stitch - fabric_.rounds[planned.round].first_stitch;
    around_.heads.clear();
    for (std::size_t i = 0; i < ring.stands.size(); ++i)
      for (std::uint32_t k = 0; k < ring.stands[i].items; ++k) {
        const Item& item = ring.items[ring.stands[i].item + k];
        const std::uint32_t shape = ring.band.shape_of[ring.stands[i].item + k];
        const std::vector<double> tips = on_the_way(ring.band.shapes[shape]->tips, oval_.stadium.way);
        const double far = ring.size.wedges[shape].foot + ring.band.shapes[shape]->height;
        for (std::uint32_t j = 0; j < item.count; ++j) {
          const double aside = ring.stands[i].column ? 0 : tips[std::min<std::size_t>(j, tips.size() - 1)];
          const double at = aside_on(oval_.stadium, ring.lap, ring.at[i], aside, far);
          around_.heads.push_back(
              {carried(oval_.stadium, ring.lap, at, seats_lap), 1, item.first + j + onto_last, i});
        }
      }
  }

  void keep_places(const Ring& planned, const OvalRing& ring) {
    const StitchId onto_last =
        fabric_.rounds[planned.last_round].first_stitch - fabric_.rounds[planned.round].first_stitch;
    for (std::size_t i = 0; i < ring.stands.size(); ++i) {
      const Stand& stand = ring.stands[i];
      const Item& item = ring.items[stand.item];
      const std::uint32_t heads = stand.column ? stand.items : item.count;
      for (std::uint32_t j = 0; j < heads; ++j) {
        const double aside = stand.column ? 0 : j - (heads - 1.0) / 2;
        const double at = ring.at[i] + aside * ring.size.slot;
        const StitchId stitch = stand.column ? ring.items[stand.item + j].first : item.first + j;
        footing_.put(stitch + onto_last, carried(oval_.stadium, ring.lap, at, seats_lap));
      }
    }
  }

  void stand(const Ring& planned, OvalRing& laid) {
    Figure& figure = oval_.figure;
    Ring ring = planned;
    ring.first_item = static_cast<std::uint32_t>(figure.items.size());
    ring.inner = laid.size.inner;
    ring.outer = laid.size.outer;
    ring.middle = laid.lap.r;
    ring.lead = laid.lap.lead;
    ring.last_before_break = laid.band.break_outside;
    for (std::uint32_t i = 0; i < laid.items.size(); ++i) {
      const Item item = stood_on(extents_, oval_.stadium, laid, i);
      if (const std::vector<InGroup>* group = group_in(laid.band, laid.band.shape_of[i]))
        stand_group(fabric_, *group, item, page_.hand, figure);
      else
        stand_item(fabric_, extent(extents_, item.key), item, page_.hand, figure);
    }
    ring.items = static_cast<std::uint32_t>(figure.items.size()) - ring.first_item;
    around_.stitches.clear();
    for (std::size_t i = ring.first_item; i < figure.items.size(); ++i)
      for (Convex& piece : ink_of(extents_, figure.items[i])) around_.stitches.push_back(std::move(piece));
    figure.rings.push_back(ring);
    around_.high = laid.size.high + laid.band.room_outside;
    add_label(laid);
    if (laid.band.break_outside) add_break(laid);
    for (Convex& piece : label_ink(laid, oval_.stadium)) around_.labels.push_back(std::move(piece));
  }

  // What is no stitch.

  void add_label(const OvalRing& ring) {
    Figure& figure = oval_.figure;
    const auto number = static_cast<std::uint32_t>(figure.rings.size() - 1);
    StandingLabel label = stand_label(ring, oval_.stadium, number);
    for (Label& line : label.lines) figure.labels.push_back(std::move(line));
    for (Placed& sign : label.signs) figure.placed.push_back(std::move(sign));
    if (!ring.joined) figure.pointers.push_back(pointer_of(ring, oval_.stadium, number));
  }

  void add_break(const OvalRing& ring) {
    const double length = length_of(oval_.stadium, ring.size.middle), half = ring.size.slot / 2;
    const Lap heads = square_to(oval_.stadium, ring.lap, ring.size.outer);
    const double from = carried(oval_.stadium, ring.lap, std::max(0.0, ring.at.front() - half), heads);
    const double to = carried(oval_.stadium, ring.lap, std::min(length, ring.at.back() + half), heads);
    oval_.figure.strokes.push_back(break_on(oval_.stadium, heads, from, to));
    around_.high = std::max(around_.high, heads.r + ring_break_middle + ring_break_reach);
  }

  void add_arrow() {
    const Lap outside = square_to(oval_.stadium, around_.begins, around_.high + arrow_gap);
    for (Stroke& stroke : arrow_on(oval_.stadium, outside)) oval_.figure.strokes.push_back(std::move(stroke));
  }

  void add_kept_loops() {
    std::vector<Band> bands;
    bands.push_back(std::move(chain_band_));
    for (OvalRing& ring : oval_.rings) bands.push_back(std::move(ring.band));
    add_loops(keeping_of(plan_), bands, extents_, page_.hand, oval_.figure);
    for (std::size_t i = 0; i < oval_.rings.size(); ++i) oval_.rings[i].band = std::move(bands[i + 1]);
  }

  const Fabric& fabric_;
  const Plan& plan_;
  const Extents& extents_;
  const Page& page_;
  OvalCore core_;
  Footing footing_;
  Oval oval_;
  Around around_;
  Band chain_band_;
  std::vector<Item> lead_; ///< chains skipped at the hook, which stand on end where the first round begins
  std::vector<double> room_;
  double pitch_; ///< of the starting chain
};

} // namespace

namespace {

/// Finds the pitch of the chain that suits best, while nothing else needs room. Where stitches have no room
/// by their own places, the chain is pulled apart, as long as that does not draw all out of shape.
class Spreading {
public:
  Spreading(const Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page)
      : fabric_(fabric), plan_(plan), extents_(extents), page_(page) {}

  double best() {
    double best = least_pitch;
    Fit fit = fit_of(best, all);
    const double most_uneven = 1.2 * fit.uneven;
    int in_vain = 0;
    for (double pitch = wider * least_pitch; fit.not_held > 0 && in_vain < most_in_vain; pitch *= wider) {
      const Fit wide = fit_of(pitch, fit.not_held);
      ++in_vain;
      if (wide.not_held < fit.not_held && wide.uneven < most_uneven) fit = wide, best = pitch, in_vain = 0;
    }
    return best;
  }

private:
  Fit fit_of(double pitch, std::size_t most) const {
    Laying laying(fabric_, plan_, extents_, page_, pitch);
    laying.put_together({}, 0, most);
    return laying.fit();
  }

  static constexpr double wider = 1.2;
  static constexpr int most_in_vain = 2;

  const Fabric& fabric_;
  const Plan& plan_;
  const Extents& extents_;
  const Page& page_;
};

} // namespace

Oval draw_oval(const Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page) {
  constexpr double more = 0.2;
  const double pitch = Spreading(fabric, plan, extents, page).best();
  std::vector<double> room;
  for (int i = 0;; ++i) {
    Laying laying(fabric, plan, extents, page, pitch);
    std::vector<int> crowded = laying.put_together(room, i);
    crowded = rings_to_widen(plan, i, std::move(crowded), laying.lengthen());
    if (crowded.empty() || (!plan.grows && i == most_layings)) return laying.drawn();
    if (i == most_layings_for_feet)
      return draw_oval(fabric, given_up(plan, laying.drawn().figure), extents, page);
    room.resize(laying.lines(), 0);
    for (const int ring : crowded)
      if (ring >= 0) room[static_cast<std::size_t>(ring)] += more;
  }
}

} // namespace whorl::layout
