#include "fabric/slips.hpp"

#include "fabric/items.hpp"

#include <algorithm>

namespace whorl::fabric {
namespace {

constexpr std::size_t most = 8;
/// More of the same slip in one round explain nothing.
constexpr std::int64_t most_times = 3;

/// What a beginner does most easily comes first. (common practice, no source)
int cost_of(SlipKind what) {
  switch (what) {
  case SlipKind::ring_count:
    return 4;
  case SlipKind::round_left_out:
    return 8;
  case SlipKind::repeat_left_out:
  case SlipKind::repeat_too_many:
    return 10;
  case SlipKind::increase_missed:
    return 12;
  case SlipKind::chain_not_counted:
    return 13;
  case SlipKind::decrease_missed:
    return 14;
  case SlipKind::join_worked:
    return 16;
  case SlipKind::chain_counted:
    return 17;
  case SlipKind::stitch_skipped:
    return 20;
  case SlipKind::earlier_round:
    return 21;
  case SlipKind::two_in_one:
    return 22;
  case SlipKind::round_too_many:
    return 26;
  case SlipKind::decrease_for_plain:
    break;
  }
  return 30;
}

bool is_even(const std::vector<Item>& items) {
  return std::all_of(items.begin(), items.end(),
                     [](const Item& item) { return item.stitches() == 1 && item.places == 1; });
}

/// The stretches of plain stitches, those beside each other as one.
std::vector<Stretch> plain_stretches(const std::vector<Item>& items) {
  std::vector<Stretch> all;
  for (const Item& item : items) {
    if (!item.is_plain()) continue;
    if (!all.empty() && all.back().last + 1 == item.first)
      all.back().last = item.last;
    else
      all.push_back({item.first, item.last});
  }
  return all;
}

class Search {
public:
  Search(const Fabric& fabric, std::uint32_t index, std::uint32_t have)
      : fabric_(fabric), index_(index), round_(fabric.rounds[index]), have_(have),
        more_(static_cast<std::int64_t>(have) - round_.counted), items_(items_of(fabric, index)),
        passes_(passes_of(items_)) {}

  std::vector<Slip> all() {
    look_at_ring();
    look_at_shaping();
    look_at_plain();
    look_at_repeats();
    look_at_start();
    look_at_neighbours();
    look_earlier();
    std::stable_sort(found_.begin(), found_.end(),
                     [](const Slip& a, const Slip& b) { return a.cost < b.cost; });
    if (found_.size() > most) found_.resize(most);
    return std::move(found_);
  }

private:
  Slip* add(SlipKind what, std::int64_t times = 1) {
    Slip slip;
    slip.what = what;
    slip.round = index_;
    slip.times = static_cast<std::uint32_t>(times);
    slip.have = have_;
    slip.cost = cost_of(what) + (times > 1 ? 4 + 6 * static_cast<int>(times - 1) : 0);
    found_.push_back(slip);
    return &found_.back();
  }

  /// How often a slip that gives `each` stitches more has to be made; 0: it does not explain the count.
  std::int64_t times_of(std::int64_t each, std::size_t chances) const {
    if (each == 0 || more_ % each != 0) return 0;
    const std::int64_t times = more_ / each;
    return times > 0 && times <= most_times && times <= static_cast<std::int64_t>(chances) ? times : 0;
  }

  void look_at_ring() {
    const auto in_ring = [](const Item& item) { return item.in_ring; };
    if (items_.empty() || !std::all_of(items_.begin(), items_.end(), in_ring)) return;
    add(SlipKind::ring_count)->times = static_cast<std::uint32_t>(more_ > 0 ? more_ : -more_);
  }

  /// Increases and decreases, those of one size together.
  void look_at_shaping() {
    std::vector<std::uint32_t> sizes;
    for (const Item& item : items_) {
      const std::uint32_t size = item.is_increase() ? item.stitches() : item.is_decrease() ? item.places : 0;
      if (size > 1 && std::find(sizes.begin(), sizes.end(), size) == sizes.end()) sizes.push_back(size);
    }
    for (std::uint32_t size : sizes) {
      look_at(SlipKind::increase_missed, -static_cast<std::int64_t>(size - 1),
              [size](const Item& item) { return item.is_increase() && item.stitches() == size; });
      look_at(SlipKind::decrease_missed, size - 1,
              [size](const Item& item) { return item.is_decrease() && item.places == size; });
    }
  }

