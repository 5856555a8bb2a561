#include "drawing/steps.hpp"

#include "drawing/caption.hpp"
#include "drawing/closeup.hpp"
#include "drawing/figure.hpp"
#include "drawing/furniture.hpp"
#include "drawing/lines.hpp"
#include "drawing/lit.hpp"
#include "drawing/loop_picture.hpp"
#include "drawing/placed.hpp"
#include "drawing/step_units.hpp"
#include "drawing/step_words.hpp"
#include "layout/items.hpp"
#include "layout/label.hpp"

#include <algorithm>
#include <cmath>

namespace whorl::drawing {
namespace {

using layout::Figure;
using layout::Ring;

constexpr double bold = 1.35, bold_in_lace = 1.1; ///< the pen of what is worked

/// The figure's box in W.
Box figure_in_slots(const Copy& copy, std::size_t figure) {
  const Box box = figure_box(copy, figure);
  const double scale = copy.options.stitch;
  return {box.left / scale, box.top / scale, box.right / scale, box.bottom / scale};
}

/// The last round that a figure shows.
std::uint32_t last_shown(const Figure& figure) {
  std::uint32_t last = 0;
  for (const Ring& ring : figure.rings)
    if (!ring.echo && !ring.chain) last = std::max(last, ring.last_round);
  return last;
}

/// A step's picture while it is drawn.
struct Picture {
  const Copy& copy;
  const Step& step;
  const Figure& figure;
  StepAreas areas;
  Frame frame;
  SymbolCase symbols;
  Scene scene;

