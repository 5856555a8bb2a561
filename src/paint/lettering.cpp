#include "paint/lettering.hpp"

#include "drawing/type.hpp"

namespace whorl::paint {
namespace {

using Font = Owned<PangoFontDescription, pango_font_description_free>;

Font font_of(const drawing::Text& text) {
  Font font{pango_font_description_new()};
  pango_font_description_set_family_static(font.get(), drawing::font_name(text.face));
  pango_font_description_set_weight(font.get(), text.bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_style(font.get(), text.italic ? PANGO_STYLE_ITALIC : PANGO_STYLE_NORMAL);
  pango_font_description_set_absolute_size(font.get(), text.size * PANGO_SCALE);
  return font;
}

/// The user's desktop settings must not reach the picture.
void fix_font_options(PangoContext* context) {
  const Owned<cairo_font_options_t, cairo_font_options_destroy> options{cairo_font_options_create()};
  cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options(context, options.get());
}

/// Share of a run's width that stands before its anchor.
double before(drawing::Anchor anchor) {
  switch (anchor) {
  case drawing::Anchor::start:
    return 0;
  case drawing::Anchor::middle:
    return 0.5;
  case drawing::Anchor::end:
    return 1;
  }
  return 0;
}

double width_of(PangoLayoutLine* line) {
  PangoRectangle logical;
  pango_layout_line_get_extents(line, nullptr, &logical);
  return static_cast<double>(logical.width) / PANGO_SCALE;
}

/// The first letter of a line that no font has; none: 0.
gunichar unknown_letter(const PangoLayoutLine* line, const char* text) {
  for (const GSList* run = line->runs; run != nullptr; run = run->next) {
    const auto* item = static_cast<const PangoGlyphItem*>(run->data);
    for (int i = 0; i < item->glyphs->num_glyphs; ++i)
      if ((item->glyphs->glyphs[i].glyph & PANGO_GLYPH_UNKNOWN_FLAG) != 0)
        return g_utf8_get_char(text + item->item->offset + item->glyphs->log_clusters[i]);
  }
  return 0;
}

/// "Thai", "Old Italic"; "" for what belongs to no script.
std::string script_of(gunichar letter) {
  const GUnicodeScript script = g_unichar_get_script(letter);
  if (script == G_UNICODE_SCRIPT_COMMON || script == G_UNICODE_SCRIPT_INHERITED ||
      script == G_UNICODE_SCRIPT_UNKNOWN)
    return "";
  auto* scripts = static_cast<GEnumClass*>(g_type_class_ref(PANGO_TYPE_SCRIPT));
  const GEnumValue* value = g_enum_get_value(scripts, static_cast<int>(script));
  std::string name = value != nullptr ? value->value_nick : "";
  g_type_class_unref(scripts);
  bool begins = true;
  for (char& c : name) {
    if (c == '-') c = ' ';
    if (begins) c = g_ascii_toupper(c);
    begins = c == ' ';
  }
  return name;
}

bool is_family(const PangoFontDescription* font, const std::string& name) {
  const char* found = pango_font_description_get_family(font);
  return found && g_ascii_strcasecmp(found, name.c_str()) == 0;
}

} // namespace

Lettering::Lettering(cairo_t* canvas, const std::string& language, Letters letters)
    : canvas_(canvas), letters_(letters), context_(pango_cairo_create_context(canvas)) {
  fix_font_options(context_.get());
  pango_context_set_round_glyph_positions(context_.get(), FALSE);
  pango_context_set_language(context_.get(), pango_language_from_string(language.c_str()));
  layout_.reset(pango_layout_new(context_.get()));
  pango_layout_set_single_paragraph_mode(layout_.get(), TRUE);
}

PangoLayoutLine* Lettering::set(const drawing::Text& text) {
  const Font font = font_of(text);
  look_for(font.get());
  const Owned<char, g_free> valid{g_utf8_make_valid(text.text.data(), static_cast<gssize>(text.text.size()))};
  pango_layout_set_font_description(layout_.get(), font.get());
  pango_layout_set_text(layout_.get(), valid.get(), -1);
  PangoLayoutLine* line = pango_layout_get_line_readonly(layout_.get(), 0);
  note_unknown_letters(line, valid.get());
  return line;
}

void Lettering::look_for(const PangoFontDescription* font) {
  const std::string name = pango_font_description_get_family(font);
  if (!looked_for_.insert(name).second) return;
  const Owned<PangoFont, g_object_unref> loaded{pango_context_load_font(context_.get(), font)};
  if (!loaded) {
    missing_.insert("the font " + name);
    return;
  }
  const Font found{pango_font_describe(loaded.get())};
  if (!is_family(found.get(), name)) missing_.insert("the font " + name);
}

void Lettering::note_unknown_letters(PangoLayoutLine* line, const char* text) {
  if (pango_layout_get_unknown_glyphs_count(layout_.get()) == 0) return;
  const std::string script = script_of(unknown_letter(line, text));
  missing_.insert((script.empty() ? "a font for" : "a font with " + script + " letters, for") +
                  (" “" + std::string(text) + "”"));
}

double Lettering::width(const drawing::Text& text) { return width_of(set(text)); }

void Lettering::write(const drawing::Text& text) {
  PangoLayoutLine* line = set(text);
  cairo_move_to(canvas_, text.at.x - before(text.anchor) * width_of(line), text.at.y);
  if (letters_ == Letters::as_text) {
    pango_cairo_show_layout_line(canvas_, line);
  } else {
    pango_cairo_layout_line_path(canvas_, line);
    cairo_fill(canvas_);
  }
}

} // namespace whorl::paint
