#include "layout/strip_choice.hpp"

#include <algorithm>

namespace whorl::layout {
namespace {

using Tiers = std::vector<Tier>;

/// Tiers `first` to before `last`, which become one figure.
struct Piece {
  std::size_t first = 0, last = 0;
  bool inward = false, strip = false;
  bool kept = false; ///< in the figure before it
};

/// A disc with an open middle of m stitches begins m/7 rings out.
constexpr std::uint64_t open_weight(std::uint64_t stitches) { return 2 * stitches; }

/// An oval of m chains begins (m - 1)/3 rings out.
constexpr std::uint64_t core_weight(std::uint64_t chains) {
  return chains == 0 ? 0 : Tier::ring_weight * (chains - 1) / 3;
}

/// One or two rounds on the way to others, as in a nose, are left in their disc a little longer.
bool stands_far_out(std::uint64_t weight, std::uint64_t count, bool on_the_way) {
  return 50 * weight > (on_the_way ? 18 : 15) * Tier::ring_weight * count;
}

/// Chooses among the tiers of one disc.
class Choosing {
public:
  Choosing(const Tiers& tiers, const Piece& disc, bool closed, std::uint32_t core)
      : tiers_(tiers), disc_(disc), closed_(closed), core_(core) {}

  /// Pieces in the order of work.
  std::vector<Piece> pieces() {
    far_.assign(disc_.last - disc_.first, 0);
    disc_.inward ? look_inward() : look_outward();
    if (!disc_.inward && short_strips_ > 1) {
      in_steps_ = true;
      far_.assign(far_.size(), 0);
      look_outward();
    }
    if (!disc_.inward) look_at_cone();
    std::vector<Piece> all;
    for (std::size_t i = disc_.first; i < disc_.last; ++i) {
      const bool strip = far_[i - disc_.first] != 0;
      if (all.empty() || all.back().strip != strip)
        all.push_back({i, i, disc_.inward && !strip, strip, false});
      all.back().last = i + 1;
    }
    return all;
  }

private:
  /// The outer rounds of a cone, before the first strip, become one too: where most of so many stand far out
  /// and the shortest line would not be pulled apart too much beside the longest.
  void look_at_cone() {
    constexpr std::size_t least_tiers = 3;
    const auto strip = std::find(far_.begin(), far_.end(), 1);
    const auto many = static_cast<std::size_t>(strip - far_.begin());
    const std::vector<char> sparse = sparse_tiers(many);
    auto left = static_cast<std::size_t>(std::count(sparse.begin(), sparse.end(), 1));
    for (std::size_t i = 0; core_ == 0 && i + least_tiers <= many; left -= sparse[i++] == 1 ? 1 : 0) {
      if (sparse[i] == 0 || 2 * left <= many - i || !growth_fits(disc_.first + i, disc_.first + many))
        continue;
      return std::fill(far_.begin() + static_cast<std::ptrdiff_t>(i), strip, char{1});
    }
  }

  std::vector<char> sparse_tiers(std::size_t many) const {
    std::vector<char> sparse;
    std::uint64_t weight = first_weight();
    for (std::size_t i = disc_.first; i < disc_.first + many; ++i) {
      weight += tiers_[i].weight;
      sparse.push_back(10 * weight >= 3 * std::uint64_t{Tier::ring_weight} * tiers_[i].count ? 1 : 0);
    }
    return sparse;
  }

  bool growth_fits(std::size_t first, std::size_t last) const {
    std::uint64_t most = 0;
    for (std::size_t i = first; i < last; ++i) most = std::max<std::uint64_t>(most, tiers_[i].count);
    return most > tiers_[first].count && 10 * most <= 21 * std::uint64_t{tiers_[first].count};
  }

  std::uint64_t first_weight() const {
    return closed_ ? core_weight(core_) : open_weight(tiers_[disc_.first].count);
  }

  void look_outward() {
    std::uint64_t weight = first_weight();
    for (std::size_t i = disc_.first; i < disc_.last;) {
      std::size_t end = i;
      std::uint64_t run = 0;
      while (end < disc_.last && tiers_[end].even) run += tiers_[end++].weight;
      if (end == i) {
        weight += tiers_[i++].weight;
        continue;
      }
      const bool on_the_way = is_short(i, end) && end < disc_.last && tiers_[end].count > tiers_[i].count;
      weight = choose(i, end, weight + run, on_the_way) ? open_weight(tiers_[i].count) + Tier::ring_weight
                                                        : weight + run;
      i = end;
    }
  }

  void look_inward() {
    std::uint64_t weight = closed_ ? 0 : open_weight(tiers_[disc_.last - 1].count);
    for (std::size_t i = disc_.last; i > disc_.first;) {
      std::size_t begin = i;
      std::uint64_t run = 0;
      while (begin > disc_.first && tiers_[begin - 1].even) run += tiers_[--begin].weight;
      if (begin == i) {
        weight += tiers_[--i].weight;
        continue;
      }
      const bool on_the_way = is_short(begin, i) && begin > disc_.first;
      weight = choose(begin, i, weight + run, on_the_way) ? open_weight(tiers_[begin].count) : weight + run;
      i = begin;
    }
  }

