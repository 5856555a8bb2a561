#include "drawing/steps.hpp"

#include "drawing/caption.hpp"
#include "drawing/closeup.hpp"
#include "drawing/figure.hpp"
#include "drawing/furniture.hpp"
#include "drawing/lettering.hpp"
#include "drawing/lines.hpp"
#include "drawing/loop_picture.hpp"
#include "drawing/placed.hpp"
#include "drawing/table_rows.hpp"
#include "layout/direction.hpp"
#include "layout/items.hpp"
#include "layout/label.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

using layout::Figure;
using layout::Ring;

constexpr double largest = 4.75;  ///< mm per W
constexpr double safe = 0.052;    ///< of the shorter side: nothing stands nearer to the edge
constexpr double bold = 1.35;     ///< the pen of the round that is worked
constexpr double words_high = 22; ///< of the line under the picture
constexpr double flat = 1.7;      ///< a figure so much wider than high stands over its close-up
constexpr double least_text = 3.2, number_size = 7.2, line_size = 5.4;

/// Where what stands.
struct Areas {
  Box figure, close_up, words;
};

Areas areas_of(const StepPage& page, const Box& figure) {
  const double edge = safe * std::min(page.width, page.height);
  Box all{edge, edge, page.width - edge, page.height - edge};
  Areas areas;
  areas.words = {all.left, all.bottom - words_high + edge, all.right, all.bottom};
  all.bottom = areas.words.top - 2;
  areas.figure = areas.close_up = all;
  const bool stacked = page.height >= page.width || figure.width() > flat * figure.height();
  if (stacked) {
    const double needs = figure.height() * std::min(largest, all.width() / figure.width());
    areas.figure.bottom = all.top + std::min(0.5 * all.height(), needs);
    areas.close_up.top = areas.figure.bottom + 3;
  } else {
    areas.figure.right = all.left + 0.52 * all.width();
    areas.close_up.left = areas.figure.right + 6;
  }
  return areas;
}

/// Where the figure stands in all its steps.
Frame frame_of(const Box& figure, const Box& area) {
  const double scale = std::min({largest, area.width() / figure.width(), area.height() / figure.height()});
  return {{(area.left + area.right) / 2 - scale * (figure.left + figure.right) / 2,
           (area.top + area.bottom) / 2 - scale * (figure.top + figure.bottom) / 2},
          scale};
}

/// The figure's box in W.
Box figure_in_slots(const Copy& copy, std::size_t figure) {
  const Box box = figure_box(copy, figure);
  const double scale = copy.options.stitch;
  return {box.left / scale, box.top / scale, box.right / scale, box.bottom / scale};
}

/// A step's picture while it is drawn.
struct Picture {
  const Copy& copy;
  const Step& step;
  const StepPage& page;
  const Figure& figure;
  Areas areas;
  Frame frame;
  SymbolCase symbols;
  Scene scene;

  bool is_start() const { return step.ring == fabric::none; }
  const Ring& ring() const { return figure.rings[step.ring]; }
  std::uint32_t round() const { return is_start() ? figure.first_round : ring().round; }
};

void add_lit(Picture& picture) {
  if (picture.is_start()) return;
  const std::uint32_t below = ring_below(picture.figure, picture.step.ring);
  if (below == fabric::none || picture.figure.rings[below].items == 0) return;
  picture.scene.items.push_back(
      Group{"", "lit", "", {lit_band(picture.figure, picture.figure.rings[below], picture.frame)}});
}

void add_ring(Picture& picture, std::uint32_t ring, Color color) {
  Group group = draw_ring(picture.copy, picture.step.figure, picture.frame, picture.symbols, ring, color);
  if (ring == picture.step.ring) group.kind = "round now";
  picture.scene.items.push_back(std::move(group));
}

/// The chain that a part begins with, if that is what it does, and the first round, which comes next.
void add_beginning(Picture& picture) {
  for (const std::uint32_t ring : in_order(picture.figure)) {
    const bool chain = picture.figure.rings[ring].chain;
    add_ring(picture, ring, chain ? ink::black : ink::coming);
    if (!chain) return;
  }
}

/// What is done, the round that is worked and the next.
void add_rings(Picture& picture) {
  if (picture.is_start()) return add_beginning(picture);
  Color color = ink::done;
  for (const std::uint32_t ring : in_order(picture.figure)) {
    const bool now = ring == picture.step.ring, next = color == ink::coming;
    add_ring(picture, ring, now ? ink::black : color);
    if (next) break;
    if (now) color = ink::coming;
  }
}

/// How much nearer to the middle the arrow of direction stands while the outer rings of a disc are not shown.
Point nearer(const Picture& picture, Point arrow) {
  const Figure& figure = picture.figure;
  if (figure.form != layout::Form::disc || length(arrow) < 1) return {0, 0};
  const std::size_t shown = std::min<std::size_t>(picture.step.ring + 1, figure.rings.size() - 1);
  const double less = figure.rings.back().outer - figure.rings[shown].outer;
  return -less * unit(arrow);
}

