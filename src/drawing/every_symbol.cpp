#include "drawing/symbol_list.hpp"

#include <initializer_list>

namespace whorl::drawing {
namespace {

using layout::Figure;
using layout::SymbolKey;

constexpr int shown_round = 3;
constexpr std::uint32_t shown_count = 18;

void add_item(Figure& figure, std::uint32_t kind, std::uint16_t in_one, std::uint8_t loops = stitch::both) {
  layout::Item item;
  item.key = SymbolKey{static_cast<stitch::KindId>(kind), in_one, loops};
  figure.items.push_back(item);
}

void add_kind(Figure& figure, const stitch::StitchKind& kind, std::uint32_t number) {
  const stitch::Shape shape = stitch::shape_of(kind);
  add_item(figure, number, 1);
  const bool single = shape.legs == 1 && shape.height > 0 && shape.stems == 0 && kind.takes == 1;
  for (std::uint16_t several = 2; single && several <= 3; ++several) add_item(figure, number, several);
}

/// Stitches round posts and into what is further down.
void add_bases(Figure& figure, const std::vector<stitch::StitchKind>& kinds) {
  using layout::Base;
  const std::uint32_t single = *stitch::find_kind(kinds, "sc"), tall = *stitch::find_kind(kinds, "dc");
  for (const Base base : {Base::front_post, Base::back_post}) {
    add_item(figure, tall, 1);
    figure.items.back().key.base = base;
  }
  add_item(figure, single, 1);
  figure.items.back().key.base = Base::below;
  figure.items.back().key.down = 1;
}

layout::Run run(const char* text, layout::Face face, double size, double x, double width) {
  layout::Run run;
  run.text = text;
  run.face = face;
  run.size = size;
  run.x = x;
  run.width = width;
  return run;
}

void add_label(Figure& figure) {
  using layout::Face;
  layout::Label label;
  label.runs = {run("3", Face::bold, 0.74, 0, 0.412), run("\u00B7", Face::bold, 0.74, 0.552, 0.205),
                run("18", Face::regular, 0.62, 0.897, 0.69)};
  figure.labels.push_back(label);
  figure.pointers.emplace_back();
  figure.pointers.back().direction = {-1, 0};
}

void add_lines(Figure& figure) {
  for (const layout::Line line :
       {layout::Line::fold_break, layout::Line::direction, layout::Line::footprint, layout::Line::join}) {
    figure.strokes.emplace_back();
    figure.strokes.back().line = line;
  }
}

void add_signs(Figure& figure) {
  using layout::Sign;
  for (const Sign sign : {Sign::eye, Sign::marker, Sign::tick, Sign::flag, Sign::attach, Sign::free_loop,
                          Sign::front, Sign::bead, Sign::joined, Sign::joined_first, Sign::thread}) {
    layout::Placed placed;
    placed.sign = sign;
    if (sign == Sign::flag) {
      placed.text = run("2", layout::Face::bold, 0.5, 0, 0.278);
      placed.text_at = {0.31, 0.61};
    }
    if (sign == Sign::free_loop || layout::is_joined(sign))
      placed.text = run("B", layout::Face::bold, 0.44, 0, 0.318);
    if (sign == Sign::tick) placed.text = run("10", layout::Face::regular, 0.52, 0, 0.578);
    if (sign == Sign::front) placed.text = run("front", layout::Face::regular, 0.52, 0, 1.04);
    figure.placed.push_back(placed);
  }
  figure.grounds.emplace_back();
}

void add_rings(Figure& figure) {
  figure.rings.resize(4);
  figure.rings[0].items = 1;
  figure.rings[1].ink = 1;
  figure.rings[2].echo = true;
  figure.rings[3].chain = true;
}

void add_part(Everything& all) {
  all.tree.parts.emplace_back();
  fabric::Part part;
  part.end = fabric::End::cut;
  part.rounds = 1;
  all.fabric.parts = {part, part};
  fabric::Round round;
  round.number = shown_round;
  round.counted = shown_count;
  all.fabric.rounds.push_back(round);
}

} // namespace

Everything every_symbol(const std::string& language) {
  Everything all;
  all.tree.language = language;
  all.fabric.kinds = stitch::standard_kinds();
  all.fabric.kinds.push_back(stitch::picot(3));
  all.tree.kinds = all.fabric.kinds;
  all.tree.yarns = {"", ""};
  add_part(all);
  Figure figure;
  add_rings(figure);
  for (std::uint32_t kind = 0; kind < all.fabric.kinds.size(); ++kind)
    add_kind(figure, all.fabric.kinds[kind], kind);
  add_bases(figure, all.fabric.kinds);
  const std::uint32_t single = *stitch::find_kind(all.fabric.kinds, "sc");
  for (const std::uint8_t loops : {stitch::back, stitch::front, stitch::third})
    add_item(figure, single, 1, loops);
  add_label(figure);
  add_lines(figure);
  add_signs(figure);
  figure.cut.tip = {0, 1};
  for (const layout::Centre centre : {layout::Centre::magic_ring, layout::Centre::second_chain,
                                      layout::Centre::chain_ring, layout::Centre::gathered}) {
    figure.centre = centre;
    all.placement.figures.push_back(figure);
    figure.items.clear();
    figure.strokes.clear();
    figure.placed.clear();
    figure.grounds.clear();
  }
  return all;
}

} // namespace whorl::drawing
