#include "drawing/furniture.hpp"

#include "drawing/caption.hpp"
#include "drawing/flow.hpp"
#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"
#include "layout/owner.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr double least_title = 7, rule_gap = 3.95, rule_width = 0.25;
constexpr double disc_radius = 2.95, name_indent = 8.6, make_gap = 3.6, least_name = 4.2;
constexpr double after_heading = 5.4;

/// As large as a title may be so that it stands in one line.
double title_size(std::string_view title, double width) {
  const double full = lettering::title.size, wide = width_of(title, lettering::title);
  return wide <= width ? full : std::max(least_title, full * width / wide);
}

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c; }

std::string lowered(std::string_view text) {
  std::string low(text);
  std::transform(low.begin(), low.end(), low.begin(), lower);
  return low;
}

double name_size(std::string_view name, double width) {
  const double full = lettering::part_name.size, wide = width_of(name, lettering::part_name);
  return wide <= width ? full : std::max(least_name, full * width / wide);
}

Stroke rule(Point from, double width) {
  return {line_through({from, from + Point{width, 0}}), rule_width, ink::black, 0, {}};
}

std::string make_of(const Copy& copy, std::uint32_t part) {
  return say(copy.wording, "make", {std::to_string(copy.fabric.parts[part].make)});
}

/// What stands behind a part's name besides how many to make, which the head says itself.
std::string note_of(const Copy& copy, std::uint32_t part) {
  if (part >= copy.text.part_notes.size()) return "";
  const std::string& note = copy.text.part_notes[part];
  return lowered(note) == lowered(make_of(copy, part)) ? "" : note;
}

void draw_letter(Group& group, const std::string& letter, Point middle) {
  group.items.push_back(Fill{circle(middle, disc_radius), ink::black, {}});
  const double size = letter.size() > 1 ? 2.6 : lettering::part_letter.size;
  const Lettering set = at_size(lettering::part_letter, size);
  group.items.push_back(written(letter, set, middle + Point{0, 0.36 * size}, Anchor::middle));
}

double draw_lines(Group& group, std::string_view text, Point at, double width) {
  constexpr double leading = 4.4;
  double y = at.y;
  for (std::string& line : wrap(text, lettering::closing, width)) {
    group.items.push_back(written(std::move(line), lettering::closing, {at.x, y + 3}));
    y += leading;
  }
  return y - at.y;
}

double draw_caution(const Copy& copy, SymbolCase& symbols, Group& group, Point at, double width) {
  constexpr double icon = 4.4, indent = 6.6;
  Group caution{"", "caution", "", {}};
  if (const auto mark = symbols.mark("warning")) {
    const Box box = bounds(symbols.definition(*mark));
    const double scale = icon / box.height();
    caution.items.push_back(Symbol{*mark,
                                   {at.x - scale * box.left, at.y + icon - 0.5 - scale * box.bottom},
                                   {0, -1},
                                   scale,
                                   ink::black,
                                   {}});
  }
  const double high = draw_lines(caution, copy.text.caution, at + Point{indent, 0}, width - indent);
  group.items.push_back(std::move(caution));
  return std::max(high, icon);
}

} // namespace

Drawn draw_title(const Copy& copy, Point at, double width) {
  Drawn title{{"", "title", "", {}}, 0};
  Flow flow(at.x, at.x + width, at.y - 1);
  flow.put(copy.text.title, at_size(lettering::title, title_size(copy.text.title, width)), 0);
  flow.put(copy.text.subtitle, lettering::subtitle, 4.5);
  const char* between = copy.text.yarns.empty() || copy.text.terms.empty() ? "" : " \u00b7 ";
  flow.put_right(copy.text.yarns + between + copy.text.terms, lettering::terms, 8);
  const double bottom = std::max(flow.base(), at.y + 4) + rule_gap;
  title.group.items = flow.take();
  title.group.items.push_back(rule({at.x, bottom}, width));
  title.height = bottom - at.y;
  return title;
}

bool has_head(const Copy& copy, std::uint32_t part) {
  const fabric::Part& it = copy.fabric.parts[part];
  if (copy.options.figures_only) return false;
  return copy.fabric.parts.size() > 1 || !it.name.empty() || it.make > 1 || !note_of(copy, part).empty();
}

double head_width(const Copy& copy, std::uint32_t part) {
  const fabric::Part& it = copy.fabric.parts[part];
  if (!has_head(copy, part)) return 0;
  return name_indent + width_of(it.name, lettering::part_name) + (it.name.empty() ? 0 : make_gap) +
         width_of(make_of(copy, part), lettering::make);
}

Drawn draw_part_head(const Copy& copy, std::uint32_t part, Point at, double width) {
  const fabric::Part& it = copy.fabric.parts[part];
  Drawn head{{"", "part", "", {}}, 0};
  Flow flow(at.x + name_indent, at.x + width, at.y);
  flow.put(it.name, at_size(lettering::part_name, name_size(it.name, width - name_indent)), 0);
  flow.put(make_of(copy, part), lettering::make, it.name.empty() ? 0 : make_gap);
  flow.put(note_of(copy, part), lettering::note, 3);
  head.height = flow.bottom() - at.y;
  head.group.items = flow.take();
  draw_letter(head.group, part_letter(part), at + Point{disc_radius, 2.35});
  return head;
}

std::string part_letter(std::uint32_t part) { return layout::part_letter(part); }

Drawn draw_closing(const Copy& copy, SymbolCase& symbols, Point at, double width) {
  Drawn closing{{"", "closing", "", {}}, 0};
  double y = at.y;
  if (!copy.text.closing.empty()) {
    closing.group.items.push_back(
        written(say(copy.wording, "putting-together"), lettering::heading, {at.x, y + 3}));
    y += after_heading;
  }
  for (const std::string& line : copy.text.closing) y += draw_lines(closing.group, line, {at.x, y}, width);
  if (!copy.text.caution.empty()) {
    if (y > at.y) y += 2.2;
    y += draw_caution(copy, symbols, closing.group, {at.x, y}, width);
  }
  closing.height = y - at.y;
  return closing;
}

} // namespace whorl::drawing
