#include "balls.hpp"

#include "layout/place.hpp"
#include "stitch/kind.hpp"

#include <algorithm>

namespace whorl::layout::test {

using fabric::Fabric;

Ball::Ball() { fabric.kinds = stitch::standard_kinds(); }

Ball& Ball::begin(const std::string& name, fabric::Start start) {
  fabric::Part part;
  part.name = part.key = name;
  part.first_round = static_cast<std::uint32_t>(fabric.rounds.size());
  part.start = start;
  fabric.parts.push_back(part);
  return *this;
}

std::uint32_t Ball::tops() const { return fabric.parts.back().rounds == 0 ? 0 : fabric.rounds.back().count; }

void Ball::leg(std::uint32_t place, std::uint8_t loops) {
  const fabric::Part& part = fabric.parts.back();
  fabric::Place into;
  if (part.rounds == 0) {
    into.of = static_cast<std::uint32_t>(fabric.parts.size() - 1);
    into.what = fabric::On::ring;
  } else {
    into.of = fabric.rounds.back().first_stitch + place;
    into.loops = loops;
  }
  fabric.legs.push_back({into});
}

void Ball::work(const Step& step, std::uint32_t& place) {
  const stitch::KindId kind = *stitch::find_kind(fabric.kinds, step.kind);
  const auto takes = static_cast<std::uint32_t>(fabric.kinds[kind].takes);
  const int legs = stitch::shape_of(fabric.kinds[kind]).legs;
  for (std::uint32_t i = 0; i < step.in_one; ++i) {
    fabric::Stitch one;
    one.kind = kind;
    one.round = static_cast<std::uint32_t>(fabric.rounds.size());
    one.first_leg = static_cast<std::uint32_t>(fabric.legs.size());
    if (!fabric.kinds[kind].counts) one.flags = 0;
    for (int l = 0; l < legs; ++l)
      leg(place + std::min(static_cast<std::uint32_t>(l), takes > 0 ? takes - 1 : 0), step.loops);
    fabric.stitches.push_back(one);
  }
  place += takes;
}

Ball& Ball::round(const Steps& steps) {
  fabric::Round round;
  round.part = static_cast<std::uint32_t>(fabric.parts.size() - 1);
  round.number = static_cast<int>(fabric.parts.back().rounds + 1);
  round.first_stitch = static_cast<std::uint32_t>(fabric.stitches.size());
  for (const Step& step : steps) work(step, round.uses);
  round.count = static_cast<std::uint32_t>(fabric.stitches.size()) - round.first_stitch;
  round.counted = round.makes = round.count;
  fabric.rounds.push_back(round);
  ++fabric.parts.back().rounds;
  return *this;
}

/// A run of `places` with `shaped` of them, spread evenly, in the middle of their shares.
static std::vector<bool> spread(std::uint32_t places, std::uint32_t shaped) {
  std::vector<bool> at(places, false);
  for (std::uint32_t i = 0; i < shaped; ++i) at[(2 * i + 1) * places / (2 * shaped)] = true;
  return at;
}

Ball& Ball::to(std::uint32_t count, std::uint8_t loops, const std::string& kind) {
  const std::uint32_t before = tops();
  if (before == 0) return round(Steps(count, Step{kind, 1, loops}));
  Steps steps;
  if (count >= before) {
    const std::uint32_t each = count / before, more = count % before;
    for (const bool one_more : spread(before, more))
      steps.push_back({kind, each + (one_more ? 1 : 0), loops});
  } else {
    const std::uint32_t decreases = std::min(before - count, before / 2);
    const std::vector<bool> shaped = spread(before - decreases, decreases);
    for (const bool dec : shaped) steps.push_back({dec ? kind + "2tog" : kind, 1, loops});
  }
  return round(steps);
}

Ball& Ball::even(std::uint32_t rounds) {
  for (std::uint32_t i = 0; i < rounds; ++i) to(tops());
  return *this;
}

Ball& Ball::gather() {
  fabric.parts.back().end = fabric::End::gathered;
  return *this;
}

Fabric ball(const std::vector<std::uint32_t>& counts, bool gathered) {
  Ball ball;
  ball.begin("ball");
  for (const std::uint32_t count : counts) ball.to(count);
  if (gathered) ball.gather();
  return ball.fabric;
}

Fabric gnome() {
  Ball gnome;
  gnome.begin("head-and-body");
  for (const std::uint32_t count : {6U, 12U, 18U, 24U, 30U, 36U}) gnome.to(count);
  gnome.even(5).to(30).to(24).to(18).to(24).to(30).even(6);
  gnome.to(24).to(18).to(12).to(6).gather();
  fabric::Placing eyes;
  eyes.what = pattern::What::eye;
  eyes.round = 9;
  eyes.after = {15, 22};
  gnome.fabric.placings.push_back(eyes);
  return gnome.fabric;
}

Fabric cap() {
  Ball cap;
  cap.begin("cap");
  for (const std::uint32_t count : {6U, 12U, 18U, 24U, 30U, 36U}) cap.to(count);
  cap.to(36, stitch::back).to(36).to(30);
  return cap.fabric;
}

namespace {

/// A stroke from a to b as a box, pen width included.
Convex pen_box(Point a, Point b, double width) {
  const Point d = b - a;
  const double length = std::max(1e-9, std::max(std::abs(d.x), std::abs(d.y)));
  const Point u{d.x / length, d.y / length};
  const double norm = u.x * u.x + u.y * u.y, k = width / 2 / (norm > 1 ? 1.414213562 : 1.0);
  const Point along = k * u, aside{-along.y, along.x};
  return {a - along - aside, b + along - aside, b + along + aside, a - along + aside};
}

SymbolExtent cross_symbol() {
  SymbolExtent cross;
  cross.floats = true;
  cross.feet = {{0, 0}};
  cross.tips = {{0, 0.8}};
  cross.ink = {pen_box({-0.30, 0.10}, {0.30, 0.70}, 0.10), pen_box({-0.30, 0.70}, {0.30, 0.10}, 0.10)};
  return cross;
}

/// Strokes from one point to `ends` others, tips up or turned over.
SymbolExtent fan_symbol(std::uint32_t strokes, double height, double apart, bool over) {
  SymbolExtent fan;
  fan.slot = strokes;
  fan.height = height;
  fan.floats = true;
  fan.width = apart * (strokes - 1) + 0.105;
  const auto turned = [&](Point p) { return over ? Point{p.x, height - p.y} : p; };
  for (std::uint32_t i = 0; i < strokes; ++i) {
    const Point end = turned({apart * (i - (strokes - 1) / 2.0), height});
    Convex ink = pen_box(turned({0, 0}), end, 0.105);
    fan.ink.push_back(ink);
    (over ? fan.feet : fan.tips).push_back(end);
  }
  (over ? fan.tips : fan.feet).push_back(turned({0, 0}));
  return fan;
}

SymbolExtent stem_symbol(double height, double bar) {
  SymbolExtent stem;
  stem.height = height;
  stem.width = bar;
  stem.feet = {{0, 0}};
  stem.tips = {{0, height}};
  stem.ink = {pen_box({0, 0}, {0, height}, 0.10), pen_box({-bar / 2, height}, {bar / 2, height}, 0.10)};
  return stem;
}

/// An arc of loop marks under a foot.
void mark_loops(SymbolExtent& symbol, double under) {
  symbol.below = under + 0.15;
  for (const Point& foot : symbol.feet)
    symbol.ink.push_back({{foot.x - 0.30, foot.y - symbol.below},
                          {foot.x + 0.30, foot.y - symbol.below},
                          {foot.x + 0.30, foot.y - under + 0.12},
                          {foot.x - 0.30, foot.y - under + 0.12}});
}

double tall_height(int chains) {
  return chains == 0 ? 0.30 : chains == 2 ? 1.40 : 1.40 + 0.65 * (chains - 2);
}

SymbolExtent symbol_of(const stitch::StitchKind& kind, const SymbolKey& key) {
  const stitch::Shape shape = stitch::shape_of(kind);
  const bool joined = kind.takes > 1;
  const auto strokes = static_cast<std::uint32_t>(joined ? kind.takes : key.in_one);
  SymbolExtent symbol;
  if (shape.legs == 0)
    symbol = stem_symbol(0.32, 0.55);
  else if (shape.cross && strokes == 1)
    symbol = cross_symbol();
  else if (strokes > 1)
    symbol = fan_symbol(strokes, shape.cross ? 0.78 : tall_height(shape.height), strokes == 2 ? 0.96 : 0.83,
                        joined);
  else
    symbol = stem_symbol(tall_height(shape.height), shape.height == 0 ? 0.15 : 0.56);
  symbol.stretches = shape.height > 1 && shape.legs == 1 && !shape.feet_joined && strokes == 1;
  if (key.loops != stitch::both) mark_loops(symbol, strokes > 1 ? 0.30 : shape.cross ? 0.16 : 0.30);
  return symbol;
}

Widths letters(double digit, double letter) {
  Widths widths;
  widths.fallback = letter;
  widths.advance = {{U' ', 0.278}, {U'!', 0.333}, {U'(', 0.333}, {U')', 0.333}};
  for (char32_t c = U'0'; c <= U'9'; ++c) widths.advance.push_back({c, digit});
  widths.advance.push_back({U'\u00B7', 0.333});
  widths.advance.push_back({U'\u2013', 0.556});
  return widths;
}

} // namespace

Extents extents_of(const Fabric& fabric) {
  Extents extents;
  for (const SymbolKey& key : symbols_of(fabric))
    extents.symbols.push_back({key, symbol_of(fabric.kinds[key.kind], key)});
  extents.regular = letters(0.556, 0.54);
  extents.bold = letters(0.556, 0.58);
  extents.italic = letters(0.556, 0.52);
  return extents;
}

std::uint32_t Dice::next() {
  state = state * 6364136223846793005ULL + 1442695040888963407ULL;
  return static_cast<std::uint32_t>(state >> 33U);
}

namespace {

/// Increases and decreases strewn over a round with a chance out of ten each.
Steps strewn(std::uint32_t places, std::uint32_t inc, std::uint32_t dec, Dice& dice) {
  Steps steps;
  const std::uint32_t loops = dice.below(8);
  const std::uint8_t marks = loops == 0 ? stitch::back : loops == 1 ? stitch::front : stitch::both;
  for (std::uint32_t place = 0; place < places;) {
    const std::uint32_t roll = dice.below(10);
    const bool together = roll >= 10 - dec && place + 1 < places;
    steps.push_back({together ? "sc2tog" : "sc", roll < inc ? 2U : 1U, marks});
    place += together ? 2 : 1;
  }
  return steps;
}

} // namespace

Fabric random_ball(std::uint64_t seed) {
  Dice dice{seed * 7919 + 17};
  for (int i = 0; i < 8; ++i) dice.next();
  Ball ball;
  ball.begin("ball", dice.below(4) == 0 ? fabric::Start::second_chain : fabric::Start::magic_ring);
  ball.to(4 + dice.below(9));
  const std::uint32_t rounds = 2 + dice.below(12);
  for (std::uint32_t i = 0; i < rounds && ball.fabric.rounds.back().count < 120; ++i) {
    const std::uint32_t mood = dice.below(4);
    const std::uint32_t places = ball.fabric.rounds.back().count;
    if (mood == 3)
      ball.even(1 + dice.below(4));
    else
      ball.round(
          strewn(places, mood == 0 ? 1 + dice.below(6) : dice.below(2), mood == 0 ? 0 : dice.below(5), dice));
  }
  if (dice.below(2) == 0) ball.gather();
  return ball.fabric;
}

} // namespace whorl::layout::test
