#include "layout/bunch.hpp"

#include "layout/fan.hpp"
#include "layout/obstacles.hpp"
#include "layout/sector.hpp"
#include "layout/stand.hpp"
#include "layout/straight.hpp"
#include "layout/turn.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::Legs;
using fabric::Place;

constexpr double chain_pitch = 0.68, air_along = 0.12;
constexpr std::uint32_t least_crowd = 3;
constexpr double longest = 1.5;                                  ///< of its height a stem may be longer
constexpr int rises = 24;                                        ///< that are tried of a group
constexpr double least_stem_air = 0.05;                          ///< of those of one group
constexpr double dot_beside_chain = 0.44, dot_beside_bar = 0.58; ///< from a head to the dot beside it

bool is_chain(const Fabric& fabric, const Item& item) {
  const stitch::Shape shape = stitch::shape_of(fabric.kinds[item.key.kind]);
  return shape.legs == 0 && shape.picot == 0;
}

bool joins(const Fabric& fabric, const Item& item) {
  return (fabric.stitches[item.first].flags & fabric::joins) != 0;
}

bool is_slip(const Fabric& fabric, const Item& item) {
  const stitch::Shape shape = stitch::shape_of(fabric.kinds[item.key.kind]);
  return shape.legs == 1 && shape.height == 0 && !shape.bar;
}

/// The first chain of a part that stands in its middle: stitches that go into it stand round it.
bool is_first_chain(const Fabric& fabric, const Place& place) {
  if (!is_stitch(place)) return false;
  const fabric::Round& chain = fabric.rounds[fabric.stitches[place.of].round];
  const fabric::Part& part = fabric.parts[chain.part];
  return part.foundation == fabric.stitches[place.of].round && place.of == chain.first_stitch &&
         (part.start == fabric::Start::second_chain || begins_in_first_chain(fabric, part));
}

/// The one place into which an item goes: no ring, and not several.
std::optional<Place> place_of(const Fabric& fabric, const Item& item) {
  const Legs legs = legs_of(fabric, item);
  if (legs.size() == 0 || joins(fabric, item)) return std::nullopt;
  const Place first = legs.begin()->into;
  for (const fabric::Leg& leg : legs)
    if (!(leg.into == first)) return std::nullopt;
  return first.what == fabric::On::ring || is_first_chain(fabric, first) ? std::nullopt
                                                                         : std::optional(first);
}

/// Finds what belongs together among the items of a ring.
class Gathering {
public:
  Gathering(const Fabric& fabric, const Extents& extents, const std::vector<Item>& items, const Gathered& how)
      : fabric_(fabric), extents_(extents), items_(items), chain_counts_(how.chain_counts), way_(how.way),
        round_(how.round), side_(way_ == Way::anticlockwise ? -1 : 1), slips_(leading_slips(fabric, items)),
        column_(slips_ + leading_chains(fabric, {items.begin() + slips_, items.end()})) {
    size_ = static_cast<std::uint32_t>(items.size());
    if (size_ > column_ + 1 && joins(fabric, items.back())) --size_;
  }

  std::vector<Bunch> bunches() {
    std::vector<Bunch> all;
    for (std::uint32_t at = slips_; at < size_;) {
      const std::uint32_t end = end_of(at);
      if (all.empty() || end != at + 1 || !stands_on_heads(items_[at]) || !put_on(items_[at], all.back()))
        all.push_back(bunch(at, end));
      at = end;
    }
    for (Bunch& bunch : all) bunch.share = bunch.slot;
    if (size_ < items_.size() && !all.empty()) join(all.front());
    for (Bunch& bunch : all) set_rising(bunch);
    return all;
  }

private:
  std::uint32_t end_of_chains(std::uint32_t at) const {
    while (at < size_ && is_chain(fabric_, items_[at])) ++at;
    return at;
  }

  std::uint32_t end_of(std::uint32_t at) const {
    if (at < column_) return end_with_column();
    if (is_chain(fabric_, items_[at])) return end_of_chains(at);
    return end_of_group(at + 1, place_of(fabric_, items_[at]));
  }

