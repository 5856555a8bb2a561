#include "drawing/usage.hpp"

#include "drawing/figure.hpp"

#include <algorithm>
#include <tuple>

namespace whorl::drawing {
namespace {

using layout::Figure;
using layout::Ring;
using layout::SymbolKey;

bool is_marked(std::uint8_t loops) { return loops != stitch::both && loops != stitch::no_loop; }

bool comes_before(const SymbolKey& a, const SymbolKey& b) {
  return std::tuple(a.kind, a.base, a.down, a.in_one) < std::tuple(b.kind, b.base, b.down, b.in_one);
}

bool is_same_stitch(const SymbolKey& a, const SymbolKey& b) {
  return !comes_before(a, b) && !comes_before(b, a);
}

void sort_out(std::vector<SymbolKey>& keys) {
  std::sort(keys.begin(), keys.end(), comes_before);
  keys.erase(std::unique(keys.begin(), keys.end(), is_same_stitch), keys.end());
}

/// Of each set of loops the simplest symbol that has it.
void sort_out_loops(std::vector<SymbolKey>& keys) {
  const auto before = [](const SymbolKey& a, const SymbolKey& b) {
    return a.loops != b.loops ? a.loops > b.loops : comes_before(a, b);
  };
  const auto same = [](const SymbolKey& a, const SymbolKey& b) { return a.loops == b.loops; };
  std::sort(keys.begin(), keys.end(), before);
  keys.erase(std::unique(keys.begin(), keys.end(), same), keys.end());
}

void note_items(Usage& usage, const Figure& figure) {
  for (const layout::Item& item : figure.items) {
    SymbolKey key = item.key;
    if (item.stem > 0) key.base = layout::Base::below, key.down = 0;
    if (is_marked(key.loops)) {
      if (usage.looped.empty() || !(usage.looped.back() == key)) usage.looped.push_back(key);
    }
    key.loops = stitch::both;
    if (usage.stitches.empty() || !(usage.stitches.back() == key)) usage.stitches.push_back(key);
  }
  sort_out(usage.stitches);
  sort_out_loops(usage.looped);
}

void note_rings(Usage& usage, const Figure& figure, bool inks[2]) {
  for (std::uint32_t i = 0; i < figure.rings.size(); ++i) {
    const Ring& ring = figure.rings[i];
    usage.echo = usage.echo || ring.echo;
    usage.owner = usage.owner || ring.owner;
    usage.starting_chain = usage.starting_chain || ring.chain;
    if (!ring.echo && !ring.chain) inks[ring.ink == 0 ? 0 : 1] = true;
    if (!ring.echo && shows_miscount(figure, i)) usage.miscounted.push_back(ring.round);
  }
}

bool means_the_same(const layout::Placed& one, const layout::Placed& other) {
  using layout::Sign;
  if (one.sign != other.sign) return false;
  const bool ticks = one.sign == Sign::tick;
  const bool says = one.sign == Sign::flag || one.sign == Sign::free_loop || one.sign == Sign::joined;
  if (ticks) return (one.up == layout::Point{0, 0}) == (other.up == layout::Point{0, 0});
  return !says || one.text.text == other.text.text;
}

/// Of ticks the tenth is shown where there is one: it says best what is counted.
void note_sign(Usage& usage, const layout::Placed& sign) {
  for (layout::Placed& noted : usage.signs)
    if (means_the_same(noted, sign)) {
      if (sign.sign == layout::Sign::tick && sign.text.text == "10") noted = sign;
      return;
    }
  usage.signs.push_back(sign);
}

void note_signs(Usage& usage, const Figure& figure) {
  for (const layout::Placed& sign : figure.placed) note_sign(usage, sign);
  std::stable_sort(usage.signs.begin(), usage.signs.end(),
                   [](const layout::Placed& a, const layout::Placed& b) { return a.sign < b.sign; });
  for (const layout::Ground& ground : figure.grounds) usage.grounds.insert(ground.yarn);
}

/// A number alone, as lace has it.
bool is_number(const Figure& figure, const layout::Label& label) {
  const bool round = figure.form == layout::Form::disc || figure.form == layout::Form::motif ||
                     figure.form == layout::Form::sector;
  return round && label.runs.size() == 1 && label.runs.front().face == layout::Face::bold;
}

/// The count that stands below a number beside an oval, or nullptr.
const layout::Label* count_below(const Figure& figure, std::size_t label) {
  if (figure.form != layout::Form::oval || label + 1 >= figure.labels.size()) return nullptr;
  const layout::Label &number = figure.labels[label], &count = figure.labels[label + 1];
  const bool stacked = number.runs.size() == 1 && number.runs.front().face == layout::Face::bold &&
                       count.runs.size() == 1 && count.ring == number.ring;
  return stacked ? &count : nullptr;
}

/// A label serves as example if it has number and count in one line, or one below the other, and says nothing
/// that needs explaining itself.
bool explains(const Figure& figure, std::size_t number) {
  const layout::Label& label = figure.labels[number];
  if (!(label.runs.size() >= 3 || is_number(figure, label) || count_below(figure, number) != nullptr) ||
      label.ring >= figure.rings.size())
    return false;
  const Ring& ring = figure.rings[label.ring];
  return !ring.echo && ring.round == ring.last_round && !shows_miscount(figure, label.ring);
}

void note_label(Usage& usage, const Figure& figure) {
  for (std::size_t i = 0; i < figure.labels.size(); ++i) {
    const layout::Label& label = figure.labels[i];
    if (!explains(figure, i)) continue;
    if (usage.label != nullptr && usage.label->runs.size() > label.runs.size()) continue;
    usage.label = &label;
    usage.count_below = count_below(figure, i);
    usage.label_figure = &figure;
    // The third round shows best that the two numbers mean different things.
    if (figure.rings[label.ring].round >= figure.first_round + 2) return;
  }
}

void note_marks(Usage& usage, const Copy& copy, std::size_t number) {
  const Figure& figure = copy.placement.figures[number];
  usage.centres.insert(figure.centre);
  for (const layout::Stroke& stroke : figure.strokes) usage.lines.insert(stroke.line);
  if (!figure.pointers.empty() && usage.pointer == nullptr) usage.pointer = &figure.pointers.front();
  if (usage.label == nullptr || usage.label->runs.size() == 1) note_label(usage, figure);
  usage.cut = usage.cut || shows_cut(copy, number);
  const bool disc = figure.form == layout::Form::disc || figure.form == layout::Form::disc_inward ||
                    figure.form == layout::Form::motif;
  usage.strip = usage.strip || figure.form == layout::Form::strip;
  usage.rows = usage.rows || figure.form == layout::Form::rows || figure.form == layout::Form::sector;
  usage.disc = usage.disc || disc;
}

} // namespace

Usage usage_of(const Copy& copy) {
  Usage usage;
  bool inks[2] = {false, false};
  for (std::size_t i = 0; i < copy.placement.figures.size(); ++i) {
    if (!is_on_sheet(copy, i)) continue;
    note_items(usage, copy.placement.figures[i]);
    note_rings(usage, copy.placement.figures[i], inks);
    note_marks(usage, copy, i);
    note_signs(usage, copy.placement.figures[i]);
  }
  usage.two_inks = inks[0] && inks[1];
  return usage;
}

const SymbolKey& plainest(const Usage& usage, const fabric::Fabric& fabric) {
  for (const SymbolKey& key : usage.stitches) {
    const stitch::Shape shape = stitch::shape_of(fabric.kinds[key.kind]);
    if (shape.legs > 0 && shape.height > 0) return key;
  }
  return usage.stitches.front();
}

} // namespace whorl::drawing
