#include "pictures/ink.hpp"

#include "drawing/lit.hpp"
#include "drawing/placed.hpp"
#include "fabric/fabric.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace whorl::pictures {
namespace {

using drawing::Path;
using drawing::Pen;
using drawing::Verb;
using Polyline = std::vector<Point>;

double distance(Point one, Point other) { return std::hypot(one.x - other.x, one.y - other.y); }

Point along(Point a, Point b, Point c, Point d, double t) {
  const double s = 1 - t;
  return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
}

/// A quarter of a circle of length L is cut to .005 mm by the root of 40 L chords.
void add_curve(Polyline& line, Point b, Point c, Point d) {
  const Point a = line.back();
  const double length = distance(a, b) + distance(b, c) + distance(c, d);
  const int chords = 1 + static_cast<int>(std::sqrt(40 * length));
  for (int i = 1; i <= chords; ++i) line.push_back(along(a, b, c, d, static_cast<double>(i) / chords));
}

std::vector<Polyline> polylines_of(const Path& path) {
  std::vector<Polyline> lines;
  const Point* next = path.points.data();
  for (const Verb verb : path.verbs) {
    if (verb == Verb::move) lines.push_back({*next++});
    if (verb == Verb::line) lines.back().push_back(*next++);
    if (verb == Verb::curve) {
      add_curve(lines.back(), next[0], next[1], next[2]);
      next += 3;
    }
    if (verb == Verb::close) lines.back().push_back(lines.back().front());
  }
  return lines;
}

void add_pieces(Mark& mark, const Path& path, double width) {
  for (Polyline& line : polylines_of(path)) mark.pieces.push_back({std::move(line), width / 2, width <= 0});
}

/// From a symbol's own coordinates to the sheet's.
Point placed(const drawing::Symbol& symbol, Point p) {
  const Point right{-symbol.up.y, symbol.up.x};
  return symbol.at + symbol.scale * p.x * right + -symbol.scale * p.y * symbol.up;
}

Pen placed(const drawing::Symbol& symbol, Pen pen) {
  for (Point& p : pen.path.points) p = placed(symbol, p);
  pen.stroke *= symbol.scale;
  return pen;
}

bool has_loop_arcs(const drawing::SymbolDefinition& definition) {
  for (const char* suffix : {"_back", "_front", "_loops"})
    if (definition.id.find(suffix) != std::string::npos) return true;
  return false;
}

bool lies_beneath_the_foot(const Pen& pen) {
  return std::all_of(pen.path.points.begin(), pen.path.points.end(), [](Point p) { return p.y > 0; });
}

/// The shares of an em that letters take up and down from the base line.
constexpr double rise = 0.72, drop = 0.22;

bool descends(const std::string& text) {
  return text.find_first_of("gjpqyQ,;()[]{}@$|_/\\") != std::string::npos;
}

double start_of(const drawing::Text& text) {
  switch (text.anchor) {
  case drawing::Anchor::start:
    return text.at.x;
  case drawing::Anchor::middle:
    return text.at.x - text.width / 2;
  case drawing::Anchor::end:
    return text.at.x - text.width;
  }
  return text.at.x;
}

Piece box_of(const drawing::Text& text) {
  const double left = start_of(text), right = left + text.width;
  const double top = text.at.y - rise * text.size;
  const double bottom = text.at.y + (descends(text.text) ? drop * text.size : 0);
  return {{{left, top}, {right, top}, {right, bottom}, {left, bottom}, {left, top}}, 0, true};
}

bool is_ground(drawing::Color color) {
  for (std::uint8_t yarn = 1; yarn <= 4; ++yarn)
    if (color == drawing::ground_color(yarn)) return true;
  return color == drawing::ink::lit;
}

bool is_ink(drawing::Color color) { return color != drawing::ink::paper && !is_ground(color); }

bool join(const Polyline& one, const Polyline& other) {
  for (const Point end : {one.front(), one.back()})
    for (const Point p : other)
      if (distance(end, p) < 1e-6) return true;
  return false;
}

bool join(const Mark& one, const Mark& other) {
  for (const Piece& a : one.pieces)
    for (const Piece& b : other.pieces)
      if (join(a.points, b.points) || join(b.points, a.points)) return true;
  return false;
}

/// Whether a line begins on the end of a stroke of a stitch.
bool begins_at(const Mark& line, const Mark& stitch) {
  const auto ends_there = [&stitch](Point start) {
    return std::any_of(stitch.pieces.begin(), stitch.pieces.end(), [start](const Piece& piece) {
      return distance(piece.points.front(), start) < piece.reach ||
             distance(piece.points.back(), start) < piece.reach;
    });
  };
  return std::any_of(line.pieces.begin(), line.pieces.end(),
                     [&](const Piece& piece) { return ends_there(piece.points.front()); });
}

void take_over(Mark& mark, Mark& other) {
  mark.pieces.insert(mark.pieces.end(), other.pieces.begin(), other.pieces.end());
}

/// Gathers the marks of one group, its groups' marks behind them.
class Gathering {
public:
  Gathering(const drawing::Scene& scene, const fabric::Fabric* fabric, std::vector<Mark>& marks)
      : scene_(scene), fabric_(fabric), marks_(marks) {}