  /// The chains that a round starts with go with what stands beside them: as a stitch with the group in its
  /// space, as none with whatever follows.
  std::uint32_t end_with_column() const {
    if (column_ >= size_ || stands_between(items_[column_])) return column_;
    return chain_counts_ ? end_of_group(column_, space_of(column_)) : end_of(column_);
  }

  /// The space into which an item goes.
  std::optional<Place> space_of(std::uint32_t at) const {
    const std::optional<Place> place = at < size_ ? place_of(fabric_, items_[at]) : std::nullopt;
    return place && place->what == fabric::On::space ? place : std::nullopt;
  }

  /// Behind what goes into the same place, with the few chains and picots between.
  std::uint32_t end_of_group(std::uint32_t at, const std::optional<Place>& place) const {
    if (!place) return at;
    for (std::uint32_t next = at; next < size_; ++next) {
      while (next < size_ && next < at + least_bow && stands_between(items_[next])) ++next;
      if (next >= size_ || next >= at + least_bow || place_of(fabric_, items_[next]) != place) break;
      at = next + 1;
    }
    return at;
  }

  bool stands_between(const Item& item) const {
    return legs_of(fabric_, item).size() == 0 && !joins(fabric_, item);
  }

  Bunch bunch(std::uint32_t first, std::uint32_t end) const {
    Bunch bunch;
    bunch.first = first;
    if (first < column_ && end == column_)
      stand_column(bunch);
    else if (first >= column_ && is_chain(fabric_, items_[first]))
      hang_chains(end, bunch);
    else
      stand(end, bunch);
    return bunch;
  }

  void stand_column(Bunch& bunch) const {
    bunch.sort = Bunch::Sort::column;
    bunch.standing = fanned({column()}, Spread{}, extents_, way_);
    measure(chain_counts_ ? 1 : 0.6, bunch);
    bunch.low_head = column_pitch * (column_ - slips_);
  }

  void hang_chains(std::uint32_t end, Bunch& bunch) const {
    bunch.sort = Bunch::Sort::bow;
    bunch.standing.assign(items_.begin() + bunch.first, items_.begin() + end);
    bend(extents_, 1, way_, bunch);
  }

  void stand(std::uint32_t end, Bunch& bunch) const {
    std::vector<Member> members;
    for (std::uint32_t i = std::max(bunch.first, column_); i < end; ++i) members.push_back(member(items_[i]));
    const bool starts = bunch.first < column_, alone = members.size() == 1 && !chain_counts_;
    if (starts && !alone) members.insert(members.begin(), column());
    const Item& last = items_[end - 1];
    if (end == bunch.first + 1 && (legs_of(fabric_, last).size() == 0 || joins(fabric_, last)))
      bunch.sort = Bunch::Sort::hung;
    if (bunch.sort == Bunch::Sort::stitch) bunch.base = place_of(fabric_, last);
    bunch.corner = bunch.first + 2 < end &&
                   std::any_of(items_.begin() + std::max(bunch.first, column_), items_.begin() + end,
                               [this](const Item& item) { return is_chain(fabric_, item); });
    bunch.crowd = bunch.base && !bunch.corner && stitches_in(end, bunch) >= least_crowd;
    bunch.standing = fanned(members, spread(bunch), extents_, way_);
    if (starts && alone) put_before(bunch);
    if (starts && !alone && !chain_counts_) centre_feet(bunch);
    bunch.group = members.size() > 1;
    measure(bunch.group ? 0 : extent(extents_, last.key).slot, bunch);
    const double back = head(bunch.standing.back()).y;
    bunch.low_head = bunch.first < column_ ? back : (head(bunch.standing.front()).y + back) / 2;
  }

  std::uint32_t stitches_in(std::uint32_t end, const Bunch& bunch) const {
    std::uint32_t many = bunch.first < column_ && chain_counts_ ? 1 : 0;
    for (std::uint32_t i = std::max(bunch.first, column_); i < end; ++i)
      if (legs_of(fabric_, items_[i]).size() > 0) many += items_[i].count;
    return many;
  }

  /// Chains that are no stitch leave the middle of the place to those that are.
  void centre_feet(Bunch& bunch) const {
    double sum = 0;
    int feet = 0;
    for (std::size_t i = column_ - slips_; i < bunch.standing.size(); ++i)
      if (legs_of(fabric_, bunch.standing[i]).size() > 0) sum += bunch.standing[i].foot.x, ++feet;
    for (Item& item : bunch.standing) item.foot.x -= sum / std::max(1, feet);
  }