  template <class Is> void look_at(SlipKind what, std::int64_t each, Is is) {
    std::vector<Stretch> where;
    for (const Item& item : items_)
      if (is(item)) where.push_back({item.first, item.last});
    const std::int64_t times = times_of(each, where.size());
    if (times == 0) return;
    Slip* slip = add(what, times);
    for (const Passes& passes : passes_)
      if (passes.times == where.size()) slip->repeats = passes.times;
    slip->where = std::move(where);
  }

  void look_at_plain() {
    std::vector<Stretch> where = plain_stretches(items_);
    if (where.empty()) return;
    if (const auto times = times_of(-1, items_.size())) add(SlipKind::stitch_skipped, times)->where = where;
    if (const auto times = times_of(1, items_.size())) add(SlipKind::two_in_one, times)->where = where;
    const auto is_short = [](const Stretch& stretch) { return stretch.first == stretch.last; };
    where.erase(std::remove_if(where.begin(), where.end(), is_short), where.end());
    if (const auto times = times_of(-1, where.size()))
      add(SlipKind::decrease_for_plain, times)->where = where;
  }

  void look_at_repeats() {
    for (const Passes& passes : passes_) {
      const auto makes = static_cast<std::int64_t>(passes.makes);
      if (const auto times = times_of(-makes, passes.times - 1U))
        add(SlipKind::repeat_left_out, times)->repeats = passes.times;
      if (const auto times = times_of(makes, passes.times))
        add(SlipKind::repeat_too_many, times)->repeats = passes.times;
    }
  }

  void look_at_start() {
    const bool joined = round_.joined || (before() != nullptr && before()->joined);
    if (more_ == 1 && joined) add(SlipKind::join_worked);
    if (more_ == -1 && round_.counting_chain != none) add(SlipKind::chain_not_counted);
    const bool chain = round_.count > 0 && round_.counting_chain == none &&
                       (fabric_.stitches[round_.first_stitch].flags & starts_chain) != 0;
    if (more_ == 1 && chain) add(SlipKind::chain_counted);
  }

  void look_at_neighbours() {
    if (before() != nullptr && before()->counted == have_) add(SlipKind::round_left_out);
    if (index_ + 1 < fabric_.rounds.size() && is_worked(index_ + 1) &&
        fabric_.rounds[index_ + 1].counted == have_)
      add(SlipKind::round_too_many);
  }

  /// A round without increases or decreases carries on what the last one with them had; a repeat that comes
  /// out a few times more or fewer tells how many were open.
  void look_earlier() {
    if (before() == nullptr || round_.uses != before()->makes) return;
    if (is_even(items_) && round_.uses == round_.makes) return carry_back();
    for (const Passes& passes : passes_) {
      const auto makes = static_cast<std::int64_t>(passes.makes);
      if (makes == 0 || more_ % makes != 0) continue;
      const std::int64_t had = before()->counted + more_ / makes * static_cast<std::int64_t>(passes.uses);
      if (had > 0) earlier(index_ - 1, had, cost_of(SlipKind::earlier_round));
    }
  }

  void carry_back() {
    std::uint32_t from = index_ - 1;
    while (from > 0 && is_worked(from - 1) && fabric_.rounds[from].uses == fabric_.rounds[from - 1].makes &&
           is_even(items_of(fabric_, from)))
      --from;
    const std::int64_t had = fabric_.rounds[from].counted + more_;
    if (had <= 0) return;
    earlier(from, had, 1);
    std::vector<Slip> there = Search(fabric_, from, static_cast<std::uint32_t>(had)).all();
    if (there.size() > 3) there.resize(3);
    for (Slip& slip : there) found_.push_back(std::move(slip));
  }

  void earlier(std::uint32_t round, std::int64_t had, int cost) {
    Slip* slip = add(SlipKind::earlier_round);
    slip->round = round;
    slip->have = static_cast<std::uint32_t>(had);
    slip->cost = cost;
  }

  bool is_worked(std::uint32_t index) const {
    const Round& other = fabric_.rounds[index];
    return other.worked && other.part == round_.part && other.kind != pattern::RoundKind::chain;
  }

  const Round* before() const {
    return index_ > 0 && is_worked(index_ - 1) ? &fabric_.rounds[index_ - 1] : nullptr;
  }

  const Fabric& fabric_;
  std::uint32_t index_;
  const Round& round_;
  std::uint32_t have_;
  std::int64_t more_;
  std::vector<Item> items_;
  std::vector<Passes> passes_;
  std::vector<Slip> found_;
};

} // namespace

std::vector<Slip> slips(const Fabric& fabric, std::uint32_t round, std::uint32_t have) {
  if (round >= fabric.rounds.size() || !fabric.rounds[round].worked || fabric.rounds[round].counted == have)
    return {};
  return Search(fabric, round, have).all();
}

} // namespace whorl::fabric
