#pragma once
/// Small scenes of the forest floor, drawn by hand for these tests.

#include "drawing/scene.hpp"
#include "pictures/ink.hpp"

#include <string>

namespace whorl::pictures {

inline drawing::Path line(Point from, Point to) {
  return {{drawing::Verb::move, drawing::Verb::line}, {from, to}};
}

inline drawing::Path box(Point low, Point high) {
  using drawing::Verb;
  return {{Verb::move, Verb::line, Verb::line, Verb::line, Verb::close},
          {low, {high.x, low.y}, high, {low.x, high.y}}};
}

/// A sheet of 60 x 40 mm with a cross of 2.6 mm (0: "sc"), an increase (1: "sc_2") and a cross with an arc
/// beneath (2).
inline drawing::Scene clearing() {
  const drawing::Pen left{line({-1.3, -3.1}, {1.3, -0.5}), 0.4, 0},
      right{line({1.3, -3.1}, {-1.3, -0.5}), 0.4, 0};
  const drawing::Pen leg{line({-2, -3.4}, {0, -0.1}), 0.4, 0}, its_twin{line({2, -3.4}, {0, -0.1}), 0.4, 0};
  const drawing::Pen arc{
      {{drawing::Verb::move, drawing::Verb::curve}, {{-1.1, 1}, {-0.5, 0.3}, {0.5, 0.3}, {1.1, 1}}}, 0.4, 0};
  drawing::Scene scene;
  scene.width = 60, scene.height = 40;
  scene.symbols = {{"sc", {left, right}}, {"sc_2", {leg, its_twin}}, {"sc_back", {left, right, arc}}};
  return scene;
}

inline drawing::Symbol drawn_stitch(std::uint32_t symbol, Point at, fabric::StitchId id) {
  drawing::Symbol made;
  made.symbol = symbol, made.at = at, made.color = drawing::ink::black, made.origin.stitch = id;
  return made;
}

inline drawing::Text written(std::string words, Point at, double width) {
  drawing::Text made;
  made.text = std::move(words), made.at = at, made.size = 3, made.width = width,
  made.color = drawing::ink::black;
  return made;
}

} // namespace whorl::pictures