  /// Chains that are no stitch stand upright before the first.
  void put_before(Bunch& bunch) const {
    std::vector<Item> chains = fanned({column()}, Spread{}, extents_, way_);
    measure(0, bunch);
    const double aside = bunch.before + air_along + extent(extents_, chains.front().key).height / 2;
    for (Item& chain : chains) chain.foot.x -= side_ * aside;
    bunch.standing.insert(bunch.standing.begin(), chains.begin(), chains.end());
  }

  static Point head(const Item& item) { return item.foot + item.height * item.up; }

  /// The top of the first stitch, or of the chains that stand for it.
  Point first_head(const Bunch& bunch) const {
    const Item& first = bunch.standing.front();
    if (bunch.first >= column_) return head(first);
    const Item& last = bunch.standing[column_ - slips_ - 1];
    return last.foot + last.height / 2 * last.up +
           column_pitch / 2 * Point{side_ * -last.up.y, side_ * last.up.x};
  }

  bool stands_on_heads(const Item& item) const { return extent(extents_, item.key).on_heads; }

  /// A picot stands on the head of the stitch before it; whether there is one.
  bool put_on(Item picot, Bunch& bunch) const {
    if (bunch.sort != Bunch::Sort::stitch || stands_on_heads(bunch.standing.back())) return false;
    const Item& under = bunch.standing.back();
    picot.foot = head(under);
    picot.up = under.up;
    picot.height = extent(extents_, picot.key).height;
    bunch.standing.push_back(picot);
    measure(bunch.slot, bunch);
    return true;
  }

  /// The dot that joins a round stands beside the head of its first stitch, where the last one was.
  void join(Bunch& bunch) const {
    Item dot = items_.back();
    const SymbolExtent& shape = extent(extents_, dot.key);
    const double aside = bunch.first < column_ ? dot_beside_chain : dot_beside_bar;
    dot.height = shape.height;
    dot.up = {0, 1};
    dot.foot = first_head(bunch) + Point{-side_ * aside, -shape.height};
    bunch.standing.push_back(dot);
    measure(bunch.slot, bunch);
  }

  Spread spread(const Bunch& bunch) const {
    if (!bunch.base || bunch.base->what != fabric::On::space) return {};
    return {bunch.base->of < fabric_.arches.size() ? chain_pitch * fabric_.arches[bunch.base->of].count : 0,
            true, bunch.crowd ? round_ : 0};
  }

  Member member(const Item& item) const {
    Member member;
    member.items = {item};
    const SymbolExtent& shape = extent(extents_, item.key);
    member.height = shape.height;
    member.hangs = legs_of(fabric_, item).size() == 0;
    member.on_heads = shape.on_heads;
    return member;
  }

  /// The chains that the round starts with.
  Member column() const {
    Member member;
    member.items.assign(items_.begin(), items_.begin() + column_);
    member.items.erase(member.items.begin(), member.items.begin() + slips_);
    member.height = column_pitch * (column_ - slips_);
    member.on_end = true;
    return member;
  }

  void set_rising(Bunch& bunch) const {
    const std::size_t chains = bunch.first < column_ ? column_ - slips_ : 0;
    for (const Item& item : bunch.standing) {
      const bool stands = legs_of(fabric_, item).size() > 0 && !joins(fabric_, item);
      const bool stem = stands && bunch.sort == Bunch::Sort::stitch && extent(extents_, item.key).stretches;
      const bool on_end = bunch.rising.size() < chains;
      bunch.rising.push_back(stem                      ? Rising::stem
                             : on_end && chain_counts_ ? Rising::on_end
                             : on_end || stands        ? Rising::none
                                                       : Rising::whole);
      if (stem) bunch.most_rise = std::max(bunch.most_rise, longest * item.height);
    }
    if (bunch.most_rise > 0 && bunch.group) keep_stems_apart(bunch);
  }

  /// No longer than its stems keep apart, which stand at the steeper to one another the longer they are.
  void keep_stems_apart(Bunch& bunch) const {
    const double most = bunch.most_rise;
    bunch.most_rise = 0;
    for (int i = 1; i <= rises; ++i) {
      const double rise = most * i / rises;
      if (stem_air(bunch, rise) < least_stem_air) return;
      bunch.most_rise = rise;
    }
  }

