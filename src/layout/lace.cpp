#include "layout/lace.hpp"

#include "fabric/opening.hpp"
#include "layout/lace_furniture.hpp"
#include "layout/lace_space.hpp"
#include "layout/long_legs.hpp"
#include "layout/row_items.hpp"
#include "layout/section.hpp"
#include "layout/stand.hpp"
#include "layout/straight.hpp"
#include "layout/turn.hpp"
#include "layout/under_feet.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric, fabric::StitchId;

constexpr double clearance = 0.30, over_space = 0.20, over_loops = 0.10; ///< under feet
constexpr double first_middle = 1.75, least_feet = 1.0;                  ///< of a first ring
constexpr double plain_pull = 1.5, group_pull = 6;
constexpr double stiffer_in_lace = 10;
constexpr double spine_corner = 0.15;  ///< its radius
constexpr double worth_rounding = 0.1; ///< W that a ring comes nearer
constexpr double dot_over_head = 0.22, dot_air = 0.09;

/// Counts of lace, whose chains are not counted, stand in the table; one that is not met is told.
Lettering number_alone(Lettering label) {
  if (label.first.back().text.find("(!)") != std::string::npos) return label;
  label.first.resize(1);
  label.width = letters_width(label);
  put_signs_behind(label);
  return label;
}

/// A figure of lace while it is put together.
class Laying {
public:
  Laying(const Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page,
         const Outline& outline)
      : fabric_(fabric), plan_(plan), extents_(extents), page_(page),
        heads_(fabric, first_stitch(fabric, plan), stitches(fabric, plan)), under_feet_(fabric) {
    lace_.figure = begin_figure(plan, extents, page);
    lace_.contour.corners = outline.corners;
    lace_.contour.corner = outline.corner;
    outline_ = outline;
    if (outline.corners > 0) lace_.figure.form = layout::Form::motif;
    lace_.figure.corners = outline.corners;
    if (is_sector()) {
      lace_.figure.form = layout::Form::sector;
      if (plan.sector.spine) lace_.contour.corners = 4, lace_.contour.corner = spine_corner;
      if (plan.sector.spine) lace_.contour.ahead = 0.5;
      counts_ = std::none_of(plan.rings.begin(), plan.rings.end(),
                             [&fabric](const Ring& ring) { return works_in_spaces(fabric, ring.round); });
    }
    lace_.contour.way = lace_.figure.clockwise ? Way::clockwise : Way::anticlockwise;
    const double reach = centre_reach(lace_.figure);
    if (reach > 0) inside_.add({octagon(reach)});
  }

  std::vector<int> put_together(const Space& space, int again) {
    space_ = space;
    for (std::uint32_t i = 0; i < plan_.rings.size(); ++i) lay_ring(i);
    return furnish_lace(fabric_, extents_, page_, again, lace_);
  }

  const Lace& laid() const { return lace_; }
  Lace drawn() { return std::move(lace_); }

private:
  static StitchId first_stitch(const Fabric& fabric, const Plan& plan) {
    return fabric.rounds[plan.rings.front().round].first_stitch;
  }
  static std::uint32_t stitches(const Fabric& fabric, const Plan& plan) {
    const fabric::Round& last = fabric.rounds[plan.rings.back().round];
    return last.first_stitch + last.count - first_stitch(fabric, plan);
  }

  static Convex octagon(double reach) {
    Convex outline;
    for (int i = 0; i < 8; ++i)
      outline.push_back(on_circle(reach / cosine(pi / 8), pi / 4 * i, Way::anticlockwise));
    return outline;
  }

  // The rings.

  bool is_sector() const { return plan_.sector.twelfths < 12; }

  void lay_ring(std::uint32_t number) {
    const Ring& planned = plan_.rings[number];
    if (planned.chain) return stand_first_chain(number);
    items_ = is_sector() ? row_items(number) : items_of(fabric_, planned.round, planned.echo);
    contour_ = contour_of(lace_, planned);
    hand_ = planned.against == (page_.hand == Hand::left) ? Hand::right : Hand::left;
    spaces_ = works_in_spaces(fabric_, planned.round);
    LaceRing ring = chosen_ring(number);
    inside_.add(ink_of_ring(extents_, contour_, ring));
    begin_ring(number, ring);
    stand_slips(ring);
    stand(number, ring);
    under_feet_.add(lace_.figure, lace_.figure.rings[number]);
    lace_.rings.push_back(std::move(ring));
  }

