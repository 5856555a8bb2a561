#include "layout/relax.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double tolerance = 1e-12;

/// Items that rigid gaps hold together, the first of them that from `first` on.
struct Block {
  std::size_t first = 0;
  double reach = 0; ///< from its first item to its last
  double pull = 0;  ///< of all its springs
  double drawn = 0; ///< pull times where each spring wants the block's first item
};

/// The active set: which gaps stand at their least, and where the items are when they do.
class ActiveSet {
public:
  /// `rigid`: the gaps to begin with; it follows the search.
  ActiveSet(const Strung& strung, std::vector<char>& rigid, Slate& slate, std::vector<double>& at)
      : strung_(strung), items_(strung.target.size()), rigid_(rigid), at_(at), rows_(slate.rows),
        wrong_(slate.wrong) {
    rigid_.resize(items_ + 1, 0);
    at_.resize(items_);
    if (rows_.capacity() < items_) rows_.reserve(std::max<std::size_t>(64, items_ + items_ / 2));
  }

  /// False: it was not found.
  bool solve() {
    std::size_t best = items_ + 2;
    int patience = 10;
    for (std::size_t passes = 0; passes < 1000 + 20 * items_; ++passes) {
      stand();
      const std::size_t wrong = find_wrong();
      if (wrong == 0) return true;
      if (wrong < best) best = wrong, patience = 10;
      // flipping all at once is quick and may go round in a circle; one at a time cannot
      if (patience-- > 0)
        for (const std::size_t gap : wrong_) rigid_[gap] ^= 1;
      else
        rigid_[wrong_.back()] ^= 1;
    }
    return false;
  }

private:
  double before(std::size_t gap) const { return gap == 0 ? 0 : at_[gap - 1]; }
  double behind(std::size_t gap) const { return gap == items_ ? strung_.length : at_[gap]; }
  double size(std::size_t gap) const { return behind(gap) - before(gap); }
  bool is_loose(std::size_t gap) const { return strung_.free_ends && (gap == 0 || gap == items_); }

  /// Places every item for the present set of rigid gaps.
  void stand() {
    std::size_t first = 0, last = items_;
    double low = 0, high = strung_.length;
    while (first < items_ && rigid_[first]) low = at_[first] = low + strung_.least[first], ++first;
    if (first == items_) rigid_[items_] = 0; // not every gap can stand at its least: there is room
    while (last > first && rigid_[last]) high = at_[last - 1] = high - strung_.least[last], --last;
    if (first < last) balance(first, last, low, high);
  }

  /// Thomas's elimination over the blocks: 2 + pull on the diagonal, -1 beside it. They are gathered on the
  /// way.
  void balance(std::size_t first, std::size_t last, double low, double high) {
    rows_.clear();
    Before before{low, 0, 0};
    Block block{first, 0, 0, 0};
    for (std::size_t i = first; i < last; ++i) {
      if (i != first && !rigid_[i]) before = eliminate(block, i, last, high, before), block = {i, 0, 0, 0};
      if (i != block.first) block.reach += strung_.least[i];
      block.pull += strung_.pull[i];
      block.drawn += strung_.pull[i] * (strung_.target[i] - block.reach);
    }
    eliminate(block, last, last, high, before);
    double at = 0;
    for (std::size_t j = rows_.size(), end = last; j-- > 0; end = rows_[j].first) {
      at = rows_[j].at + rows_[j].factor * at;
      spread(rows_[j].first, end, at);
    }
  }

  /// What a block hands on to the next one.
  struct Before {
    double reach = 0, factor = 0, at = 0;
  };

  Before eliminate(const Block& block, std::size_t end, std::size_t last, double high, const Before& before) {
    const bool ends = end == last;
    const bool loose = rows_.empty() && strung_.free_ends, loose_behind = ends && strung_.free_ends;
    double right = block.drawn;
    if (!loose) right += before.reach + strung_.wanted[block.first];
    if (!loose_behind) right -= block.reach + strung_.wanted[end];
    if (ends && !loose_behind) right += high;
    const double gaps = 2.0 - (loose ? 1 : 0) - (loose_behind ? 1 : 0);
    const double factor = 1 / (gaps + block.pull - before.factor);
    const double at = (right + before.at) * factor;
    rows_.push_back({block.first, factor, at});
    return {block.reach, factor, at};
  }

  void spread(std::size_t first, std::size_t last, double at) {
    at_[first] = at;
    for (std::size_t i = first + 1; i < last; ++i) at_[i] = at += strung_.least[i];
  }

  double push(std::size_t item) const { return strung_.pull[item] * (at_[item] - strung_.target[item]); }

  /// What passes through each gap is its own tension where it is free, else what the items beside it leave
  /// over.
  std::size_t find_wrong() {
    wrong_.clear();
    std::size_t held = 0;
    while (held <= items_ && rigid_[held]) ++held;
    double force = is_loose(held) ? 0 : size(held) - strung_.wanted[held];
    const double allowed = -tolerance * std::max(1.0, strung_.length);
    for (std::size_t k = held; k-- > 0;) judge(k, force = force - push(k), allowed);
    force = 0;
    for (std::size_t k = held; k <= items_; ++k) {
      force = is_loose(k) ? 0 : rigid_[k] ? force + push(k - 1) : size(k) - strung_.wanted[k];
      judge(k, force, allowed);
    }
    return wrong_.size();
  }

