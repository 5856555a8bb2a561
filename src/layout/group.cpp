#include "layout/group.hpp"

#include "layout/bunch.hpp"
#include "layout/fan.hpp"
#include "layout/items.hpp"
#include "layout/stand.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::Place;

constexpr double low_stitch = 1.2;                 ///< beside it chains lead up to what is taller
constexpr double chain_pitch = 0.72;               ///< of chains on end
constexpr std::size_t least_led = 2, most_led = 5; ///< chains that lead up
constexpr std::size_t most_between = 5;            ///< chains that belong into a group
constexpr std::size_t most_asked_alone = 2;        ///< feet in one place; of more the middle is
constexpr double air_along = 0.12;
constexpr double share = 0.8; ///< of its width a group wants along its ring: it is narrower at its foot

/// What an item is to a group.
class Sorting {
public:
  Sorting(const Fabric& fabric, const Extents& extents) : fabric_(fabric), extents_(extents) {}

  bool is_chain(const Item& item) const {
    if (legs_of(fabric_, item).size() > 0) return false;
    const stitch::Shape shape = shape_of(item);
    return shape.legs == 0 && shape.picot == 0;
  }
  bool is_slip(const Item& item) const {
    const stitch::Shape shape = shape_of(item);
    return shape.legs == 1 && shape.height == 0 && !shape.bar && place_of(item).has_value();
  }
  bool is_on_heads(const Item& item) const { return extent(extents_, item.key).on_heads; }
  double height(const Item& item) const { return extent(extents_, item.key).height; }
  bool is_low(const Item& item) const { return height(item) < low_stitch; }
  bool is_tall(const Item& item) const { return place_of(item) && !is_low(item); }

  /// The one stitch that an item goes into.
  std::optional<Place> place_of(const Item& item) const {
    constexpr unsigned other = fabric::joins | fabric::holds_part | fabric::two_layers;
    const fabric::Legs legs = legs_of(fabric_, item);
    if (legs.size() == 0 || (fabric_.stitches[item.first].flags & other) != 0) return std::nullopt;
    if (item.stem > 0) return std::nullopt;
    const Place into = legs.begin()->into;
    for (const fabric::Leg& leg : legs)
      if (!(leg.into == into)) return std::nullopt;
    const bool before =
        is_stitch(into) && fabric_.stitches[into.of].round != fabric_.stitches[item.first].round;
    return before ? std::optional(into) : std::nullopt;
  }

private:
  stitch::Shape shape_of(const Item& item) const { return stitch::shape_of(fabric_.kinds[item.key.kind]); }

  const Fabric& fabric_;
  const Extents& extents_;
};

/// Finds where groups begin and end.
class Gathering {
public:
  Gathering(const Sorting& sorting, const std::vector<Item>& items) : sorting_(sorting), items_(items) {}

  /// Behind the group that begins there; the same place: none does.
  std::size_t end_of(std::size_t at) const {
    const std::size_t foot = behind_chains(at);
    if (foot == items_.size() || !sorting_.place_of(items_[foot])) return at;
    if (foot > at && !lead_down(at, foot)) return at;
    const std::size_t end = behind_picots(behind_led(behind_place(foot)));
    const auto any = [&](auto is) {
      return std::any_of(items_.begin() + static_cast<std::ptrdiff_t>(at),
                         items_.begin() + static_cast<std::ptrdiff_t>(end), is);
    };
    const bool between = any([this](const Item& item) { return is_between(item); });
    const auto is_other = [&](const Item& item) { return item.key.kind != items_[at].key.kind; };
    const bool mixed = any(is_other) && any([this](const Item& item) { return sorting_.is_tall(item); });
    return between || mixed ? end : at;
  }

private:
  std::size_t behind_chains(std::size_t at) const {
    while (at < items_.size() && sorting_.is_chain(items_[at])) ++at;
    return at;
  }

  bool may_lead(std::size_t first, std::size_t end, const Item& tall) const {
    return end - first >= least_led && end - first <= most_led && sorting_.is_tall(tall);
  }

  /// Whether chains lead from a tall stitch down to a slip stitch.
  bool lead_down(std::size_t first, std::size_t foot) const {
    return first > 0 && sorting_.is_slip(items_[foot]) && may_lead(first, foot, stitch_before(first));
  }

  const Item& stitch_before(std::size_t at) const {
    do --at;
    while (at > 0 && sorting_.is_on_heads(items_[at]));
    return items_[at];
  }

