#include "drawing/step_strip.hpp"

#include "drawing/lines.hpp"

#include <algorithm>

namespace whorl::drawing {
namespace {

constexpr double picture_width_broad = 96, picture_width = 66; ///< mm
constexpr double gap = 4, edge = 4;                            ///< between them and about them

/// The symbols of all pictures; those that are alike are there once.
class Symbols {
public:
  /// The number of one of them among all.
  std::uint32_t add(const SymbolDefinition& symbol) {
    for (std::uint32_t i = 0; i < all_.size(); ++i)
      if (are_alike(all_[i], symbol)) return i;
    all_.push_back(symbol);
    all_.back().id = symbol.id + "_s" + std::to_string(all_.size());
    return static_cast<std::uint32_t>(all_.size() - 1);
  }
  std::vector<SymbolDefinition> take() { return std::move(all_); }

private:
  static bool are_alike(const SymbolDefinition& a, const SymbolDefinition& b) {
    return std::equal(a.pens.begin(), a.pens.end(), b.pens.begin(), b.pens.end(),
                      [](const Pen& one, const Pen& other) {
                        return one.stroke == other.stroke && one.dash == other.dash &&
                               one.path.verbs == other.path.verbs && one.path.points == other.path.points;
                      });
  }
  std::vector<SymbolDefinition> all_;
};

/// Moves what a picture shows to its place in the strip. Ids would be there several times.
class Moving {
public:
  Moving(Point to, double scale, std::vector<std::uint32_t> symbols)
      : to_(to), scale_(scale), symbols_(std::move(symbols)) {}

  void move(std::vector<Item>& items) const {
    for (Item& item : items) std::visit([this](auto& it) { move(it); }, item);
  }

private:
  Point moved(Point p) const { return to_ + scale_ * p; }
  void move(Path& path) const {
    for (Point& p : path.points) p = moved(p);
  }
  void move(Stroke& stroke) const {
    move(stroke.path);
    stroke.width *= scale_, stroke.dash *= scale_, stroke.origin = {};
  }
  void move(Fill& fill) const {
    move(fill.path);
    fill.origin = {};
  }
  void move(Symbol& symbol) const {
    symbol.symbol = symbols_[symbol.symbol];
    symbol.at = moved(symbol.at);
    symbol.scale *= scale_, symbol.origin = {};
  }
  void move(Text& text) const {
    text.at = moved(text.at);
    text.size *= scale_, text.width *= scale_, text.origin = {};
  }
  void move(Group& group) const {
    group.id.clear();
    group.rounds.clear();
    move(group.items);
  }

  Point to_;
  double scale_;
  std::vector<std::uint32_t> symbols_;
};

Group framed(Scene picture, Point at, double scale, Symbols& symbols) {
  std::vector<std::uint32_t> numbers;
  for (const SymbolDefinition& symbol : picture.symbols) numbers.push_back(symbols.add(symbol));
  Group group{"", "step", picture.title, std::move(picture.items), {}};
  Moving{at, scale, std::move(numbers)}.move(group.items);
  const Point far = at + scale * Point{picture.width, picture.height};
  group.items.push_back(
      Stroke{closed_through({at, {far.x, at.y}, far, {at.x, far.y}}), 0.2, ink::hairline, 0, {}});
  return group;
}

} // namespace

Scene strip_of(const std::vector<Scene>& pictures) {
  Scene strip;
  if (pictures.empty()) return strip;
  const Scene& first = pictures.front();
  const bool broad = first.width > first.height;
  const double scale = (broad ? picture_width_broad : picture_width) / first.width;
  const Point step = scale * Point{first.width, first.height} + Point{gap, gap};
  const std::size_t columns = std::min<std::size_t>(pictures.size(), broad ? 3 : 4),
                    rows = (pictures.size() + columns - 1) / columns;
  strip.width = 2 * edge - gap + static_cast<double>(columns) * step.x;
  strip.height = 2 * edge - gap + static_cast<double>(rows) * step.y;
  strip.language = first.language, strip.paper = first.paper;
  strip.title = first.title.substr(0, first.title.rfind(": "));
  Symbols symbols;
  for (std::size_t i = 0; i < pictures.size(); ++i) {
    const Point at{edge + static_cast<double>(i % columns) * step.x,
                   edge + static_cast<double>(i / columns) * step.y};
    strip.description += (i == 0 ? "" : "; ") + pictures[i].description;
    strip.items.push_back(framed(pictures[i], at, scale, symbols));
  }
  strip.symbols = symbols.take();
  return strip;
}

} // namespace whorl::drawing
