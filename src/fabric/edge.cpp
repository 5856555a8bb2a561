#include "fabric/edge.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace whorl::fabric {
namespace {

bool is_space(const Place& place) { return place.what == On::space; }

} // namespace

void Edge::clear() { *this = Edge{}; }

void Edge::recount() {
  const auto from = open_.begin() + static_cast<std::ptrdiff_t>(front_);
  spaces_ = static_cast<std::size_t>(std::count_if(from, open_.end(), is_space));
  tops_ = open_.size() - front_ - spaces_;
  gapless_ = false;
}

void Edge::open_ring(std::uint32_t part) {
  clear();
  ring_ = true;
  ring_place_ = Place{part, On::ring, stitch::both};
}

void Edge::open_chain(StitchId first, std::uint32_t count, std::uint32_t nth) {
  clear();
  for (std::uint32_t i = nth; i <= count; ++i)
    open_.push_back(Place{first + count - i, On::chain_side, stitch::both});
  recount();
}

void Edge::reopen(std::vector<Place> places) {
  open_ = std::move(places);
  front_ = 0;
  counted_ = 0;
  ring_ = false;
  recount();
}

void Edge::widen(const std::vector<Place>& before, const std::vector<Place>& behind) {
  std::vector<Place> all(open_.begin() + static_cast<std::ptrdiff_t>(front_), open_.end());
  const auto is_far = [](const Place& place) {
    return place.what == On::chain_side && place.loops == stitch::third;
  };
  // The far side of an earlier bridge closes the round: what comes on stands before it.
  const auto far = std::find_if(all.begin(), all.end(), is_far);
  all.insert(behind.empty() && far != all.end() ? far : all.begin(), before.begin(), before.end());
  all.insert(all.end(), behind.begin(), behind.end());
  const std::size_t counted = counted_;
  reopen(std::move(all));
  counted_ = counted;
}

std::vector<Place> Edge::rest() const {
  std::vector<Place> places;
  const auto from = open_.begin() + static_cast<std::ptrdiff_t>(front_);
  std::copy_if(from, open_.end(), std::back_inserter(places),
               [](const Place& place) { return !is_space(place); });
  return places;
}

void Edge::open_counted(std::size_t count) {
  clear();
  lengthen(count);
}

void Edge::lengthen(std::size_t count) { counted_ += count; }

std::optional<Place> Edge::take_counted() {
  if (counted_ == 0) return std::nullopt;
  --counted_;
  return Place{};
}

std::optional<Place> Edge::take_next() {
  if (ring_) return ring_place_;
  if (tops_ == 0) return take_counted();
  for (; is_space(open_[front_]); ++front_) --spaces_;
  --tops_;
  return open_[front_++];
}

std::optional<Place> Edge::take_space() {
  if (spaces_ == 0) return std::nullopt;
  for (; !is_space(open_[front_]); ++front_) --tops_;
  --spaces_;
  return open_[front_++];
}

void Edge::pass(std::size_t count) {
  for (; count > 0 && front_ < open_.size(); --count, ++front_) --(is_space(open_[front_]) ? spaces_ : tops_);
}

std::vector<Place> Edge::pass_to_space() {
  if (spaces_ == 0) return {};
  const auto from = open_.begin() + static_cast<std::ptrdiff_t>(front_);
  const std::vector<Place> passed(from, std::find_if(from, open_.end(), is_space));
  front_ += passed.size();
  open_.insert(open_.end(), passed.begin(), passed.end());
  return passed;
}

void Edge::begin_here() {
  if (ring_) return;
  for (std::size_t at = 0; at < front_; ++at)
    if (const Place place = open_[at]; !is_space(place)) open_.push_back(place), ++tops_;
}

std::optional<Place> Edge::take_any() {
  if (ring_) return ring_place_;
  if (front_ == open_.size()) return take_counted();
  --(is_space(open_[front_]) ? spaces_ : tops_);
  return open_[front_++];
}

void Edge::open_chains(const std::vector<Arch>& arches) {
  if (ring_ || spaces_ == 0) return;
  std::vector<Place> all;
  for (std::size_t at = front_; at < open_.size(); ++at) {
    if (!is_space(open_[at])) {
      all.push_back(open_[at]);
      continue;
    }
    const Arch& arch = arches[open_[at].of];
    const Place* next = at + 1 < open_.size() ? &open_[at + 1] : nullptr;
    const Place* before = at > 0 ? &open_[at - 1] : nullptr;
    const auto made_later = [&](const Place* place) { // a row is worked back over what it finds
      return place != nullptr && place->what == On::top && place->of != none && place->of > arch.first_chain;
    };
    const bool back = made_later(before) && !made_later(next);
    for (std::uint32_t i = 0; i < arch.count; ++i)
      all.push_back(Place{arch.first_chain + (back ? arch.count - 1 - i : i), On::top, stitch::both});
  }
  const std::size_t counted = counted_;
  reopen(std::move(all));
  counted_ = counted;
}

void Edge::give_back() {
  if (ring_ || front_ == 0) return;
  --front_;
  ++(is_space(open_[front_]) ? spaces_ : tops_);
}

std::optional<Place> Edge::take_last(std::size_t behind) {
  if (ring_) return std::nullopt;
  if (counted_ > 0 || tops_ == 0) return take_counted();
  for (; is_space(open_.back()); open_.pop_back()) --spaces_;
  std::size_t at = open_.size() - 1;
  for (std::size_t left = std::min(behind, tops_ - 1); left > 0; --left) do
      --at;
    while (is_space(open_[at]));
  const Place place = open_[at];
  open_.erase(open_.begin() + static_cast<std::ptrdiff_t>(at));
  --tops_;
  return place;
}

std::optional<Place> Edge::take_own() {
  while (own_ < made_.size() && is_space(made_[own_])) ++own_;
  if (own_ == made_.size()) return std::nullopt;
  return made_[own_++];
}

std::size_t Edge::made() const {
  return static_cast<std::size_t>(
      std::count_if(made_.begin(), made_.end(), [](const Place& place) { return !is_space(place); }));
}

void Edge::turn() {
  if (!made_.empty()) close_round();
  std::reverse(open_.begin() + static_cast<std::ptrdiff_t>(front_), open_.end());
}

void Edge::start_here() {
  open_.insert(open_.end(), made_.begin(), made_.end());
  made_.clear();
  recount();
}

void Edge::close_round() {
  own_ = 0;
  if (made_.empty()) return;
  ring_ = false;
  counted_ = 0;
  open_.swap(made_);
  made_.clear();
  front_ = 0;
  recount();
}

} // namespace whorl::fabric