  /// Behind what goes into the place of the item there, with the chains and picots between.
  std::size_t behind_place(std::size_t foot) const {
    const std::optional<Place> place = sorting_.place_of(items_[foot]);
    std::size_t end = foot + 1;
    for (std::size_t next = end; next < items_.size(); ++next) {
      while (next < items_.size() && next <= end + most_between && is_between(items_[next])) ++next;
      if (next == items_.size() || next > end + most_between || sorting_.place_of(items_[next]) != place)
        break;
      end = next + 1;
    }
    return end;
  }

  /// Picots stand on the last stitch.
  std::size_t behind_picots(std::size_t end) const {
    while (end < items_.size() && sorting_.is_on_heads(items_[end])) ++end;
    return end;
  }

  bool is_between(const Item& item) const { return sorting_.is_chain(item) || sorting_.is_on_heads(item); }

  /// Behind the chains that lead up from a slip stitch.
  std::size_t behind_led(std::size_t end) const {
    if (!sorting_.is_slip(items_[end - 1])) return end;
    const std::size_t next = behind_chains(end);
    return next < items_.size() && may_lead(end, next, items_[next]) ? next : end;
  }

  const Sorting& sorting_;
  const std::vector<Item>& items_;
};

/// Stands the items of a group as they are to one another.
class Fanning {
public:
  Fanning(const Fabric& fabric, const Extents& extents, Hand hand)
      : fabric_(fabric), extents_(extents), sorting_(fabric, extents),
        way_(hand == Hand::right ? Way::anticlockwise : Way::clockwise) {}

  std::vector<InGroup> stood(const std::vector<Item>& items) const {
    std::vector<InGroup> all;
    const std::vector<Member> members = members_of(items);
    const std::vector<Item> standing = fanned(members, Spread{}, extents_, way_);
    for (const Member& member : members)
      for (std::size_t k = 0; k < member.items.size(); ++k)
        all.push_back({standing[all.size()], &extent(extents_, member.items[k].key), member.on_end});
    return all;
  }

  SymbolExtent shape_of(const std::vector<InGroup>& group) const {
    SymbolExtent shape;
    shape.height = 0;
    double low = 1e9, high = -1e9;
    for (const InGroup& one : group) {
      if (!one.shape->on_heads && !sorting_.is_chain(one.item))
        shape.height = std::max(shape.height, one.item.height);
      for (Convex& piece : ink_of(extents_, one.item)) {
        for (const Point& p : piece) low = std::min(low, p.x), high = std::max(high, p.x);
        shape.ink.push_back(std::move(piece));
      }
      add_ends(one, shape);
    }
    shape.width = high - low;
    shape.slot = std::max(1.0, share * (shape.width + air_along));
    if (shape.feet.size() > most_asked_alone) shape.feet.assign(shape.feet.size(), Point{0, 0});
    in_order(shape.tips), in_order(shape.feet);
    return shape;
  }

private:
  std::vector<Member> members_of(const std::vector<Item>& items) const {
    std::vector<Member> members;
    for (std::size_t at = 0; at < items.size();) {
      std::size_t end = at;
      while (end < items.size() && sorting_.is_chain(items[end])) ++end;
      if (end == at)
        members.push_back(member(items[at++]));
      else
        add_chains(items, at, end, members), at = end;
    }
    return members;
  }

  /// Chains beside a low stitch stand on end, between two of them they bow, else they hang between heads.
  void add_chains(const std::vector<Item>& items, std::size_t at, std::size_t end,
                  std::vector<Member>& members) const {
    const bool low_before = at > 0 && sorting_.is_low(items[at - 1]),
               low_behind = end < items.size() && sorting_.is_low(items[end]);
    const bool up = end - at >= least_led && low_before != low_behind,
               bows = end - at >= (low_before ? least_led : least_bow) && low_before == low_behind;
    if (!up && !bows) {
      for (; at < end; ++at) members.push_back(member(items[at]));
      return;
    }
    Member chains;
    for (; at < end; ++at) chains.items.push_back(items[at]);
    chains.on_end = up, chains.bows = chains.hangs = bows;
    chains.height = up ? chain_pitch * static_cast<double>(chains.items.size()) : 0;
    members.push_back(std::move(chains));
  }

  Member member(const Item& item) const {
    Member member;
    member.items = {item};
    member.height = sorting_.height(item);
    member.hangs = legs_of(fabric_, item).size() == 0;
    member.on_heads = sorting_.is_on_heads(item);
    return member;
  }