  /// The chains with which a row is turned stand before the next.
  std::vector<Item> row_items(std::uint32_t number) {
    std::vector<Item> items = items_of(fabric_, plan_.rings[number].round, plan_.rings[number].echo);
    if (number == 1 && plan_.rings.front().chain) items = each_alone(items);
    std::vector<Item> next;
    if (number + 1 < plan_.rings.size())
      next.assign(items.end() - trailing_chains(fabric_, items), items.end());
    items.resize(items.size() - next.size());
    items.insert(items.begin(), lead_.begin(), lead_.end());
    lead_ = std::move(next);
    return items;
  }

  /// The chain that the first row goes into stands in the middle, those skipped beside the first stitch.
  void stand_first_chain(std::uint32_t number) {
    contour_ = contour_of(lace_, plan_.rings[number]);
    std::vector<Item> items = items_of(fabric_, plan_.rings[number].round);
    begin_ring(number, {});
    lead_.assign(items.begin() + 1, items.end());
    Item chain = items.front();
    chain.height = extent(extents_, chain.key).height;
    chain.foot = {0, -chain.height / 2};
    chain.up = {0, 1};
    inside_.add(ink_of(extents_, chain));
    stand_item(fabric_, extent(extents_, chain.key), chain, hand_, lace_.figure);
    Ring& ring = lace_.figure.rings[number];
    ring.items = 1;
    ring.inner = 0;
    lace_.rings.emplace_back();
  }

  /// Whether the groups of corners are drawn into them, or stand over what they go into: where that is off
  /// its own corner a ring would have to stand far out before their feet are by their places.
  enum class Corners : std::uint8_t { draw, leave };

  bool has_corners(const LaceRing& ring) const {
    return lace_.contour.corners > 0 &&
           std::any_of(ring.bunches.begin(), ring.bunches.end(),
                       [](const Bunch& bunch) { return bunch.corner || bunch.crowd; });
  }

  /// Where a ring would stand far out, the fans of its crowds are round, or its corners left where they are.
  LaceRing chosen_ring(std::uint32_t number) {
    LaceRing ring = laid_ring(number, Corners::draw, 0);
    const auto take_nearer = [&](Corners corners, double round, double much) {
      if (ring.pushed <= least_pushed(number) + much) return;
      LaceRing other = laid_ring(number, corners, round);
      if (other.pushed < ring.pushed - much) ring = std::move(other);
    };
    if (has_corners(ring)) take_nearer(Corners::leave, 0, 0);
    const bool crowded = std::any_of(ring.bunches.begin(), ring.bunches.end(), [this](const Bunch& bunch) {
      return bunch.crowd && goes_into_space(bunch);
    });
    for (const double round : {0.4, 0.7, 1.0})
      if (crowded) take_nearer(Corners::draw, round, worth_rounding);
    return ring;
  }

  LaceRing laid_ring(std::uint32_t number, Corners corners, double round_fans) {
    const Ring& planned = plan_.rings[number];
    const fabric::Round& round = fabric_.rounds[planned.round];
    LaceRing ring;
    ring.part = plan_.sector.part();
    ring.bunches = bunches_of(fabric_, extents_, items_,
                              {round.counting_chain != fabric::none, contour_.way, round_fans});
    if (is_sector()) give_each_a_slot(ring);
    ring.least_pushed = least_pushed(number);
    ring.valleys = round_fans > 0;
    ring.label = letter(fabric_, planned, marked_loops(items_), false, extents_, page_);
    if (!counts_) ring.label = number_alone(std::move(ring.label));
    ring.pointed = !round.joined || is_turned(lace_.figure) || is_sector();
    ring.feet_if_none = nominal_feet(number);
    ring.start = is_sector() ? 0 - ring.part / 2 : turned_round(outline_.start);
    for (const Bunch& bunch : ring.bunches) seat(bunch, number, ring);
    const double pull = spaces_ ? group_pull : group_pull / stiffer_in_lace;
    if (plan_.sector.spine) draw_to_spine(pull, ring);
    if (is_sector()) corners = Corners::leave;
    if (number == 0 && !is_sector()) share_out(lace_.contour.corners, plain_pull / stiffer_in_lace, ring);
    if (corners == Corners::draw) draw_to_corners(lace_.contour.corners, pull, ring);
    if (corners == Corners::draw) hang_in_corners(fabric_, outline_, pull, ring);
    lay_lace_ring(
        extents_, contour_, inside_, [this](const std::vector<Item>& items) { return stand_in_place(items); },
        ring);
    return ring;
  }

