#include "layout/own_place.hpp"

#include "layout/items.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::layout {
namespace {

using fabric::Fabric;
using fabric::On;
using fabric::Place;
using fabric::StitchId;

constexpr std::size_t most_asked_alone = 2;
constexpr double margin = 0.04, of_cell = 0.2; ///< a foot is brought so far into its cell

/// Where two heads are equally near.
double between(double one, double far_one, double other, double far_other) {
  return (far_one * one + far_other * other) / (far_one + far_other);
}

} // namespace

Tops::Tops(const Fabric& fabric, std::vector<Head> heads, double around)
    : fabric_(&fabric), heads_(std::move(heads)), around_(around) {
  if (around_ > 0)
    for (Head& head : heads_) head.at -= around_ * std::floor(head.at / around_);
  std::stable_sort(heads_.begin(), heads_.end(), [](const Head& a, const Head& b) { return a.at < b.at; });
  if (heads_.empty()) return;
  StitchId last = first_ = heads_.front().stitch;
  for (const Head& head : heads_) first_ = std::min(first_, head.stitch), last = std::max(last, head.stitch);
  where_.assign(last - first_ + 1, fabric::none);
  for (std::size_t i = 0; i < heads_.size(); ++i)
    where_[heads_[i].stitch - first_] = static_cast<std::uint32_t>(i);
}

void Tops::widen(StitchId stitch, Span& span) const {
  if (stitch < first_ || stitch - first_ >= where_.size()) return;
  const std::uint32_t at = where_[stitch - first_];
  if (at == fabric::none) return;
  if (span.first == fabric::none) span = {at, at};
  span = {std::min(span.first, at), std::max(span.last, at)};
}

/// Where the heads of a place stand in order.
Tops::Span Tops::span_of(const Place& place) const {
  Span span;
  if (is_stitch(place)) widen(place.of, span);
  if (place.what != On::space || place.of >= fabric_->arches.size()) return span;
  const fabric::Arch& arch = fabric_->arches[place.of];
  for (std::uint32_t k = 0; k < arch.count; ++k) widen(arch.first_chain + k, span);
  return span;
}

std::uint32_t Tops::arch_of(StitchId stitch) const {
  const auto behind = [](StitchId one, const fabric::Arch& arch) { return one < arch.first_chain; };
  const auto next = std::upper_bound(fabric_->arches.begin(), fabric_->arches.end(), stitch, behind);
  if (next == fabric_->arches.begin()) return fabric::none;
  const auto arch = next - 1;
  return stitch < arch->first_chain + arch->count ? static_cast<std::uint32_t>(arch - fabric_->arches.begin())
                                                  : fabric::none;
}

bool Tops::is_own(const Place& place, const Head& head) const {
  return place.what == On::space ? arch_of(head.stitch) == place.of : head.stitch == place.of;
}

bool Tops::can_be_met(const Head& head) const {
  return (fabric_->stitches[head.stitch].flags & fabric::counts) != 0 || arch_of(head.stitch) != fabric::none;
}

std::optional<Tops::Cell> Tops::cell_of(const Place& place) const {
  const Span span = span_of(place);
  if (span.first == fabric::none) return std::nullopt;
  const std::size_t many = heads_.size(), first = span.first, last = span.last;
  Cell cell;
  cell.first = &heads_[first], cell.last = &heads_[last];
  const auto is_other = [&](std::size_t i) { return can_be_met(heads_[i]) && !is_own(place, heads_[i]); };
  for (std::size_t k = 1; k < many && cell.before == nullptr; ++k) {
    if (k > first && around_ == 0) break;
    const std::size_t i = (first + many - k) % many;
    if (!is_other(i)) continue;
    cell.before = &heads_[i];
    cell.low =
        between(heads_[i].at - (k > first ? around_ : 0), heads_[i].far, cell.first->at, cell.first->far);
  }
  for (std::size_t k = 1; k < many && cell.behind == nullptr; ++k) {
    if (last + k >= many && around_ == 0) break;
    const std::size_t i = (last + k) % many;
    if (!is_other(i)) continue;
    cell.behind = &heads_[i];
    cell.high = between(cell.last->at, cell.last->far, heads_[i].at + (last + k >= many ? around_ : 0),
                        heads_[i].far);
  }
  return cell;
}

