/// No two kinds of stitch on a sheet look alike: trade-rules, Drawing. Symbols are compared as ink on a grid,
/// foot on foot and head on head.

#include "drawing/outline.hpp"
#include "drawing/symbol.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <bitset>
#include <cmath>
#include <string>
#include <vector>

using namespace whorl;
using namespace whorl::drawing;
using layout::Base;
using layout::SymbolKey;

namespace {

constexpr int columns = 120, rows = 150;
constexpr double grain = 0.04; ///< W
using Ink = std::bitset<std::size_t{columns} * rows>;

/// Symbols differ by at least the ink of a short stroke: .25 W of a pen of .1.
constexpr double least_area = 0.025;
constexpr auto least_cells = static_cast<std::size_t>(least_area / (grain * grain));

struct Drawn {
  std::string name;
  Ink from_foot, from_head;
};

double turn(Point a, Point b, Point c) { return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x); }

bool holds(const layout::Convex& piece, Point point) {
  for (std::size_t i = 0; i < piece.size(); ++i)
    if (turn(piece[i], piece[(i + 1) % piece.size()], point) < 0) return false;
  return true;
}

int cell(double at) { return static_cast<int>(std::floor(at / grain)); }

void fill(const layout::Convex& piece, double low, Ink& ink) {
  Point least = piece.front(), most = piece.front();
  for (const Point& p : piece) {
    least = {std::min(least.x, p.x), std::min(least.y, p.y)};
    most = {std::max(most.x, p.x), std::max(most.y, p.y)};
  }
  const int left = columns / 2;
  for (int y = std::max(0, cell(least.y - low)); y <= std::min(rows - 1, cell(most.y - low)); ++y)
    for (int x = std::max(0, cell(least.x) + left); x <= std::min(columns - 1, cell(most.x) + left); ++x)
      if (holds(piece, {(x - left + 0.5) * grain, (y + 0.5) * grain + low}))
        ink.set(static_cast<std::size_t>(y * columns + x));
}

/// The pens of a symbol, each by itself: what is drawn, where layout takes a spindle for one piece.
Drawn draw(const stitch::StitchKind& kind, const SymbolKey& key, std::string name) {
  const Composed symbol = compose(kind, key, built_in_marks());
  std::vector<layout::Convex> pieces;
  for (const Pen& pen : symbol.pens) append_ink(pieces, pen);
  double head = 0;
  for (const auto& piece : pieces)
    for (const Point& p : piece) head = std::max(head, p.y);
  Drawn drawn;
  drawn.name = std::move(name);
  for (const auto& piece : pieces) fill(piece, -0.8, drawn.from_foot);
  for (const auto& piece : pieces) fill(piece, head - rows * grain, drawn.from_head);
  return drawn;
}

std::vector<stitch::StitchKind> kinds() {
  std::vector<stitch::StitchKind> all = stitch::standard_kinds();
  for (const int chains : {2, 3, 4, 5}) all.push_back(stitch::picot(chains));
  const auto kind = [&](const char* name) { return all[*stitch::find_kind(all, name)]; };
  for (const auto& [base, n] :
       {std::pair("dc", 2), {"dc", 4}, {"hdc", 2}, {"hdc", 4}, {"hdc", 5}, {"tr", 3}}) {
    all.push_back(*stitch::cluster(kind(base), n));
    all.back().name = std::string(base) + std::to_string(n) + "cl";
  }
  for (const int n : {3, 4}) {
    all.push_back(stitch::popcorn(kind("dc"), n));
    all.back().name = "dc" + std::to_string(n) + "pc";
  }
  return all;
}

std::vector<SymbolKey> keys(const stitch::Shape& shape) {
  if (shape.legs == 0) return {SymbolKey{}};
  std::vector<SymbolKey> all;
  for (const std::uint16_t in_one : {1, 2, 3}) {
    for (const std::uint8_t loops : {stitch::both, stitch::back, stitch::front, stitch::third})
      if (!shape.front_loops_only || loops != stitch::front) all.push_back({0, in_one, loops});
    for (const Base base : {Base::front_post, Base::back_post})
      all.push_back({0, in_one, stitch::both, base});
    for (const std::uint8_t down : {1, 2}) all.push_back({0, in_one, stitch::both, Base::below, down});
  }
  return all;
}

std::string name_of(const stitch::StitchKind& kind, const SymbolKey& key) {
  return kind.name + " x" + std::to_string(key.in_one) + " loops " + std::to_string(key.loops) + " base " +
         std::to_string(static_cast<int>(key.base)) + " down " + std::to_string(key.down);
}

/// Pairs that differ by less than a short stroke.
std::vector<std::string> alike(const std::vector<Drawn>& drawn) {
  std::vector<std::string> pairs;
  for (std::size_t i = 0; i < drawn.size(); ++i)
    for (std::size_t j = i + 1; j < drawn.size(); ++j)
      if ((drawn[i].from_foot ^ drawn[j].from_foot).count() < least_cells ||
          (drawn[i].from_head ^ drawn[j].from_head).count() < least_cells)
        pairs.push_back(drawn[i].name + " and " + drawn[j].name);
  return pairs;
}

std::vector<Drawn> all_symbols() {
  std::vector<Drawn> drawn;
  for (const stitch::StitchKind& kind : kinds())
    for (const SymbolKey& key : keys(stitch::shape_of(kind)))
      drawn.push_back(draw(kind, key, name_of(kind, key)));
  return drawn;
}

} // namespace

TEST_CASE("no two kinds of stitch look alike, however many in one and in whatever loops") {
  std::string pairs;
  for (const std::string& pair : alike(all_symbols())) pairs += pair + "\n";
  CHECK(pairs == "");
}

TEST_CASE("symbols that are the same are found to be alike") {
  const auto& kinds = stitch::standard_kinds();
  const stitch::StitchKind& sc = kinds[*stitch::find_kind(kinds, "sc")];
  CHECK(alike({draw(sc, {}, "one"), draw(sc, {}, "other")}).size() == 1);
}