  /// One or two rounds.
  bool is_short(std::size_t first, std::size_t last) const {
    return tiers_[last - 1].last - tiers_[first].first < 2;
  }

  bool choose(std::size_t first, std::size_t last, std::uint64_t weight, bool on_the_way) {
    bool strip = stands_far_out(weight, tiers_[first].count, on_the_way) && !(on_the_way && in_steps_);
    short_strips_ += strip && on_the_way ? 1 : 0;
    for (std::size_t i = first; i < last; ++i) strip = strip || tiers_[i].coloured;
    for (std::size_t i = first; i < last; ++i) far_[i - disc_.first] = strip ? 1 : 0;
    return strip;
  }

  const Tiers& tiers_;
  Piece disc_;
  bool closed_;
  std::uint32_t core_;
  std::vector<char> far_;
  int short_strips_ = 0;  ///< of one or two rounds on the way to others
  bool in_steps_ = false; ///< it grows in steps, as a pointed hat does, of which none is a strip
};

/// Whether the counts of a piece differ by no more than a quarter from each other and from the strip's.
bool is_slight(const Tiers& tiers, const Piece& piece, std::uint32_t strip) {
  std::uint64_t least = strip, most = strip;
  for (std::size_t i = piece.first; i < piece.last; ++i) {
    least = std::min<std::uint64_t>(least, tiers[i].count);
    most = std::max<std::uint64_t>(most, tiers[i].count);
  }
  return 4 * (most - least) <= most;
}

/// Little that happens between strips, or behind the last, is shown in them.
void take_in(const Tiers& tiers, bool gathered, std::vector<Piece>& pieces) {
  for (std::size_t i = 1; i < pieces.size(); ++i) {
    const bool last = i + 1 == pieces.size();
    if (pieces[i].strip || !pieces[i - 1].strip || (last ? gathered : !pieces[i + 1].strip)) continue;
    if (is_slight(tiers, pieces[i], tiers[pieces[i - 1].last - 1].count)) pieces[i].strip = true;
  }
}

/// Before a strip, a disc that has lost no more than a quarter stays with the one that grew.
void keep_outward(const Tiers& tiers, std::vector<Piece>& pieces) {
  for (std::size_t i = 1; i + 1 < pieces.size(); ++i) {
    if (!pieces[i].inward || !pieces[i + 1].strip || pieces[i - 1].strip || pieces[i - 1].inward) continue;
    if (is_slight(tiers, pieces[i], tiers[pieces[i - 1].last - 1].count))
      pieces[i].inward = false, pieces[i].kept = true;
  }
}

/// A figure of nothing but another part's round would show no work.
void keep_first_with_owner(const Tiers& tiers, std::vector<Piece>& pieces) {
  if (pieces.size() < 2 || !tiers.front().owner || pieces[0].last != 1 || !pieces[1].strip) return;
  ++pieces[0].last;
  if (++pieces[1].first == pieces[1].last) pieces.erase(pieces.begin() + 1);
}

std::vector<Stretch> joined(const Tiers& tiers, const std::vector<Piece>& pieces) {
  std::vector<Stretch> stretches;
  for (const Piece& piece : pieces) {
    const Stretch next{tiers[piece.first].first, tiers[piece.last - 1].last, piece.inward && !piece.strip,
                       piece.strip};
    const bool kept = !next.strip && !next.inward && piece.kept;
    if (!stretches.empty() && (kept || (next.strip && stretches.back().strip)))
      stretches.back().last = next.last;
    else
      stretches.push_back(next);
  }
  return stretches;
}

} // namespace

std::vector<Stretch> choose_strips(const std::vector<Stretch>& discs, const Tiers& tiers, const Ends& ends) {
  std::vector<Piece> pieces;
  std::size_t at = 0;
  for (std::size_t i = 0; i < discs.size(); ++i) {
    Piece disc{at, at, discs[i].inward, false, false};
    while (disc.last < tiers.size() && tiers[disc.last].last <= discs[i].last) ++disc.last;
    at = disc.last;
    if (disc.first == disc.last) continue;
    const bool closed = disc.inward ? ends.gathered && i + 1 == discs.size() : ends.from_centre && i == 0;
    const std::uint32_t core = i == 0 ? ends.core : 0;
    for (const Piece& piece : Choosing(tiers, disc, closed, core).pieces()) pieces.push_back(piece);
  }
  keep_outward(tiers, pieces);
  take_in(tiers, ends.gathered, pieces);
  keep_first_with_owner(tiers, pieces);
  return joined(tiers, pieces);
}

} // namespace whorl::layout