std::vector<Foot> feet_of(const Fabric& fabric, const std::vector<Item>& items,
                          const std::vector<const std::vector<double>*>& from_ray) {
  struct Group {
    Place into;
    std::vector<std::size_t> items;
    std::vector<double> from_ray;
  };
  std::vector<Group> groups;
  for (std::size_t i = 0; i < items.size(); ++i) {
    const Item& item = items[i];
    if ((fabric.stitches[item.first].flags & fabric::joins) != 0 || item.stem > 0 ||
        item.key.base == Base::below)
      continue;
    std::size_t foot = 0;
    const fabric::Legs legs = legs_of(fabric, item);
    const LegsHeld held = legs_held(item, legs.size());
    for (const fabric::Leg& leg : legs) {
      const std::size_t own = foot++;
      if (!held.holds(own)) continue;
      if (groups.empty() || !(groups.back().into == leg.into)) groups.push_back({leg.into, {}, {}});
      groups.back().items.push_back(i);
      groups.back().from_ray.push_back((*from_ray[i])[std::min(own, from_ray[i]->size() - 1)]);
    }
  }
  std::vector<Foot> feet;
  for (Group& group : groups) {
    const std::size_t many = group.items.size();
    if (many <= most_asked_alone) {
      for (std::size_t k = 0; k < many; ++k)
        feet.push_back({group.into, {group.items[k]}, group.from_ray[k]});
      continue;
    }
    Foot middle{group.into, std::move(group.items), 0};
    for (const double aside : group.from_ray) middle.from_item += aside / static_cast<double>(many);
    feet.push_back(std::move(middle));
  }
  return feet;
}

void Leeways::rise(std::size_t item, double by) { ways_[item].low = std::max(ways_[item].low, by); }
void Leeways::sink(std::size_t item, double by) { ways_[item].high = std::min(ways_[item].high, by); }

/// What is drawn both ways at once stands between.
std::vector<Move> Leeways::moves() const {
  constexpr double settled = 0.01;
  std::vector<Move> moves;
  for (std::size_t i = 0; i < ways_.size(); ++i) {
    const Way& way = ways_[i];
    const bool torn = way.low > way.high;
    const double by = torn ? (way.low + way.high) / 2 : way.low > 0 ? way.low : std::min(way.high, 0.0);
    if (torn ? std::abs(by) > settled : by != 0) moves.push_back({i, by});
  }
  return moves;
}

double into_cell(const Tops::Cell& cell) { return std::clamp(of_cell * (cell.high - cell.low), 0.0, margin); }

double turns_to(const Tops::Cell& cell, const Tops& heads, double stands) {
  if (heads.around() == 0) return 0;
  return heads.around() * std::round((stands - (cell.first->at + cell.last->at) / 2) / heads.around());
}

std::vector<Move> moves_of_feet(const std::vector<Foot>& feet, const Tops& heads,
                                const std::vector<double>& at) {
  Leeways ways(at.size());
  for (const Foot& foot : feet) {
    const std::optional<Tops::Cell> cell = heads.cell_of(foot.into);
    if (!cell) continue;
    double stands = foot.from_item + middle_of(foot, at);
    stands -= turns_to(*cell, heads, stands);
    const double into = into_cell(*cell);
    const bool is_low = stands <= cell->low, is_high = stands >= cell->high;
    for (const std::size_t item : foot.items) {
      ways.rise(item, is_low ? cell->low + into - stands : std::min(0.0, cell->low - stands));
      ways.sink(item, is_high ? cell->high - into - stands : std::max(0.0, cell->high - stands));
    }
  }
  return ways.moves();
}

std::vector<double> on_the_way(const std::vector<Point>& points, Way way) {
  std::vector<double> on;
  for (const Point p : points) on.push_back(way == Way::anticlockwise ? 0 - p.x : p.x);
  if (on.empty()) on.push_back(0);
  std::sort(on.begin(), on.end());
  return on;
}

double strain_on(const std::vector<Foot>& feet, const std::vector<Tops>& rounds,
                 const std::vector<double>& at) {
  double most = 0;
  for (const Tops& round : rounds)
    for (const Move& move : moves_of_feet(feet, round, at))
      if (std::abs(move.by) > std::abs(most)) most = move.by;
  return most;
}

double middle_of(const Foot& foot, const std::vector<double>& at) {
  double sum = 0;
  for (const std::size_t item : foot.items) sum += at[item];
  return sum / static_cast<double>(foot.items.size());
}

} // namespace whorl::layout