  void judge(std::size_t gap, double force, double allowed) {
    if (is_loose(gap)) return;
    const double over =
        rigid_[gap] ? strung_.least[gap] - strung_.wanted[gap] - force : size(gap) - strung_.least[gap];
    if (over < allowed) wrong_.push_back(gap);
  }

  const Strung& strung_;
  std::size_t items_;
  std::vector<char>& rigid_;
  std::vector<double>& at_;
  std::vector<Slate::Row>& rows_; ///< of blocks
  std::vector<std::size_t>& wrong_;
};

/// Which gaps would stand at their least if gaps had no springs of their own: a guess that is nearly right
/// where the items' springs are strong. Neighbours that want to stand too near are pooled, as if nothing but
/// their springs drew them, until none do.
void guess_at_least(const Strung& strung, std::vector<Slate::Pool>& pools, std::vector<char>& rigid) {
  const std::size_t items = strung.target.size();
  rigid.assign(items + 1, 0);
  pools.clear();
  double reach = 0;
  for (std::size_t i = 0; i < items; ++i) {
    reach += strung.least[i];
    if (strung.pull[i] == 0) pools.clear();
    if (strung.pull[i] == 0) continue;
    Slate::Pool pool{i, strung.pull[i], strung.pull[i] * (strung.target[i] - reach)};
    for (; !pools.empty() && pools.back().place() > pool.place(); pools.pop_back()) {
      rigid[pool.first] = 1;
      pool = {pools.back().first, pools.back().pull + pool.pull, pools.back().drawn + pool.drawn};
    }
    pools.push_back(pool);
  }
}

void share_least(const Strung& strung, double sum, std::vector<double>& at) {
  at.clear();
  double reached = 0;
  for (std::size_t i = 0; i < strung.target.size(); ++i) {
    reached += strung.least[i];
    at.push_back(sum > 0 ? reached * strung.length / sum : 0);
  }
}

bool is_loose(const Strung& strung, std::size_t gap) {
  return strung.free_ends && (gap == 0 || gap == strung.target.size());
}

double tension(const Strung& strung, const std::vector<double>& at, std::size_t gap) {
  if (is_loose(strung, gap)) return 0;
  const double from = gap == 0 ? 0 : at[gap - 1];
  const double to = gap == at.size() ? strung.length : at[gap];
  return to - from - strung.wanted[gap];
}

double slack(const Strung& strung, const std::vector<double>& at, std::size_t gap) {
  return tension(strung, at, gap) + strung.wanted[gap] - strung.least[gap];
}

} // namespace

void hand_on(Strung& done, Strung& next) {
  std::swap(done.wanted, next.wanted), std::swap(done.least, next.least);
  std::swap(done.pull, next.pull), std::swap(done.target, next.target);
}

void begin_anew(std::size_t items, Strung& strung) {
  constexpr std::size_t least = 64;
  for (std::vector<double>* list : {&strung.wanted, &strung.least, &strung.pull, &strung.target}) {
    list->clear();
    if (list->capacity() <= items) list->reserve(std::max(least, items + items / 2));
  }
}

std::vector<double> relax(const Strung& strung) {
  std::vector<char> at_least;
  return relax(strung, at_least);
}

std::vector<double> relax(const Strung& strung, std::vector<char>& at_least) {
  Slate slate;
  std::vector<double> at;
  relax(strung, at_least, slate, at);
  return at;
}

void relax(const Strung& strung, std::vector<char>& at_least, Slate& slate, std::vector<double>& at) {
  double least = 0;
  for (const double gap : strung.least) least += gap;
  if (!strung.free_ends && least >= strung.length * (1 - 1e-9)) return share_least(strung, least, at);
  if (at_least.empty()) guess_at_least(strung, slate.pools, at_least);
  if (!ActiveSet(strung, at_least, slate, at).solve()) share_least(strung, least, at);
}

Optimum check_optimum(const Strung& strung, const std::vector<double>& at) {
  // A free gap passes on its tension, a gap at its least no more than that; from gap to gap the items'
  // springs make the difference. Before the first free gap only differences are known: `room` is what they
  // leave over.
  constexpr double touching = 1e-9;
  Optimum found;
  bool known = false;
  double through = 0, room = std::numeric_limits<double>::infinity();
  for (std::size_t k = 0; k <= at.size(); ++k) {
    if (k > 0) through += strung.pull[k - 1] * (at[k - 1] - strung.target[k - 1]);
    const double own = tension(strung, at, k);
    const bool loose = is_loose(strung, k), free = loose || slack(strung, at, k) > touching;
    if (!loose) found.worst_gap = std::max(found.worst_gap, -slack(strung, at, k));
    if (known)
      found.worst_force = std::max(found.worst_force, free ? std::abs(own - through) : through - own);
    if (!known && free) found.worst_force = std::max(found.worst_force, own - through - room);
    if (!known) room = std::min(room, own - through);
    if (free) known = true, through = own;
  }
  return found;
}

} // namespace whorl::layout