  void gather(const std::vector<drawing::Item>& items, const std::string& where) {
    strokes_.clear();
    line_.reset();
    for (const drawing::Item& item : items)
      std::visit([this, &where](const auto& it) { add(it, where); }, item);
    lead_on();
  }

private:
  void add(const drawing::Stroke& stroke, const std::string& where) {
    if (!is_ink(stroke.color)) return;
    Mark mark{"line" + where, stroke.origin.stitch, 1, {}, {}};
    add_pieces(mark, stroke.path, stroke.width);
    for (const std::size_t before : strokes_)
      if (join(marks_[before], mark)) return take_over(marks_[before], mark);
    strokes_.push_back(marks_.size());
    marks_.push_back(std::move(mark));
  }

  /// A line that begins at the end of a stitch's leg leads it on.
  void lead_on() {
    for (const std::size_t line : strokes_)
      for (std::size_t i = line + 1; i < marks_.size(); ++i) {
        if (marks_[i].stitch == fabric::none || marks_[i].name.rfind("stitch", 0) != 0) continue;
        if (!begins_at(marks_[line], marks_[i])) continue;
        take_over(marks_[i], marks_[line]);
        marks_[line].pieces.clear();
        break;
      }
  }

  void add(const drawing::Fill& fill, const std::string& where) {
    if (!is_ink(fill.color)) return;
    Mark mark{"fill" + where, fill.origin.stitch, 1, {}, {}};
    add_pieces(mark, fill.path, 0);
    marks_.push_back(std::move(mark));
  }

  void add(const drawing::Symbol& symbol, const std::string& where) {
    if (!is_ink(symbol.color)) return;
    const drawing::SymbolDefinition& definition = scene_.symbols[symbol.symbol];
    const std::string name = name_of(symbol, definition) + where;
    Mark stitch{name, symbol.origin.stitch, symbol.origin.count, symbol.at, {}};
    Mark loops{"loops of " + name, symbol.origin.stitch, symbol.origin.count, symbol.at, {}};
    for (const Pen& pen : definition.pens) {
      const Pen drawn = placed(symbol, pen);
      add_pieces(has_loop_arcs(definition) && lies_beneath_the_foot(pen) ? loops : stitch, drawn.path,
                 drawn.stroke);
    }
    for (Mark* mark : {&stitch, &loops})
      if (!mark->pieces.empty()) marks_.push_back(std::move(*mark));
  }

  void add(const drawing::Text& text, const std::string& where) {
    if (!is_ink(text.color)) return;
    if (!line_ || line_->base != text.at.y) {
      line_ = Line{text.at.y, marks_.size()};
      marks_.push_back({"text “" + text.text + "”" + where, text.origin.stitch, 1, {}, {}});
    }
    marks_[line_->mark].pieces.push_back(box_of(text));
  }

  void add(const drawing::Group& group, const std::string& where) {
    std::string inside = where;
    if (!group.kind.empty()) inside = " in " + group.kind + (group.id.empty() ? "" : " " + group.id);
    Gathering{scene_, fabric_, marks_}.gather(group.items, inside);
  }

  std::string name_of(const drawing::Symbol& symbol, const drawing::SymbolDefinition& definition) const {
    if (symbol.origin.stitch == fabric::none) return "symbol " + definition.id;
    if (!fabric_) return "stitch " + std::to_string(symbol.origin.stitch);
    return "stitch " + fabric::id_of(*fabric_, symbol.origin.stitch);
  }

  /// The base line on which the texts stand.
  struct Line {
    double base;
    std::size_t mark;
  };

  const drawing::Scene& scene_;
  const fabric::Fabric* fabric_;
  std::vector<Mark>& marks_;
  std::vector<std::size_t> strokes_;
  std::optional<Line> line_;
};

} // namespace

std::vector<Mark> marks_of(const drawing::Scene& scene, const fabric::Fabric* fabric) {
  std::vector<Mark> marks;
  Gathering{scene, fabric, marks}.gather(scene.items, "");
  return marks;
}

} // namespace whorl::pictures
