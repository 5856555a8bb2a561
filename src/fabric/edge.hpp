#pragma once

#include "fabric/fabric.hpp"

#include <optional>
#include <utility>
#include <vector>

namespace whorl::fabric {

/// What may be worked next, in order. A stitch takes places from the front and puts its top at the back; a
/// round is a mark in this stream. Places without a stitch (`of` is none) stand for stitches that are only
/// counted.
class Edge {
public:
  /// Nothing may be worked: a part that has not begun.
  void clear();
  /// One place that never runs out.
  void open_ring(std::uint32_t part);
  /// A chain, from the `nth` chain from the hook to the first that was made.
  void open_chain(StitchId first, std::uint32_t count, std::uint32_t nth);
  /// These places instead of what is open; what the round has made stays.
  void reopen(std::vector<Place> places);
  /// These places before what is open, or before the far side of a chain that is open; `behind` after all.
  void widen(const std::vector<Place>& before, const std::vector<Place>& behind);
  /// What is open, in order, where it is known: stitches, not spaces.
  std::vector<Place> rest() const;
  /// Stitches of which only the number is known.
  void open_counted(std::size_t count);
  /// That many more at the end, of which only the number is known.
  void lengthen(std::size_t count);

  bool is_ring() const { return ring_; }
  bool is_empty() const { return !ring_ && left() == 0 && spaces_left() == 0 && made_.empty(); }
  /// Stitches and chain spaces before the end of the round.
  std::size_t left() const { return tops_ + counted_; }
  std::size_t spaces_left() const { return spaces_; }

  /// The next stitch; chain spaces are passed by.
  std::optional<Place> take_next();
  /// The next chain space; stitches are passed by.
  std::optional<Place> take_space();
  /// The next two stitches that `apart` says are of two groups, and between which the hook goes; none where
  /// no gap is left. What stands before the gap is passed by. `closed`: the last stitch stands beside the
  /// first.
  template <class Apart> std::optional<std::pair<Place, Place>> take_between(Apart apart, bool closed);
  /// How many of these are left.
  template <class Apart> std::size_t gaps_left(Apart apart, bool closed) const;
  /// The middle stitch of the next three or more that `together` says are one group, and how many of it stand
  /// behind; none where no middle is left. What stands before it is passed by.
  template <class Together> std::optional<std::pair<Place, std::size_t>> take_centre(Together together);
  /// How many of these are left.
  template <class Together> std::size_t centres_left(Together together) const;
  /// Whether the place taken last from the front is one.
  template <class Together> bool took_middle(Together together) const;
  /// How many stitches stand before the next that `is` speaks of; none where there is no such one.
  template <class Is> std::optional<std::size_t> distance_to(Is is) const;
  /// How many of these are left.
  template <class Is> std::size_t count_left(Is is) const;
  /// The stitches before the next that `is` speaks of; they are passed by.
  template <class Is> std::vector<Place> pass_to(Is is);
  /// The next so many stitches are passed by.
  void pass(std::size_t count);
  /// The stitches before the next chain space, which from now on stand at the end; none without a chain
  /// space.
  std::vector<Place> pass_to_space();
  /// The round begins here: the stitches before this place, worked or passed by, are open again at its end.
  void begin_here();
  /// The next place, stitch or chain space.
  std::optional<Place> take_any();
  /// The place taken last is still open, and again the next.
  void give_back();
  /// From here each chain of the spaces that are left is a place like a stitch.
  void open_chains(const std::vector<Arch>& arches);
  /// The last stitch before the end of the round, or that with so many behind it.
  std::optional<Place> take_last(std::size_t behind = 0);
  /// In a spiral the stream runs on: the first stitch of the round itself that nothing was worked into.
  std::optional<Place> take_own();

  void put(const Place& place) { made_.push_back(place); }
  /// What the round has put at the back so far: stitches, not spaces.
  std::size_t made() const;

  /// The edge is read backwards from here: what this round made if it made anything, else what is open.
  void turn();
  /// The round begins here: what was made so far is worked again at its end.
  void start_here();
  /// The round ends: the next works into what this one made. A round that made nothing leaves the edge as it
  /// was.
  void close_round();

private:
  static constexpr std::size_t no_gap = static_cast<std::size_t>(-1);