  /// Stitches in one place want as much of their row as others, however near their heads may stand.
  void give_each_a_slot(LaceRing& ring) const {
    for (Bunch& bunch : ring.bunches) {
      std::uint32_t many = 0;
      for (const Item& item : bunch.standing) many += legs_of(fabric_, item).size() > 0 ? item.count : 0;
      bunch.slot = std::max<double>(bunch.slot, many);
    }
  }

  bool stand_in_place(const std::vector<Item>& items) const {
    const std::vector<Feet> feet = feet_of(fabric_, extents_, items, hand_);
    return std::all_of(feet.begin(), feet.end(), [this](const Feet& one) { return under_feet_.holds(one); });
  }

  /// A place of the figure along the ring that is laid, or the other way about.
  double turned_round(double at) const { return contour_.way == lace_.contour.way ? at : 0 - at; }

  double tallest() const {
    double tallest = 0;
    for (const Item& item : items_) tallest = std::max(tallest, extent(extents_, item.key).height);
    return tallest;
  }

  double room_inside(std::uint32_t number) const { return number > 0 ? space_.room[number - 1] : 0; }
  double least_pushed(std::uint32_t number) const { return space_.pushed[number]; }

  /// Of what has no base that is drawn.
  double nominal_feet(std::uint32_t number) const {
    if (number == 0 || plan_.rings[number - 1].chain)
      return std::max(first_middle - tallest() / 2, std::min(least_feet, first_middle - 0.4));
    return lace_.figure.rings[number - 1].outer + clearance + room_inside(number);
  }

  void seat(const Bunch& bunch, std::uint32_t number, LaceRing& ring) {
    std::optional<Spotted> seat;
    double feet = 0, pull = group_pull;
    if (bunch.sort == Bunch::Sort::stitch) {
      seat = seat_of(bunch);
      feet = seat ? seat->r + under_feet(bunch) + room_inside(number) : ring.feet_if_none;
      if (!bunch.group && !goes_into_space(bunch)) pull = plain_pull;
    } else if (bunch.sort == Bunch::Sort::column) {
      seat = first_head(number);
      feet = seat ? seat->r + clearance + room_inside(number) : ring.feet_if_none;
      pull = plain_pull;
    }
    if (seat) seat->at = turned_round(seat->at);
    ring.seats.push_back(seat);
    ring.feet.push_back(feet);
    ring.pull.push_back(spaces_ ? pull : pull / stiffer_in_lace);
  }

  bool goes_into_space(const Bunch& bunch) const {
    return bunch.base && bunch.base->what == fabric::On::space;
  }

  double under_feet(const Bunch& bunch) const {
    double below = 0;
    for (const Item& item : bunch.standing) below = std::max(below, extent(extents_, item.key).below);
    return (goes_into_space(bunch) ? over_space : clearance) + (below > 0 ? below + over_loops : 0);
  }

  /// The middle of all places that a bunch goes into.
  std::optional<Spotted> seat_of(const Bunch& bunch) const {
    Spotted mean;
    int many = 0;
    for (const Item& item : bunch.standing)
      for (const fabric::Leg& leg : legs_of(fabric_, item)) {
        const std::optional<Spotted> head = heads_.of(leg.into);
        if (!head) continue;
        mean.at = (mean.at * many + (many == 0 ? head->at : turned_near(head->at, mean.at))) / (many + 1);
        mean.r = std::max(mean.r, head->r);
        ++many;
      }
    return many > 0 ? std::optional(mean) : std::nullopt;
  }

