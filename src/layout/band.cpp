#include "layout/band.hpp"

#include "layout/sign.hpp"

#include <algorithm>
#include <utility>

namespace whorl::layout {
namespace {

constexpr double echo_air = 0.20;
constexpr double loop_outside = 0.48; ///< the middle of a loop, outside the head of its stitch
constexpr double loop_pitch = 0.70;   ///< of two loops of one symbol, at least
constexpr double attach_aside = 0.50; ///< from the middle of a loop to the point of the mark beside it

double slot_of(const SymbolExtent& shape, const Item& item, bool echo) {
  return echo ? std::min(shape.slot, std::max<double>(item.count, shape.width + echo_air)) : shape.slot;
}

std::size_t shape_in(Band& band, const SymbolExtent& shape) {
  std::size_t at = 0;
  while (at < band.shapes.size() && band.shapes[at] != &shape) ++at;
  if (at == band.shapes.size())
    band.shapes.push_back(&shape), band.how_many.push_back(0), band.slot.push_back(0);
  return at;
}

} // namespace

Band band_of(const std::vector<Item>& items, const Extents& extents, bool echo) {
  Band band;
  constexpr std::size_t mostly = 3; // shapes of a ring
  band.shape_of.reserve(items.size());
  band.shapes.reserve(mostly), band.how_many.reserve(mostly), band.slot.reserve(mostly);
  for (const Item& item : items) {
    const SymbolExtent& shape = extent(extents, item.key);
    const std::size_t at = shape_in(band, shape);
    band.shape_of.push_back(static_cast<std::uint32_t>(at));
    ++band.how_many[at];
    band.slot[at] = slot_of(shape, item, echo);
    (shape.on_heads ? band.on_heads : band.height) =
        std::max(shape.on_heads ? band.on_heads : band.height, shape.height);
    band.slots += band.slot[at];
    band.loop_marks = band.loop_marks || shape.below > 0;
  }
  return band;
}

void shape_first(SymbolExtent shape, double slot, Band& band) {
  const std::uint32_t plain = band.shape_of.front();
  band.marked.push_back(std::make_unique<SymbolExtent>(std::move(shape)));
  band.shapes.push_back(band.marked.back().get());
  if (const std::vector<InGroup>* group = group_in(band, plain)) {
    const std::vector<InGroup> same = *group;
    band.groups.resize(band.shapes.size());
    band.groups.back() = same;
  }
  band.slots += slot - band.slot[plain];
  band.slot.push_back(slot);
  band.how_many.push_back(1);
  --band.how_many[plain];
  band.height = std::max(band.height, band.shapes.back()->height);
  band.shape_of.front() = static_cast<std::uint32_t>(band.shapes.size() - 1);
}

namespace {

/// The tips of a symbol in the order of its stitches.
std::vector<Point> tips_in_order(const SymbolExtent& shape, std::uint32_t count, Hand hand, bool against) {
  std::vector<Point> tips = shape.tips;
  if (tips.empty()) tips.push_back({0, shape.height});
  const bool rising = (hand == Hand::right) == against;
  std::stable_sort(tips.begin(), tips.end(),
                   [rising](Point a, Point b) { return rising ? a.x < b.x : a.x > b.x; });
  tips.resize(std::max<std::size_t>(tips.size(), count), tips.back());
  return tips;
}

/// How far tips of one symbol are spread so that their loops keep apart.
double spread_of(const std::vector<Point>& tips) {
  double pitch = loop_pitch;
  for (std::size_t i = 1; i < tips.size(); ++i) {
    const double apart = tips[i].x > tips[i - 1].x ? tips[i].x - tips[i - 1].x : tips[i - 1].x - tips[i].x;
    if (apart > 0) pitch = std::min(pitch, apart);
  }
  return loop_pitch / pitch;
}

Sign sign_of(const Kept& kept) {
  if (!kept.joined) return Sign::free_loop;
  return kept.first ? Sign::joined_first : Sign::joined;
}

std::vector<LoopPlace> loop_places(const SymbolExtent& shape, const Item& item, const Looping& looping,
                                   bool against) {
  const std::vector<Point> tips = tips_in_order(shape, item.count, looping.hand, against);
  const double spread = spread_of(tips);
  std::vector<LoopPlace> places;
  auto kept = std::lower_bound(looping.kept.begin(), looping.kept.end(), item.first,
                               [](const Kept& one, fabric::StitchId stitch) { return one.stitch < stitch; });
  for (; kept != looping.kept.end() && kept->stitch < item.first + item.count; ++kept) {
    const std::uint32_t which = kept->stitch - item.first;
    const double at = looping.below ? -loop_outside : shape.height + loop_outside;
    places.push_back({which, {spread * tips[which].x, at}, sign_of(*kept)});
  }
  return places;
}

bool are_same(const std::vector<LoopPlace>& one, const std::vector<LoopPlace>& other) {
  return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                    [](const LoopPlace& a, const LoopPlace& b) {
                      return a.which == b.which && a.at == b.at && a.sign == b.sign;
                    });
}

/// A symbol with its loops, and the mark beside the first of them, as one shape.
SymbolExtent with_loops(SymbolExtent shape, const std::vector<LoopPlace>& places, bool attach, Hand hand) {
  for (const LoopPlace& place : places)
    for (Convex& piece : outlines_of({place.sign, place.at, {0, 1}, {}, place.at, 0}))
      shape.ink.push_back(std::move(piece));
  if (attach)
    for (Convex& piece :
         outlines_of({Sign::attach, attach_place(first_met(places, hand), hand), attach_up(hand), {}, {}, 0}))
      shape.ink.push_back(std::move(piece));
  return shape;
}

/// Makes shapes with loops, each once.
class Marking {
public:
  Marking(const Looping& looping, Band& band) : looping_(looping), band_(band), plain_(band.shapes.size()) {
    band.loops.resize(plain_);
  }

