#include "layout/hold.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace whorl::layout {
namespace {

constexpr int most_times = 8;
constexpr double hold = 400; ///< strength of what holds an item where it stands; of springs between items 1

/// How far each item of a foot is from the middle of them where they stand as near as they may.
std::vector<double> apart_at_least(const Foot& foot, const Strung& strung) {
  std::vector<double> apart;
  double at = 0, middle = 0;
  for (std::size_t i = 0; i < foot.items.size(); ++i) {
    for (std::size_t k = i > 0 ? foot.items[i - 1] : foot.items[i]; k < foot.items[i]; ++k)
      at += strung.least[k + 1];
    apart.push_back(at);
    middle += at / static_cast<double>(foot.items.size());
  }
  for (double& own : apart) own -= middle;
  return apart;
}

} // namespace

void bound_feet(const std::vector<Foot>& feet, const Tops& heads, const Strung& strung,
                const std::vector<double>& at, Bounds& bounds) {
  for (const Foot& foot : feet) {
    const std::optional<Tops::Cell> cell = heads.cell_of(foot.into);
    if (!cell) continue;
    const double into = into_cell(*cell),
                 round = turns_to(*cell, heads, foot.from_item + middle_of(foot, at));
    const std::vector<double> apart = apart_at_least(foot, strung);
    for (std::size_t i = 0; i < foot.items.size(); ++i) {
      const double stands = apart[i] - foot.from_item + round;
      bounds.rise(foot.items[i], stands + cell->low + into);
      bounds.sink(foot.items[i], stands + cell->high - into);
    }
  }
}

void hold_there(Strung& strung, std::vector<double>& at) {
  std::fill(strung.pull.begin(), strung.pull.end(), hold);
  strung.target = at;
  at = relax(strung);
}

bool settle_by_places(const std::function<std::vector<Move>()>& asked, Strung& strung,
                      std::vector<double>& at, std::vector<char>& at_least) {
  Holding holding(strung, at, at_least);
  Progress progress;
  for (int i = 0; i < most_times; ++i) {
    const std::vector<Move> moves = asked();
    if (moves.empty()) return true;
    if (!progress.goes_on(moves)) return false;
    holding.move(moves);
  }
  return false;
}

namespace {

std::vector<Move> moves_asked(const std::vector<Foot>& feet, const std::vector<Tops>& rounds,
                              const std::vector<double>& at) {
  std::vector<Move> moves;
  for (const Tops& round : rounds)
    for (const Move& move : moves_of_feet(feet, round, at)) moves.push_back(move);
  return moves;
}

Bounds bounds_of(const std::vector<Foot>& feet, const std::vector<Tops>& rounds, const Strung& strung,
                 const std::vector<double>& about) {
  Bounds bounds(about.size());
  for (const Tops& round : rounds) bound_feet(feet, round, strung, about, bounds);
  return bounds;
}

} // namespace

bool hold_feet(const std::vector<Foot>& feet, const std::vector<Tops>& rounds, Strung& strung,
               std::vector<double>& at) {
  std::vector<char> at_least;
  const std::vector<double> about = at;
  if (settle_by_places([&] { return moves_asked(feet, rounds, at); }, strung, at, at_least)) return true;
  Bounds bounds = bounds_of(feet, rounds, strung, about);
  if (!bounds.fit(strung)) return false;
  std::vector<double> bound = at;
  bounds.stand(strung, bound);
  if (!moves_asked(feet, rounds, bound).empty()) return false;
  at = std::move(bound);
  hold_there(strung, at);
  return true;
}

std::size_t hold_most_feet(const std::vector<Foot>& feet, const std::vector<Tops>& rounds, Strung& strung,
                           std::vector<double>& at) {
  const std::vector<double> about = at;
  if (hold_feet(feet, rounds, strung, at)) return 0;
  const std::size_t settled = moves_asked(feet, rounds, at).size();
  Bounds bounds = bounds_of(feet, rounds, strung, about);
  if (!bounds.fit_most(strung)) return settled;
  std::vector<double> bound = at;
  bounds.stand(strung, bound);
  const std::size_t pushed = moves_asked(feet, rounds, bound).size();
  if (pushed < settled) at = std::move(bound), hold_there(strung, at);
  return std::min(pushed, settled);
}

} // namespace whorl::layout