  /// Chains that begin a round stand on the first head of the round before.
  std::optional<Spotted> first_head(std::uint32_t number) const {
    if (number == 0) return std::nullopt;
    const std::vector<fabric::Place> tops = fabric::tops_of(fabric_, plan_.rings[number - 1].round);
    if (tops.empty()) return std::nullopt;
    return heads_.of(is_sector() ? tops.back() : tops.front());
  }

  // What is laid becomes part of the figure.

  void begin_ring(std::uint32_t number, const LaceRing& laid) {
    Ring& ring = lace_.figure.rings[number];
    ring.first_item = static_cast<std::uint32_t>(lace_.figure.items.size());
    ring.middle = laid.r;
    ring.inner = 1e9;
    ring.outer = 0;
  }

  /// Slip stitches that lead to where the round begins are dots on what they go into, or near by.
  void stand_slips(const LaceRing& laid) {
    const std::uint32_t slips = leading_slips(fabric_, items_);
    for (std::uint32_t i = 0; i < slips; ++i) {
      Item dot = items_[i];
      const fabric::Legs legs = legs_of(fabric_, dot);
      std::optional<Spotted> head = legs.size() > 0 ? heads_.of(legs.begin()->into) : std::nullopt;
      if (head) head->at = turned_round(head->at);
      dot.height = extent(extents_, dot.key).height;
      const bool in_space = legs.size() > 0 && legs.begin()->into.what == fabric::On::space;
      set_dot(head.value_or(Spotted{laid.r, laid.at.front()}), in_space, dot);
      dot.at = laid.at.front() * length_of(contour_, laid.r);
      inside_.add(ink_of(extents_, dot));
      stand_item(fabric_, extent(extents_, dot.key), dot, hand_, lace_.figure);
    }
  }

  /// Of a dot in a space the place is before what is worked there.
  void set_dot(Spotted head, bool in_space, Item& dot) const {
    double best = 1e9;
    const double furthest = in_space ? 0 : 1.5;
    for (double out = 0; out <= 2; out += 0.05)
      for (double aside = -1.8; aside <= furthest; aside += 0.1) {
        const double far = out * out + aside * aside, r = head.r + dot_over_head + out;
        if (far >= best) continue;
        Item there = dot;
        const double at = head.at + aside / length_of(contour_, r);
        there.foot = point_on(contour_, r, at);
        there.up = outward(contour_, at);
        if (inside_.air_around(ink_of(extents_, there), dot_air) >= dot_air) best = far, dot = there;
      }
    if (best < 1e9) return;
    dot.foot = point_on(contour_, head.r + dot_over_head, head.at);
    dot.up = outward(contour_, head.at);
  }

  void stand(std::uint32_t number, const LaceRing& laid) {
    Figure& figure = lace_.figure;
    Ring& ring = figure.rings[number];
    for (std::size_t i = 0; i < laid.bunches.size(); ++i) {
      const std::vector<Item> items = standing_items(contour_, laid, i);
      for (const Item& item : items) stand(item, laid, i);
      ring.inner = std::min(ring.inner, laid.stands[i]);
    }
    ring.items = static_cast<std::uint32_t>(figure.items.size()) - ring.first_item;
    for (std::uint32_t i = ring.first_item; i < figure.items.size(); ++i) keep_heads(figure.items[i], ring);
    add_label(number, laid);
  }

  void stand(Item item, const LaceRing& laid, std::size_t bunch) {
    Figure& figure = lace_.figure;
    const double at = laid.at[bunch];
    const double on = turned_round(at);
    item.at = (on - std::floor(on)) * length_of(contour_, laid.r);
    const SymbolExtent& shape = extent(extents_, item.key);
    stand_item(fabric_, shape, item, hand_, figure);
    if ((fabric_.stitches[item.first].flags & fabric::starts_chain) == 0 || shape.feet.size() > 0) return;
    if (laid.bunches[bunch].sort == Bunch::Sort::column || laid.bunches[bunch].base) {
      const double side = contour_.way == Way::anticlockwise ? -1 : 1;
      const Point out{0 - side * item.up.y, side * item.up.x};
      figure.tips.back() = item.foot + item.height / 2 * item.up + half_chain * out;
    }
  }

