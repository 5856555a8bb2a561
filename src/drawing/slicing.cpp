#include "drawing/slicing.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

constexpr double least_gain = 0.01; ///< of its height that a wider piece has to give

double sink(const Piece& piece) { return piece.rise > 0 ? piece.height - piece.rise : 0; }

} // namespace

/// What stands beside several lines of figures belongs to the last of them.
bool Slicing::are_read_in_order(std::uint32_t first, std::uint32_t second) const {
  const Piece &a = pieces_[first], &b = pieces_[second];
  if (b.lines == 0 || (a.lines <= 1 && b.lines <= 1)) return true;
  return a.rise > 0 && b.rise > 0 && b.lines == 1;
}

Piece Slicing::beside(std::uint32_t first, std::uint32_t second) const {
  const Piece &a = pieces_[first], &b = pieces_[second];
  Piece both{Piece::Kind::beside,         first, second,
             a.width + beside_ + b.width, 0,     std::max(a.rise, b.rise),
             std::max(a.lines, b.lines)};
  both.height = std::max({a.height, b.height, both.rise + std::max(sink(a), sink(b))});
  return both;
}

Piece Slicing::above(std::uint32_t first, std::uint32_t second) const {
  const Piece &a = pieces_[first], &b = pieces_[second];
  const double top = a.height + above_;
  return {Piece::Kind::above,         first,          second,
          std::max(a.width, b.width), top + b.height, b.rise > 0 ? top + b.rise : 0,
          a.lines + b.lines};
}

void Slicing::offer_beside(const Front& first, const Front& second, std::vector<Piece>& offers) const {
  std::vector<double> heights;
  for (const Front* front : {&first, &second})
    for (const std::uint32_t piece : *front) heights.push_back(pieces_[piece].height);
  const auto is_low = [this](double height) {
    return [this, height](std::uint32_t piece) { return pieces_[piece].height <= height; };
  };
  for (const double height : heights) {
    const auto a = std::find_if(first.begin(), first.end(), is_low(height));
    if (a == first.end()) continue;
    const auto b = std::find_if(second.begin(), second.end(), [&](std::uint32_t piece) {
      return is_low(height)(piece) && are_read_in_order(*a, piece);
    });
    if (b != second.end()) offers.push_back(beside(*a, *b));
  }
}

void Slicing::offer_above(const Front& first, const Front& second, std::vector<Piece>& offers) const {
  std::vector<double> widths;
  for (const Front* front : {&first, &second})
    for (const std::uint32_t piece : *front) widths.push_back(pieces_[piece].width);
  const auto lowest = [this](const Front& front, double width) {
    return std::find_if(front.rbegin(), front.rend(),
                        [&](std::uint32_t piece) { return pieces_[piece].width <= width; });
  };
  for (const double width : widths) {
    const auto a = lowest(first, width), b = lowest(second, width);
    if (a != first.rend() && b != second.rend()) offers.push_back(above(*a, *b));
  }
}

namespace {

/// What rounding leaves apart is alike: the way that was offered first is kept.
long microns(double millimetres) { return std::lround(millimetres * 1000); }

} // namespace

Front Slicing::keep(std::vector<Piece> offers) {
  std::stable_sort(offers.begin(), offers.end(), [](const Piece& a, const Piece& b) {
    const long wider = microns(a.width) - microns(b.width);
    return wider != 0 ? wider < 0 : microns(a.height) < microns(b.height);
  });
  Front kept;
  for (const Piece& offer : offers) {
    if (!kept.empty() &&
        (offer.width > most_ || offer.height > (1 - least_gain) * pieces_[kept.back()].height))
      continue;
    kept.push_back(static_cast<std::uint32_t>(pieces_.size()));
    pieces_.push_back(offer);
  }
  return kept;
}

std::vector<std::uint32_t> Slicing::chain(std::uint32_t piece, Piece::Kind kind) const {
  const Piece it = pieces_[piece];
  if (it.kind != kind) return {piece};
  std::vector<std::uint32_t> all = chain(it.first, kind);
  const std::vector<std::uint32_t> rest = chain(it.second, kind);
  all.insert(all.end(), rest.begin(), rest.end());
  return all;
}

} // namespace whorl::drawing