  double stem_air(const Bunch& bunch, double rise) const {
    const std::vector<Item> items = raised(bunch, rise);
    double least = least_stem_air;
    for (std::size_t i = 0; i < items.size(); ++i)
      for (std::size_t k = i + 1; k < items.size(); ++k)
        if (bunch.rising[i] == Rising::stem || bunch.rising[i] != bunch.rising[k])
          least = std::min(least, air_between(ink_of(extents_, items[i]), ink_of(extents_, items[k]), least));
    return least;
  }

  void measure(double slot, Bunch& bunch) const {
    double left = 0, right = 0;
    for (const Item& item : bunch.standing)
      for (const Convex& piece : ink_of(extents_, item))
        for (const Point& p : piece) left = std::max(left, -p.x), right = std::max(right, p.x);
    const bool leftward = way_ == Way::anticlockwise;
    bunch.before = leftward ? right : left;
    bunch.behind = leftward ? left : right;
    bunch.slot = std::max(slot, left + right + air_along);
  }

  const Fabric& fabric_;
  const Extents& extents_;
  const std::vector<Item>& items_;
  bool chain_counts_;
  Way way_;
  double round_;
  double side_;
  std::uint32_t size_ = 0; ///< but for the dot that joins
  std::uint32_t slips_;    ///< behind those that lead to its start
  std::uint32_t column_;   ///< and behind the chains that the round starts with, on end
};

/// Half the angle of an arc that is so much longer than its chord.
double half_angle(double stretch) {
  double low = 0, high = 2.2;
  for (int i = 0; i < 40; ++i) {
    const double half = (low + high) / 2;
    (sine(half) > stretch * half ? low : high) = half;
  }
  return low;
}

} // namespace

std::uint32_t leading_slips(const Fabric& fabric, const std::vector<Item>& items) {
  std::uint32_t slips = 0;
  while (slips < items.size() && (joins(fabric, items[slips]) || is_slip(fabric, items[slips]))) ++slips;
  if (slips == items.size()) return 0;
  const bool leads = slips > 0 && joins(fabric, items[slips - 1]);
  return leads || (fabric.stitches[items[slips].first].flags & fabric::starts_chain) != 0 ? slips : 0;
}

bool is_bow(const Bunch& bunch) { return bunch.sort == Bunch::Sort::bow; }
bool is_short(const Bunch& bow) { return bow.standing.size() < least_bow; }

void bend(const Extents& extents, double stretch, Way way, Bunch& bow, std::uint32_t least) {
  const auto chains = static_cast<double>(bow.standing.size());
  const SymbolExtent& chain = extent(extents, bow.standing.front().key);
  const double half = stretch < 1 && chains >= least ? half_angle(stretch) : 0;
  const double radius = half > 0 ? chain_pitch * chains / 2 / half : 0;
  const double side = way == Way::anticlockwise ? -1 : 1;
  bow.low_head = chain.height;
  bow.stretch = stretch;
  double reach = 0;
  for (std::size_t i = 0; i < bow.standing.size(); ++i) {
    Item& item = bow.standing[i];
    const double place = (static_cast<double>(i) + 0.5) / chains - 0.5;
    const double angle = 2 * half * place;
    item.up = {side * sine(angle), cosine(angle)};
    item.height = chain.height;
    const Point middle = half > 0
                             ? Point{side * radius * sine(angle), radius * (cosine(angle) - cosine(half))}
                             : Point{side * place * chains * chain_pitch * std::max(1.0, stretch), 0};
    item.foot = middle + Point{0, chain.height / 2} - chain.height / 2 * item.up;
    for (const Convex& piece : ink_of(extents, item))
      for (const Point& p : piece) reach = std::max(reach, std::abs(p.x));
  }
  bow.before = bow.behind = reach;
  bow.slot = 2 * reach + air_along;
}

std::vector<Bunch> bunches_of(const Fabric& fabric, const Extents& extents, const std::vector<Item>& items,
                              const Gathered& how) {
  return Gathering(fabric, extents, items, how).bunches();
}

} // namespace whorl::layout