  /// In the corner of a solid motif, and in rows of a sector, stitches take the room that each has of its
  /// round, which is more than their symbol shows: so those between corners come to stand along the whole
  /// side.
  void spread_heads(const Item& item, const Ring& ring) {
    const double share = std::max(1.0, plan_.sector.part() * length_of(lace_.contour, ring.middle) /
                                           std::max(1U, fabric_.rounds[ring.round].makes));
    const Spotted middle = spot_of(lace_.contour, item.foot + item.height * item.up);
    const double step = turned_round(share / length_of(lace_.contour, middle.r));
    for (std::uint32_t j = 0; j < item.count; ++j)
      heads_.put(item.first + j, {middle.r, middle.at + (j - (item.count - 1) / 2.0) * step});
  }

  void keep_heads(const Item& item, Ring& ring) {
    for (std::uint32_t j = 0; j < item.count; ++j) {
      const Spotted head = spot_of(lace_.contour, lace_.figure.tips[item.first_tip + j]);
      heads_.put(item.first + j, head);
      ring.outer = std::max(ring.outer, head.r);
    }
    if ((lace_.contour.corners > 0 || is_sector()) && item.count > 1) spread_heads(item, ring);
  }

  void add_label(std::uint32_t number, const LaceRing& laid) {
    Figure& figure = lace_.figure;
    const Tone tone = figure.rings[number].echo ? Tone::grey : Tone::ink;
    const Lettering& text = laid.label;
    figure.labels.push_back(straight_label(laid.label_start, text.first, number, tone));
    const double base = laid.label_start.y + letter_height * number_size / 2;
    if (!text.below.empty())
      figure.labels.push_back(
          straight_label({laid.label_start.x, base + text.second - letter_height * second_size / 2},
                         text.below, number, tone));
    for (Placed& sign : yarn_signs(text, {laid.label_start.x, base}, false, number))
      figure.placed.push_back(std::move(sign));
    if (laid.pointed)
      figure.pointers.push_back({laid.pointer_tip, laid.pointer_direction, pointer_length, number, tone});
  }

  static constexpr double half_chain = 0.36; ///< of a chain in a column

  const Fabric& fabric_;
  const Plan& plan_;
  const Extents& extents_;
  const Page& page_;
  Heads heads_;
  UnderFeet under_feet_;
  Lace lace_;
  Obstacles inside_;
  std::vector<Item> items_;
  std::vector<Item> lead_; ///< chains with which the row before was turned
  Rounded contour_;        ///< of the ring that is laid, in its own direction
  Hand hand_ = Hand::right;
  bool counts_ = false; ///< stand in the labels of rows, none of which is worked into spaces
  bool spaces_ = false; ///< the round that is laid is worked into spaces
  Space space_;
  Outline outline_;
};

} // namespace

Lace draw_lace(const Fabric& fabric, const Plan& plan, const Extents& extents, const Page& page) {
  constexpr int most_times = 10;
  constexpr double more = 0.2, far_out = 0.6;
  Space space{std::vector<double>(plan.rings.size(), 0), std::vector<double>(plan.rings.size(), 0)};
  Outline outline;
  bool shared = false;
  for (int i = 0;; ++i) {
    Laying laying(fabric, plan, extents, page, outline);
    std::vector<int> crowded = laying.put_together(space, i);
    if (i == 0 && outline.corners == 0 && plan.sector.twelfths == 12) {
      outline = outline_of(fabric, laying.laid());
      if (outline.corners > 0) {
        --i;
        continue;
      }
    }
    if (plan.sector.twelfths == 12 && !std::exchange(shared, true) && most_pushed(laying.laid()) > far_out) {
      share_pushes(laying.laid(), space);
      --i;
      continue;
    }
    if (crowded.empty() || i == most_times) {
      Lace drawn = laying.drawn();
      const bool rows = drawn.figure.form == layout::Form::sector;
      crowded =
          lengthen_legs(fabric, extents, rows ? Lines::of_every_foot : Lines::of_many_legs, drawn.figure);
      if (!rows || crowded.empty() || i == most_times) return drawn;
    }
    for (const int ring : crowded)
      if (ring >= 0) space.room[static_cast<std::size_t>(ring)] += more;
  }
}

} // namespace whorl::layout