/// The arrow of direction, shaft and head.
void add_direction(Picture& picture) {
  Group lines{"", "lines", "", {}};
  Point by;
  for (const layout::Stroke& stroke : picture.figure.strokes) {
    if (stroke.line != layout::Line::direction || stroke.points.empty()) continue;
    if (lines.items.empty()) by = nearer(picture, stroke.points.front());
    std::vector<Point> points;
    for (const Point p : stroke.points) points.push_back(on_sheet(picture.frame, p + by));
    lines.items.push_back(
        Stroke{stroke.curved ? curve_through(points) : line_through(points), 0.35, ink::black, 0, {}});
  }
  picture.scene.items.push_back(std::move(lines));
}

void recolor(Group& group, Color color) {
  for (Item& item : group.items) {
    if (Symbol* symbol = std::get_if<Symbol>(&item)) symbol->color = color;
    if (Fill* fill = std::get_if<Fill>(&item)) fill->color = color;
    if (Stroke* stroke = std::get_if<Stroke>(&item)) stroke->color = color;
    if (Text* text = std::get_if<Text>(&item)) text->color = color;
  }
}

/// The last stitches are not gathered before they are worked.
bool is_closed_yet(const Picture& picture) {
  return !picture.is_start() && picture.ring().last_round == picture.figure.last_round;
}

void add_middle(Picture& picture) {
  if (picture.figure.form == layout::Form::disc_inward && !is_closed_yet(picture)) return;
  Group centre = draw_centre(picture.copy, picture.step.figure, picture.frame, picture.symbols);
  if (!picture.is_start()) recolor(centre, ink::done);
  picture.scene.items.push_back(std::move(centre));
}

/// Eyes and markers of the rounds that are done.
void add_signs(Picture& picture) {
  if (picture.is_start()) return;
  Group signs{"", "signs", "", {}};
  for (const layout::Placed& placed : picture.figure.placed)
    if (picture.figure.rings[placed.ring].round <= picture.round() && placed.sign != layout::Sign::tick)
      for (Item& item : draw_sign(placed, picture.frame, picture.symbols, 1))
        signs.items.push_back(std::move(item));
  picture.scene.items.push_back(std::move(signs));
}

void add_close_up(Picture& picture) {
  if (picture.is_start()) return;
  const Usage none;
  const Making making{picture.copy, picture.symbols, none, 1, picture.frame.scale};
  Box area = picture.areas.close_up;
  const bool loops =
      layout::marked_loops(layout::items_of(picture.copy.fabric, picture.round())) != stitch::both;
  if (loops && area.height() > 2 * loop_picture_height) {
    area.bottom -= loop_picture_height;
    picture.scene.items.push_back(
        draw_loop_picture(picture.copy, {area.left, area.bottom}, area.width()).group);
  }
  picture.scene.items.push_back(draw_closeup(making, picture.step.figure, picture.step.ring, area));
}

// The words under the picture.

/// "Round 5", "Rounds 5–7".
std::string number_in_words(const Picture& picture) {
  const fabric::Round& round = picture.copy.fabric.rounds[picture.round()];
  if (picture.is_start()) {
    const std::string& name = picture.copy.fabric.parts[picture.figure.part].name;
    return name.empty() ? say(picture.copy.wording, "step-start") : name;
  }
  const bool row = round.kind == pattern::RoundKind::row;
  return say(picture.copy.wording, row ? "step-row" : "step-round",
             {layout::number_of(picture.copy.fabric, picture.ring())});
}

std::string line_in_words(const Picture& picture) {
  if (picture.is_start()) {
    const std::string_view mark = centre_mark(picture.figure.centre);
    return mark.empty() ? say(picture.copy.wording, "step-start")
                        : say(picture.copy.wording, "title-" + std::string(mark));
  }
  return table_row(picture.copy, picture.ring()).line;
}

/// The count at the right, and the change behind it; where they begin.
double add_count(const Picture& picture, double base, Group& words) {
  if (picture.is_start()) return picture.areas.words.right;
  const TableRow row = table_row(picture.copy, picture.ring());
  const Lettering bold_count{line_size, Typeface::sans, true, false, ink::black};
  const Lettering pale{line_size * 0.9, Typeface::sans, false, false, ink::grey};
  const bool starts = row.change.empty() || row.change == say(picture.copy.wording, "table-start");
  const std::string change = starts ? "" : "(" + row.change + ")";
  const std::string count =
      say(picture.copy.wording, row.stitches == "1" ? "step-stitch" : "step-stitches", {row.stitches});
  double x = picture.areas.words.right;
  words.items.push_back(written(change, pale, {x, base}, Anchor::end));
  if (!starts) x -= width_of(change, pale) + 2;
  words.items.push_back(written(count, bold_count, {x, base}, Anchor::end));
  return x - width_of(count, bold_count);
}