  void add_ends(const InGroup& one, SymbolExtent& shape) const {
    const std::size_t legs = legs_of(fabric_, one.item).size();
    shape.feet.insert(shape.feet.end(), legs, one.item.foot);
    std::vector<Point> tips = one.shape->tips;
    tips.resize(one.item.count, tips.empty() ? Point{0, one.shape->height} : tips.back());
    for (Point& tip : tips) tip = layout::stood(one.item, tip);
    std::stable_sort(tips.begin(), tips.end(), [this](Point a, Point b) { return is_before(a, b); });
    shape.tips.insert(shape.tips.end(), tips.begin(), tips.end());
  }

  bool is_before(Point a, Point b) const { return way_ == Way::anticlockwise ? a.x > b.x : a.x < b.x; }

  /// Tops stand in the order of work, as whatever sorts them by their places takes them to.
  void in_order(std::vector<Point>& points) const {
    for (std::size_t i = 1; i < points.size(); ++i)
      if (is_before(points[i], points[i - 1])) points[i].x = points[i - 1].x;
  }

  const Fabric& fabric_;
  const Extents& extents_;
  Sorting sorting_;
  Way way_;
};

/// Whether two groups look alike.
bool are_alike(const std::vector<Item>& one, const std::vector<Item>& other) {
  return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                    [](const Item& a, const Item& b) { return a.key == b.key && a.count == b.count; });
}

/// Most rings have neither chains or picots nor two items side by side that go into one place.
bool may_have_groups(const Fabric& fabric, const Sorting& sorting, const std::vector<Item>& items) {
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (i > 0 && shares_place(fabric, items[i - 1], items[i])) return true;
    const bool stands = legs_of(fabric, items[i]).size() > 0; // no chain, no picot, which is quickly told
    if (!stands && (sorting.is_chain(items[i]) || sorting.is_on_heads(items[i]))) return true;
  }
  return false;
}

/// All go into one loop: only the tallest, in their middle, has its mark.
void mark_once(const Sorting& sorting, std::vector<Item>& items) {
  const auto is_marked = [](const Item& item) { return item.key.loops != stitch::both; };
  const Item* marked = nullptr;
  for (const Item& item : items)
    if (is_marked(item) && (marked == nullptr || sorting.height(item) > sorting.height(*marked)))
      marked = &item;
  for (Item& item : items)
    if (&item != marked) item.key.loops = stitch::both;
}

} // namespace

std::vector<Group> gather_groups(const Fabric& fabric, const Extents& extents, std::size_t first,
                                 std::vector<Item>& items) {
  std::vector<Group> groups;
  const Sorting sorting(fabric, extents);
  if (!may_have_groups(fabric, sorting, items)) return groups;
  const Gathering gathering(sorting, items);
  std::vector<Item> kept(items.begin(), items.begin() + static_cast<std::ptrdiff_t>(first));
  for (std::size_t at = first; at < items.size();) {
    const std::size_t end = gathering.end_of(at);
    kept.push_back(items[at]);
    if (end > at) {
      const Item& last = items[end - 1];
      kept.back().count = last.first + last.count - items[at].first;
      groups.push_back({kept.size() - 1,
                        {items.begin() + static_cast<std::ptrdiff_t>(at),
                         items.begin() + static_cast<std::ptrdiff_t>(end)}});
      mark_once(sorting, groups.back().items);
    }
    at = std::max(at + 1, end);
  }
  items = std::move(kept);
  return groups;
}

void fan_out(const Fabric& fabric, const Extents& extents, const std::vector<Group>& groups, Hand hand,
             Band& band) {
  const Fanning fanning(fabric, extents, hand);
  std::vector<std::pair<const Group*, std::uint32_t>> made;
  for (const Group& group : groups) {
    const auto alike = std::find_if(made.begin(), made.end(), [&group](const auto& one) {
      return are_alike(one.first->items, group.items);
    });
    std::uint32_t shape = 0;
    if (alike == made.end()) {
      shape = static_cast<std::uint32_t>(band.shapes.size());
      band.groups.resize(shape);
      band.groups.push_back(fanning.stood(group.items));
      band.marked.push_back(std::make_unique<SymbolExtent>(fanning.shape_of(band.groups.back())));
      band.shapes.push_back(band.marked.back().get());
      band.slot.push_back(band.shapes.back()->slot);
      band.how_many.push_back(0);
      made.push_back({&group, shape});
      for (const InGroup& one : band.groups.back())
        if (one.shape->on_heads) band.on_heads = std::max(band.on_heads, one.shape->height);
    } else {
      shape = alike->second;
    }
    const std::uint32_t plain = band.shape_of[group.at];
    --band.how_many[plain], ++band.how_many[shape];
    band.slots += band.slot[shape] - band.slot[plain];
    band.shape_of[group.at] = shape;
    band.height = std::max(band.height, band.shapes[shape]->height);
  }
}

} // namespace whorl::layout
