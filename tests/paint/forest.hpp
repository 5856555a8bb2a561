#pragma once
/// A small sheet of the forest floor, drawn by hand for these tests.

#include "drawing/scene.hpp"

namespace whorl::paint {

/// 50.8 x 25.4 mm: at 100 dots per inch 200 x 100 dots.
inline drawing::Scene clearing() {
  drawing::Scene scene;
  scene.width = 50.8, scene.height = 25.4;
  scene.title = "Toadstool", scene.description = "One cap, seen from above", scene.language = "en-US";
  return scene;
}

inline drawing::Path box(layout::Point low, layout::Point high) {
  using drawing::Verb;
  return {{Verb::move, Verb::line, Verb::line, Verb::line, Verb::close},
          {low, {high.x, low.y}, high, {low.x, high.y}}};
}

inline drawing::Stroke stroke(layout::Point from, layout::Point to, double width) {
  drawing::Stroke made;
  made.path = {{drawing::Verb::move, drawing::Verb::line}, {from, to}};
  made.width = width, made.color = drawing::ink::black;
  return made;
}

inline drawing::Text written(std::string words, layout::Point at) {
  drawing::Text made;
  made.text = std::move(words), made.at = at, made.size = 5, made.color = drawing::ink::black;
  return made;
}

/// A stitch, a leaf, a line and two texts, one in each face.
inline drawing::Scene sheet() {
  drawing::Scene scene = clearing();
  scene.symbols = {
      {"sc", {{stroke({-2, -4}, {2, 0}, 0).path, 0.5, 0}, {stroke({2, -4}, {-2, 0}, 0).path, 0.5, 0}}}};
  drawing::Symbol stitch;
  stitch.at = {30, 12}, stitch.up = {0.6, -0.8}, stitch.color = drawing::ink::second;
  drawing::Text title = written("Toadstool", {3, 8});
  title.face = drawing::Typeface::serif;
  scene.items = {drawing::Fill{box({40, 3}, {48, 9}), {0x336633}, {}}, stroke({3, 20}, {20, 20}, 0.3), stitch,
                 title, drawing::Group{"cap_1", "round", "Round 1", {written("6 stitches", {3, 16})}}};
  return scene;
}

} // namespace whorl::paint
