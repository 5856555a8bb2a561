#pragma once

#include "drawing/scene.hpp"
#include "paint/owned.hpp"

#include <pango/pangocairo.h>

#include <set>
#include <string>
#include <vector>

namespace whorl::paint {

/// How letters reach the canvas: as text that can be selected, or as outlines, which stand where they should
/// to a fraction of a dot (Cairo 1.16 moves letters to whole dots).
enum class Letters { as_text, as_outlines };

/// Writes the texts of a scene with the installed fonts, and notes what is not installed.
class Lettering {
public:
  /// For a canvas whose unit is the millimetre; the language chooses the forms of letters.
  Lettering(cairo_t* canvas, const std::string& language, Letters letters);

  /// Writes one run from its anchor on its base line, at the font's own width.
  void write(const drawing::Text& text);

  /// The width of a run in the installed font, mm.
  double width(const drawing::Text& text);

  /// What is not installed, sorted: "the font DejaVu Sans", "a font with Thai letters, for “…”".
  std::vector<std::string> missing() const { return {missing_.begin(), missing_.end()}; }

private:
  PangoLayoutLine* set(const drawing::Text& text);
  void look_for(const PangoFontDescription* font);
  void note_unknown_letters(PangoLayoutLine* line, const char* text);

  cairo_t* canvas_;
  Letters letters_;
  Owned<PangoContext, g_object_unref> context_;
  Owned<PangoLayout, g_object_unref> layout_;
  std::set<std::string> looked_for_;
  std::set<std::string> missing_;
};

} // namespace whorl::paint
