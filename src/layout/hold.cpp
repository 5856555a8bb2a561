#include "layout/hold.hpp"

#include <cmath>

namespace whorl::layout {
namespace {

constexpr int most_times = 8;

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

Bounds bounds_of_feet(const std::vector<Foot>& feet, const Tops& heads, const Strung& strung,
                      const std::vector<double>& at) {
  Bounds bounds(at.size());
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
  return bounds;
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

bool hold_feet(const std::vector<Foot>& feet, const std::vector<Tops>& rounds, Strung& strung,
               std::vector<double>& at) {
  std::vector<char> at_least;
  const auto asked = [&] {
    std::vector<Move> moves;
    for (const Tops& round : rounds)
      for (const Move& move : moves_of_feet(feet, round, at)) moves.push_back(move);
    return moves;
  };
  return settle_by_places(asked, strung, at, at_least);
}

} // namespace whorl::layout
