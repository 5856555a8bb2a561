#include "whorl_paint.hpp"

#include "drawing/scene.hpp"
#include "paint/paint.hpp"

namespace whorl {
namespace {

Painting face_of(paint::Painted painted) {
  return {std::move(painted.bytes), std::move(painted.missing_fonts), std::move(painted.problem)};
}

} // namespace

Painting png(const Chart& chart, double dots_per_inch, std::size_t sheet) {
  return face_of(paint::png(chart.scene(sheet), dots_per_inch));
}
Painting pdf(const Chart& chart) {
  std::vector<const drawing::Scene*> sheets;
  for (std::size_t i = 0; i < chart.sheets(); ++i) sheets.push_back(&chart.scene(i));
  return face_of(paint::pdf(sheets));
}
Painting png(const Moves& moves, double dots_per_inch) {
  return face_of(paint::png(moves.scene(), dots_per_inch));
}
Painting pdf(const Moves& moves) { return face_of(paint::pdf(moves.scene())); }
Painting png(const Symbols& symbols, double dots_per_inch) {
  return face_of(paint::png(symbols.scene(), dots_per_inch));
}
Painting pdf(const Symbols& symbols) { return face_of(paint::pdf(symbols.scene())); }
Painting png(const Steps& steps, std::size_t step, double dots_per_inch) {
  return face_of(paint::png(steps.scene(step), dots_per_inch));
}
Painting pdf(const Steps& steps) {
  std::vector<drawing::Scene> scenes;
  for (std::size_t i = 0; i < steps.count(); ++i) scenes.push_back(steps.scene(i));
  std::vector<const drawing::Scene*> pages;
  for (const drawing::Scene& scene : scenes) pages.push_back(&scene);
  return face_of(paint::pdf(pages));
}
Painting strip_png(const Steps& steps, double dots_per_inch) {
  return face_of(paint::png(steps.strip(), dots_per_inch));
}
Painting strip_pdf(const Steps& steps) { return face_of(paint::pdf(steps.strip())); }

} // namespace whorl