/// The author's line, as large as two lines of it have room.
void add_line(const Picture& picture, double left, double right, double base, Group& words) {
  Lettering set{line_size, Typeface::sans, false, false, ink::black};
  const std::string line = line_in_words(picture);
  constexpr std::size_t most = 3;
  while (set.size > least_text &&
         wrap(line, set, right - left, 0, 99).size() > (set.size > line_size * 0.8 ? 1 : most))
    set.size -= 0.3;
  const std::vector<std::string> lines = wrap(line, set, right - left, 0, most);
  double y = base - (static_cast<double>(lines.size()) - 1) * set.size * 0.62;
  for (const std::string& one : lines) {
    words.items.push_back(written(one, set, {left, y}));
    y += set.size * 1.24;
  }
}

void add_words(Picture& picture) {
  const Box& area = picture.areas.words;
  Group words{"", "words", "", {}};
  words.items.push_back(
      Stroke{line_through({{area.left, area.top}, {area.right, area.top}}), 0.13, ink::hairline, 0, {}});
  const Lettering serif{number_size, Typeface::serif, false, false, ink::black};
  const std::string number = number_in_words(picture);
  const bool narrow = picture.page.width < 150;
  const double base = area.top + (narrow ? 0.46 : 0.62) * area.height();
  words.items.push_back(written(number, serif, {area.left, base}));
  const double count = add_count(picture, base, words);
  const double behind = area.left + width_of(number, serif) + 6;
  if (narrow)
    add_line(picture, area.left, area.right, area.bottom - 1.5, words);
  else
    add_line(picture, behind, count - 6, base, words);
  picture.scene.items.push_back(std::move(words));
}

/// The symbols of the round that is worked, drawn with a bolder pen: second ones behind the first.
void make_bold(Picture& picture) {
  picture.scene.symbols = picture.symbols.definitions();
  const auto plain = static_cast<std::uint32_t>(picture.scene.symbols.size());
  for (std::uint32_t i = 0; i < plain; ++i) {
    SymbolDefinition one = picture.scene.symbols[i];
    one.id += "_now";
    for (Pen& pen : one.pens) pen.stroke *= bold;
    picture.scene.symbols.push_back(std::move(one));
  }
  for (Item& item : picture.scene.items)
    if (Group* group = std::get_if<Group>(&item); group != nullptr && group->kind == "round now")
      for (Item& inside : group->items)
        if (Symbol* symbol = std::get_if<Symbol>(&inside)) symbol->symbol += plain;
}

Picture blank(const Copy& copy, const std::vector<Mark>& marks, const Step& step, const StepPage& page) {
  const Figure& figure = copy.placement.figures[step.figure];
  const Box box = figure_in_slots(copy, step.figure);
  const Areas areas = areas_of(page, box);
  const Frame frame = frame_of(box, areas.figure);
  Picture picture{copy,
                  step,
                  page,
                  figure,
                  areas,
                  frame,
                  SymbolCase(copy.fabric.kinds, marks, copy.options.style, frame.scale),
                  {}};
  picture.scene.width = page.width;
  picture.scene.height = page.height;
  picture.scene.paper = page.paper;
  picture.scene.language = copy.tree.language;
  return picture;
}

bool shows_start(const Figure& figure) {
  return !centre_mark(figure.centre).empty() || (!figure.rings.empty() && figure.rings[0].chain);
}

} // namespace

std::vector<Step> steps_of(const Copy& copy) {
  std::vector<Step> steps;
  std::uint32_t part = fabric::none;
  for (std::size_t i = 0; i < copy.placement.figures.size(); ++i) {
    const Figure& figure = copy.placement.figures[i];
    if (figure.part != part && shows_start(figure)) steps.push_back({i, fabric::none});
    part = figure.part;
    for (const std::uint32_t ring : in_order(figure))
      if (!figure.rings[ring].echo && !figure.rings[ring].chain) steps.push_back({i, ring});
  }
  return steps;
}

std::string step_id(const Copy& copy, const Step& step) {
  const Figure& figure = copy.placement.figures[step.figure];
  const std::string& key = copy.fabric.parts[figure.part].key;
  return key + "-" +
         (step.ring == fabric::none ? "start" : round_number(copy.fabric, figure.rings[step.ring].round));
}

Scene step_picture(const Copy& copy, const std::vector<Mark>& marks, const Step& step, const StepPage& page) {
  Picture picture = blank(copy, marks, step, page);
  if (page.picture) {
    add_lit(picture);
    add_middle(picture);
    add_rings(picture);
    if (!picture.is_start()) add_direction(picture);
    add_signs(picture);
    add_close_up(picture);
  }
  if (page.words) add_words(picture);
  picture.scene.title = copy.text.title + ": " + number_in_words(picture);
  picture.scene.description = picture.is_start() ? line_in_words(picture) : ring_title(copy, picture.ring());
  make_bold(picture);
  return picture.scene;
}

} // namespace whorl::drawing