  /// Behind which place from `at` on a gap is.
  template <class Apart> std::size_t next_gap(std::size_t at, Apart apart, bool closed) const;
  /// A group of three or more with its middle at `at` or behind it; an empty one: there is none.
  struct Run {
    std::size_t begin = 0, end = 0;
    std::size_t middle() const { return begin + (end - begin - 1) / 2; }
  };
  template <class Together> Run next_run(std::size_t at, Together together) const;
  const Place& behind(std::size_t at) const { return open_[at + 1 < open_.size() ? at + 1 : 0]; }
  void recount();
  std::optional<Place> take_counted();

  std::vector<Place> open_;
  std::size_t front_ = 0;
  std::vector<Place> made_;
  std::size_t own_ = 0;
  std::size_t tops_ = 0;
  std::size_t spaces_ = 0;
  bool gapless_ = false;    ///< it was found that no gap is left
  std::size_t counted_ = 0; ///< places behind the open ones of which only the number is known
  bool ring_ = false;
  Place ring_place_;
};

template <class Is> std::optional<std::size_t> Edge::distance_to(Is is) const {
  std::size_t before = 0;
  for (std::size_t at = front_; at < open_.size(); ++at) {
    if (open_[at].what == On::space) continue;
    if (is(open_[at])) return before;
    ++before;
  }
  return std::nullopt;
}

template <class Is> std::size_t Edge::count_left(Is is) const {
  std::size_t count = 0;
  for (std::size_t at = front_; at < open_.size(); ++at)
    count += open_[at].what != On::space && is(open_[at]) ? 1 : 0;
  return count;
}

template <class Is> std::vector<Place> Edge::pass_to(Is is) {
  std::vector<Place> passed;
  for (std::size_t left = distance_to(is).value_or(0); left > 0; --left) passed.push_back(*take_next());
  return passed;
}

template <class Apart> std::size_t Edge::next_gap(std::size_t at, Apart apart, bool closed) const {
  for (; at + (closed ? 0 : 1) < open_.size(); ++at)
    if (apart(open_[at], behind(at))) return at;
  return no_gap;
}

template <class Apart> std::optional<std::pair<Place, Place>> Edge::take_between(Apart apart, bool closed) {
  const std::size_t gap = gapless_ ? no_gap : next_gap(front_, apart, closed);
  gapless_ = gap == no_gap;
  if (gapless_) return std::nullopt;
  for (; front_ <= gap; ++front_) --(open_[front_].what == On::space ? spaces_ : tops_);
  return std::pair(open_[gap], behind(gap));
}

template <class Together> Edge::Run Edge::next_run(std::size_t at, Together together) const {
  constexpr std::size_t least = 3;
  std::size_t begin = at;
  while (begin > 0 && begin < open_.size() && together(open_[begin - 1], open_[begin])) --begin;
  while (begin < open_.size()) {
    std::size_t end = begin + 1;
    while (end < open_.size() && together(open_[end - 1], open_[end])) ++end;
    const Run run{begin, end};
    if (end - begin >= least && run.middle() >= at) return run;
    begin = end;
  }
  return {};
}

template <class Together> std::optional<std::pair<Place, std::size_t>> Edge::take_centre(Together together) {
  const Run run = next_run(front_, together);
  if (run.end == 0) return std::nullopt;
  for (; front_ <= run.middle(); ++front_) --(open_[front_].what == On::space ? spaces_ : tops_);
  return std::pair(open_[run.middle()], run.end - front_);
}

template <class Together> std::size_t Edge::centres_left(Together together) const {
  std::size_t centres = 0;
  for (Run run = next_run(front_, together); run.end != 0; run = next_run(run.end, together)) ++centres;
  return centres;
}

template <class Together> bool Edge::took_middle(Together together) const {
  if (front_ == 0) return false;
  const Run run = next_run(front_ - 1, together);
  return run.end != 0 && run.middle() == front_ - 1;
}

template <class Apart> std::size_t Edge::gaps_left(Apart apart, bool closed) const {
  std::size_t gaps = 0;
  for (std::size_t at = next_gap(front_, apart, closed); at != no_gap; at = next_gap(at + 1, apart, closed))
    ++gaps;
  return gaps > 0 ? gaps : spaces_;
}

} // namespace whorl::fabric