  bool is_start() const { return step.ring == fabric::none; }
  bool is_of_a_stitch() const { return step.stitches > 0; }
  const Ring& ring() const { return figure.rings[step.ring]; }
  std::uint32_t round() const { return is_start() ? figure.first_round : ring().round; }
  /// The stitches that are worked.
  fabric::StitchId first() const { return is_of_a_stitch() ? step.stitch : 0; }
  fabric::StitchId end() const { return is_of_a_stitch() ? step.stitch + step.stitches : fabric::none; }
  bool is_now(fabric::StitchId stitch) const { return stitch >= first() && stitch < end(); }
};

void add_lit(Picture& picture) {
  if (picture.is_start()) return;
  std::vector<std::uint32_t> now;
  for (std::uint32_t i = picture.ring().first_item; i < picture.ring().first_item + picture.ring().items; ++i)
    if (picture.is_now(picture.figure.items[i].first)) now.push_back(i);
  const auto places = reached_by(picture.copy.fabric, picture.figure, now);
  picture.scene.items.push_back(
      Group{"", "lit", "", lit_bands(picture.figure, places, view_of(picture.frame))});
}

Group ring_in(Picture& picture, std::uint32_t ring, Color color) {
  return draw_ring(picture.copy, picture.step.figure, picture.frame, picture.symbols, ring, color);
}

void recolor(Item& item, Color color) {
  if (Symbol* symbol = std::get_if<Symbol>(&item)) symbol->color = color;
  if (Fill* fill = std::get_if<Fill>(&item)) fill->color = color;
  if (Stroke* stroke = std::get_if<Stroke>(&item)) stroke->color = color;
  if (Text* text = std::get_if<Text>(&item)) text->color = color;
}

/// The stitch that a thing of its ring's group is of: a symbol its own, a stem the next spike.
fabric::StitchId stitch_of(const Picture& picture, const Item& item, std::uint32_t& spike) {
  const Ring& ring = picture.ring();
  const layout::Item* items = picture.figure.items.data() + ring.first_item;
  if (const Symbol* symbol = std::get_if<Symbol>(&item)) return symbol->origin.stitch;
  if (!std::holds_alternative<Stroke>(item)) return fabric::none;
  while (spike < ring.items && items[spike].stem == 0) ++spike;
  return spike < ring.items ? items[spike++].first : fabric::none;
}

/// Of the stitch's round: what is worked in ink, the stitch bold, what comes faint.
void add_ring_by_stitches(Picture& picture) {
  Group group = ring_in(picture, picture.step.ring, ink::black);
  Group now{"", "stitch now", "", {}};
  std::vector<Item> rest;
  std::uint32_t spike = 0;
  for (Item& item : group.items) {
    const fabric::StitchId stitch = stitch_of(picture, item, spike);
    if (stitch != fabric::none && stitch >= picture.end()) recolor(item, ink::coming);
    (picture.is_now(stitch) ? now.items : rest).push_back(std::move(item));
  }
  group.items = std::move(rest);
  group.items.push_back(std::move(now));
  picture.scene.items.push_back(std::move(group));
}

void add_ring(Picture& picture, std::uint32_t ring, Color color) {
  if (ring == picture.step.ring && picture.is_of_a_stitch()) return add_ring_by_stitches(picture);
  Group group = ring_in(picture, ring, color);
  if (ring == picture.step.ring) group.kind = "round now";
  picture.scene.items.push_back(std::move(group));
}

/// What a part begins with, its chain or the round of another that it stands on, and the first round, which
/// comes next.
void add_beginning(Picture& picture) {
  for (const std::uint32_t ring : in_order(picture.figure)) {
    const Ring& it = picture.figure.rings[ring];
    add_ring(picture, ring, it.chain ? ink::black : it.echo ? ink::done : ink::coming);
    if (!it.chain && !it.echo) return;
  }
}

/// The grounds of the yarns of what is worked and done.
void add_grounds(Picture& picture) {
  if (picture.is_start()) return;
  picture.scene.items.push_back(
      draw_grounds(picture.copy, picture.figure, picture.frame, picture.ring().round));
}

/// What is done, the round that is worked and the next.
void add_rings(Picture& picture) {
  if (picture.is_start()) return add_beginning(picture);
  Color color = ink::done;
  for (const std::uint32_t ring : in_order(picture.figure)) {
    const bool now = ring == picture.step.ring, next = color == ink::coming;
    add_ring(picture, ring, now ? ink::black : color);
    if (next || (now && picture.is_of_a_stitch())) break;
    if (now) color = ink::coming;
  }
}

/// How much nearer to the middle the arrow of direction stands while the outer rings of a disc are not shown.
Point nearer(const Picture& picture, Point arrow) {
  const Figure& figure = picture.figure;
  const bool round = figure.form == layout::Form::disc || figure.form == layout::Form::oval;
  const double half = std::max(0.0, ((figure.high.x - figure.low.x) - (figure.high.y - figure.low.y)) / 2);
  const Point out = arrow - Point{std::clamp(arrow.x, -half, half), 0}; // an oval stands about a line
  if (!round || layout::length(out) < 1) return {0, 0};
  const std::size_t shown = std::min<std::size_t>(picture.step.ring + 1, figure.rings.size() - 1);
  const double less = figure.rings.back().outer - figure.rings[shown].outer;
  return -less * layout::unit(out);
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

/// The last stitches are not gathered before they are worked.
bool is_closed_yet(const Picture& picture) {
  return !picture.is_start() && picture.ring().last_round == picture.figure.last_round;
}

void add_middle(Picture& picture) {
  if (picture.figure.form == layout::Form::disc_inward && !is_closed_yet(picture)) return;
  Group centre = draw_centre(picture.copy, picture.step.figure, picture.frame, picture.symbols);
  if (!picture.is_start())
    for (Item& item : centre.items) recolor(item, ink::done);
  picture.scene.items.push_back(std::move(centre));
}

bool is_last_of_line(const Copy& copy, const fabric::Round& round) {
  return round.text >= copy.tree.rounds.size() || round.number >= copy.tree.rounds[round.text].to;
}

/// Whether the text has put something into a round's holes by now; what it puts there later shows at the
/// end of the figure.
bool is_put_yet(const Picture& picture, std::uint32_t round) {
  const fabric::Fabric& fabric = picture.copy.fabric;
  const fabric::Round& now = fabric.rounds[picture.round()];
  if (picture.round() == last_shown(picture.figure)) return true;
  const auto waits = [&](const fabric::Placing& placing) {
    if (placing.round != round || placing.text >= picture.copy.tree.placings.size()) return false;
    const pattern::Placing& text = picture.copy.tree.placings[placing.text];
    const bool told = now.text + 1 > text.after_round ||
                      (now.text + 1 == text.after_round && is_last_of_line(picture.copy, now));
    return pattern::is_post(text.what) && (!told || now.number < text.to);
  };
  return std::none_of(fabric.placings.begin(), fabric.placings.end(), waits);
}

bool shows_sign(const Picture& picture, const layout::Placed& placed) {
  const Ring& ring = picture.figure.rings[placed.ring];
  switch (placed.sign) {
  case layout::Sign::tick:
  case layout::Sign::sewn:
    return false;
  case layout::Sign::free_loop:
    return ring.owner;
  case layout::Sign::eye:
  case layout::Sign::bead:
  case layout::Sign::marker:
  case layout::Sign::thread:
    return !picture.is_start() && ring.round <= picture.round() && is_put_yet(picture, ring.round);
  default:
    return ring.owner || (!picture.is_start() && ring.round <= picture.round());
  }
}

/// Eyes, markers and the like, as far as the work has come.
void add_signs(Picture& picture) {
  Group signs{"", "signs", "", {}};
  for (const layout::Placed& placed : picture.figure.placed)
    if (shows_sign(picture, placed))
      for (Item& item : draw_sign(placed, picture.frame, picture.symbols, 1))
        signs.items.push_back(std::move(item));
  picture.scene.items.push_back(std::move(signs));
}

/// Takes room for the picture of the two loops from that of the close-up; false: there is too little.
bool take_loops(Box& area, Box& loops) {
  const bool broad = is_broad(area);
  if (broad ? area.height() < loop_picture_height - 4 : area.height() < 2.2 * loop_picture_height)
    return false;
  loops = area;
  if (broad)
    loops.left = area.right -= loop_picture_width + 4;
  else
    loops.top = area.bottom -= loop_picture_height + 3;
  return true;
}

/// The two loops of a stitch, where the round is worked into one of them; what is left of the area.
void add_loops(Picture& picture, Box& area) {
  std::uint8_t marked = 0;
  for (const layout::Item& item : layout::items_of(picture.copy.fabric, picture.round()))
    if (picture.is_now(item.first) && item.key.loops != stitch::both) marked |= item.key.loops;
  Box loops;
  if ((marked & stitch::both) == 0 || !take_loops(area, loops)) return;
  const double top = std::max(loops.top, (loops.top + loops.bottom - loop_picture_height) / 2);
  picture.scene.items.push_back(
      draw_loop_picture(picture.copy, {loops.left, top}, loops.width(), {marked, ink::lit}).group);
}

/// The ring that the close-up shows; none: there is nothing to show.
std::uint32_t ring_close_up(const Picture& picture) {
  if (!picture.is_start()) return picture.step.ring;
  const std::vector<std::uint32_t> order = in_order(picture.figure);
  return !order.empty() && picture.figure.rings[order.front()].chain ? order.front() : fabric::none;
}

/// What a part begins with, if that is a mark, large.
void add_large_mark(Picture& picture) {
  constexpr double scale = 20; // mm per W
  const Box& area = picture.areas.close_up;
  const Point middle{(area.left + area.right) / 2, (area.top + area.bottom) / 2};
  const Symbol like{0, middle, {0, -1}, scale / picture.frame.scale, ink::black, {}};
  picture.scene.items.push_back(
      Group{"", "close-up", "", draw_centre_mark(picture.copy, picture.figure, picture.symbols, like), {}});
}

/// The items of a ring from the first to the last that are worked.
Repeat items_now(const Picture& picture, const Ring& ring) {
  std::uint32_t first = ring.items, end = 0;
  for (std::uint32_t i = 0; i < ring.items; ++i)
    if (picture.is_now(picture.figure.items[ring.first_item + i].first))
      first = std::min(first, i), end = i + 1;
  return {first, end - std::min(first, end)};
}

Shown shown_of(const Picture& picture, const Ring& ring) {
  const Wording& wording = picture.copy.wording;
  if (picture.is_of_a_stitch())
    return {with_neighbours(picture.figure, ring, items_now(picture, ring)), picture.first(), picture.end(),
            say(wording, "step-near")};
  const Repeat shown = repeat_shown(picture.copy, picture.figure, ring);
  return {shown, picture.first(), picture.end(),
          say(wording, shown.repeated && !ring.chain ? "step-close-up" : "step-near")};
}

void add_close_up(Picture& picture) {
  const std::uint32_t ring = ring_close_up(picture);
  if (ring == fabric::none && centre_mark(picture.figure.centre).empty())
    return add_loops(picture, picture.areas.close_up);
  if (ring == fabric::none) return add_large_mark(picture);
  const Usage none;
  const Making making{picture.copy, picture.symbols, none, 1, picture.frame.scale};
  Box area = picture.areas.close_up;
  if (!picture.is_start()) add_loops(picture, area);
  picture.scene.items.push_back(
      draw_closeup(making, picture.step.figure, ring, shown_of(picture, picture.figure.rings[ring]), area));
}

void make_bold(std::vector<Item>& items, std::uint32_t plain) {
  for (Item& item : items)
    if (Group* group = std::get_if<Group>(&item)) {
      make_bold(group->items, plain);
      if (group->kind != "round now" && group->kind != "stitch now") continue;
      for (Item& inside : group->items)
        if (Symbol* symbol = std::get_if<Symbol>(&inside)) symbol->symbol += plain;
    }
}

/// Whether it has chains between its stitches, which stand close.
bool is_lace(const Picture& picture) {
  const fabric::Fabric& fabric = picture.copy.fabric;
  const std::vector<layout::Item>& items = picture.figure.items;
  return std::any_of(items.begin(), items.end(), [&](const layout::Item& item) {
    const fabric::Stitch& stitch = fabric.stitches[item.first];
    return fabric::legs_of(fabric, item.first).size() == 0 && (stitch.flags & fabric::starts_chain) == 0 &&
           fabric.rounds[stitch.round].kind != pattern::RoundKind::chain;
  });
}

/// The symbols of what is worked, drawn with a bolder pen: second ones behind the first.
void make_bold(Picture& picture) {
  picture.scene.symbols = picture.symbols.definitions();
  const double bolder = is_lace(picture) ? bold_in_lace : bold;
  const auto plain = static_cast<std::uint32_t>(picture.scene.symbols.size());
  for (std::uint32_t i = 0; i < plain; ++i) {
    SymbolDefinition one = picture.scene.symbols[i];
    one.id += "_now";
    for (Pen& pen : one.pens) pen.stroke *= bolder;
    picture.scene.symbols.push_back(std::move(one));
  }
  make_bold(picture.scene.items, plain);
}

std::vector<Box> boxes_of(const Copy& copy, const StepPage& page) {
  std::vector<Box> boxes;
  for (const std::size_t figure : page.figures) boxes.push_back(figure_in_slots(copy, figure));
  for (std::size_t i = 0; page.figures.empty() && i < copy.placement.figures.size(); ++i)
    boxes.push_back(figure_in_slots(copy, i));
  return boxes;
}

Picture blank(const Copy& copy, const std::vector<Mark>& marks, const Step& step, const StepPage& page) {
  const Figure& figure = copy.placement.figures[step.figure];
  const Box box = figure_in_slots(copy, step.figure);
  const StepAreas areas = areas_of(page, boxes_of(copy, page));
  const Frame frame = frame_of(box, areas);
  Picture picture{copy,  step,  figure,
                  areas, frame, SymbolCase(copy.fabric.kinds, marks, copy.options.style, frame.scale),
                  {}};
  picture.scene.width = page.width;
  picture.scene.height = page.height;
  picture.scene.paper = page.paper;
  picture.scene.language = copy.text.language;
  return picture;
}

} // namespace

Scene step_picture(const Copy& copy, const std::vector<Mark>& marks, const Step& step, const StepPage& page) {
  Picture picture = blank(copy, marks, step, page);
  if (page.picture) {
    add_grounds(picture);
    add_lit(picture);
    add_middle(picture);
    add_rings(picture);
    if (!picture.is_start()) add_direction(picture);
    add_signs(picture);
    add_close_up(picture);
  }
  if (page.words) picture.scene.items.push_back(draw_step_words(copy, step, picture.areas));
  picture.scene.title = copy.text.title + ": " + step_number(copy, step);
  picture.scene.description = picture.is_start() ? step_line(copy, step) : ring_title(copy, picture.ring());
  make_bold(picture);
  return picture.scene;
}

} // namespace whorl::drawing