  void mark(std::size_t item, const std::vector<LoopPlace>& places) {
    const std::uint32_t plain = band_.shape_of[item];
    const bool attach = looping_.attach && item == 0;
    const std::uint32_t marked = shape_for(plain, places, attach);
    --band_.how_many[plain], ++band_.how_many[marked];
    band_.shape_of[item] = marked;
  }

private:
  struct Made {
    std::uint32_t plain = 0;
    bool attach = false;
  };

  std::uint32_t shape_for(std::uint32_t plain, const std::vector<LoopPlace>& places, bool attach) {
    for (std::size_t i = 0; i < made_.size(); ++i)
      if (made_[i].plain == plain && made_[i].attach == attach && are_same(band_.loops[plain_ + i], places))
        return static_cast<std::uint32_t>(plain_ + i);
    band_.marked.push_back(
        std::make_unique<SymbolExtent>(with_loops(*band_.shapes[plain], places, attach, looping_.hand)));
    band_.shapes.push_back(band_.marked.back().get());
    band_.how_many.push_back(0);
    band_.slot.push_back(band_.slot[plain]);
    band_.loops.push_back(places);
    made_.push_back({plain, attach});
    return static_cast<std::uint32_t>(band_.shapes.size() - 1);
  }

  const Looping& looping_;
  Band& band_;
  std::size_t plain_;
  std::vector<Made> made_;
};

} // namespace

void draw_loops(const std::vector<Item>& items, const Looping& looping, Band& band) {
  Marking marking(looping, band);
  for (std::size_t i = 0; i < items.size(); ++i) {
    const std::vector<LoopPlace> places =
        loop_places(*band.shapes[band.shape_of[i]], items[i], looping, band.against);
    if (places.empty()) continue;
    marking.mark(i, places);
    band.free_loops = true;
    band.loops_below = looping.below;
  }
}

Point first_met(const std::vector<LoopPlace>& places, Hand hand) {
  Point first = places.front().at;
  for (const LoopPlace& place : places)
    if (hand == Hand::right ? place.at.x > first.x : place.at.x < first.x) first = place.at;
  return first;
}

Point attach_place(Point loop, Hand hand) { return loop + attach_aside * attach_up(hand); }

Point attach_up(Hand hand) { return {hand == Hand::right ? 1.0 : -1.0, 0}; }

} // namespace whorl::layout
