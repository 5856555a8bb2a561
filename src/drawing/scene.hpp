#pragma once
/// Room `drawing`: the placement comes in; one display list goes out, and from it the SVG. It places title,
/// figures, legend and notes on the sheet. Words reach it as plain strings; nothing here reads a pattern or
/// names Cairo.

#include "fabric/fabric.hpp"
#include "layout/extents.hpp"
#include "layout/place.hpp"

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

namespace whorl::drawing {

using layout::Point;
using pattern::Span;

/// A solid colour, 0xRRGGBB.
struct Color {
  std::uint32_t rgb = 0;
  bool operator==(const Color&) const = default;
};

/// The inks of a sheet; everything else is a tint of them.
namespace ink {
inline constexpr Color black{0x1c1b1a}, second{0xA23B12}, grey{0x77736c}, faint{0x938d84}, hairline{0xa39e95},
    yarn_ground{0xF3DCCB}, paper{0xFFFFFF};
}

enum class Verb : std::uint8_t { move, line, curve, close };

/// A path; `curve` takes three points, `close` none.
struct Path {
  std::vector<Verb> verbs;
  std::vector<Point> points;
};

/// What an item came from, for pointing back.
struct Origin {
  fabric::StitchId stitch = fabric::none;
  Span span;
  std::uint32_t count = 1; ///< stitches of one place that it stands for, this the first
};

/// Line ends and corners are round.
struct Stroke {
  Path path;
  double width = 0.3; ///< mm
  Color color;
  double dash = 0; ///< mm on and off; 0: unbroken
  Origin origin;
};

struct Fill {
  Path path;
  Color color;
  Origin origin;
};

/// A use of Scene::symbols: its origin at `at`, its up direction `up` (unit vector).
struct Symbol {
  std::uint32_t symbol = 0;
  Point at;
  Point up{0, -1};
  double scale = 1;
  Color color;
  Origin origin;
};

enum class Typeface : std::uint8_t { sans, serif };
enum class Anchor : std::uint8_t { start, middle, end };

/// One run of text; never turned.
struct Text {
  std::string text;
  Point at;          ///< on the base line
  double size = 3.2; ///< mm: the em
  Typeface face = Typeface::sans;
  bool bold = false;
  bool italic = false;
  Anchor anchor = Anchor::start;
  double width = 0; ///< mm, from the table of widths
  Color color;
  Origin origin;
};

struct Group;
using Item = std::variant<Stroke, Fill, Symbol, Text, Group>;

/// Items that belong together; a group with a title is named for screen readers (a round).
struct Group {
  std::string id;   ///< "" or unique
  std::string kind; ///< class: "figure", "round", "label", "legend" …
  std::string title;
  std::vector<Item> items;
  std::vector<std::string> rounds; ///< of a folded round: the ids of all that it shows
};

/// Part of a symbol, in mm, origin at its foot, y downward (so up is -y), drawn in the colour of its use.
struct Pen {
  Path path;
  double stroke = 0; ///< 0: filled
  double dash = 0;
};

struct SymbolDefinition {
  std::string id; ///< "sc", "sc-2" (two in one place), "sc-back"
  std::vector<Pen> pens;
};

/// Where a figure of the placement stands on the sheet: the point (x, y) of the figure, in W and y upward,
/// lies at (origin.x + scale x, origin.y - scale y). `sheet` fills one for each figure of the placement, in
/// its order.
struct Frame {
  Point origin;
  double scale = 1; ///< mm per W; 0: it stands on another sheet
};

/// Where a point of the figure lies on the sheet.
inline Point on_sheet(const Frame& frame, Point p) {
  return {frame.origin.x + frame.scale * p.x, frame.origin.y - frame.scale * p.y};
}

/// The display list of one sheet, in mm, y downward.
struct Scene {
  double width = 210, height = 297;
  std::string language = "en";
  std::string title;
  std::string description;
  bool paper = true; ///< false: what lies under the sheet shows through
  std::vector<SymbolDefinition> symbols;
  std::vector<Item> items;
  std::vector<Frame> figures;
};

} // namespace whorl::drawing
